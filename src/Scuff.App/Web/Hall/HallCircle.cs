namespace Scuff.App.Web.Hall;

/// <summary>Who asks, the more trusted the later. A route is for one circle and all that are more trusted.</summary>
internal enum HallCircle
{
    /// <summary>Somebody in the hall's network who has typed no code.</summary>
    Stranger,

    /// <summary>A screen in the hall that watches what is danced.</summary>
    Floor,

    /// <summary>Her tablet in the hall.</summary>
    Tablet,

    /// <summary>A page on this very machine.</summary>
    Here,
}
