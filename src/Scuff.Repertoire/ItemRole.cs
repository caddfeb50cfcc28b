namespace Scuff.Repertoire;

/// <summary>What a dance was, or is to be, in a session.</summary>
public enum ItemRole
{
    /// <summary>Warming up.</summary>
    WarmUp = 1,

    /// <summary>Revised: danced again so that it is not forgotten.</summary>
    Revised = 2,

    /// <summary>Taught as a new dance.</summary>
    Taught = 3,

    /// <summary>Danced because somebody asked for it.</summary>
    Requested = 4,

    /// <summary>Danced.</summary>
    Danced = 5,

    /// <summary>Cooling down.</summary>
    CoolDown = 6,
}
