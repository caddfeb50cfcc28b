using Scuff.Dances;

namespace Scuff.Analysis.Planning;

/// <summary>A dance that may be put on a programme. Equal by value.</summary>
public sealed record ProgrammeDance
{
    /// <summary>Its id in the club.</summary>
    public required string Id { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>Its level.</summary>
    public required Level Level { get; init; }

    /// <summary>Counts a minute to its song; 0 when nobody knows.</summary>
    public int CountsPerMinute { get; init; }

    /// <summary>What it asks of a body, in tenths of a MET.</summary>
    public int Effort { get; init; } = 50;

    /// <summary>What it can be danced to, what she likes best first. Without a song it cannot be chosen.</summary>
    public ValueList<ProgrammeSong> Songs { get; init; }

    /// <summary>How much of each group can dance it, in percent, in the order of the groups.</summary>
    public ValueList<int> Shares { get; init; }

    /// <summary>How much it is due for revision in the classes that are there, from 0 to 100.</summary>
    public int Due { get; init; }

    /// <summary>How many asked for it.</summary>
    public int Requests { get; init; }

    /// <summary>Days since it was last danced at an evening or class of theirs; null when it never was or nobody knows.</summary>
    public int? DaysSinceDanced { get; init; }
}
