namespace Scuff.Analysis.Calls;

/// <summary>How much a caller says, from most to nothing.</summary>
public enum CallHelp
{
    /// <summary>Every move by its name.</summary>
    EveryStep,

    /// <summary>What each section begins with, and the warnings.</summary>
    Headings,

    /// <summary>Only what breaks the pattern: tags, restarts, new walls, the last one.</summary>
    Warnings,

    /// <summary>Nothing but the count-in.</summary>
    Silent,
}
