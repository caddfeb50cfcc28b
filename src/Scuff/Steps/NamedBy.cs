namespace Scuff.Steps;

/// <summary>How the words right and left in front of a name are to be read.</summary>
public enum NamedBy
{
    /// <summary>The mirror does not change the figure.</summary>
    None,

    /// <summary>By the foot that moves first.</summary>
    FirstFoot,

    /// <summary>By the foot that acts.</summary>
    ActingFoot,

    /// <summary>By the direction of travel or movement.</summary>
    Travel,

    /// <summary>By the direction of the turn.</summary>
    Turn,

    /// <summary>By the standing foot.</summary>
    StandingFoot,
}
