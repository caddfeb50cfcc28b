using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>What is asked to be made easier.</summary>
public sealed record EasierQuestion
{
    /// <summary>For whom.</summary>
    public EasierAim Aim { get; init; }

    /// <summary>The level of the class; only asked where the aim is a level.</summary>
    public Level Level { get; init; } = Level.Beginner;

    /// <summary>The part of a phrased dance or the tag it is about; null for all.</summary>
    public string? Part { get; init; }

    /// <summary>The section in its part, from 1; null for all.</summary>
    public int? Section { get; init; }

    /// <summary>The counts of the section, from zero; null for all.</summary>
    public CountSpan? Counts { get; init; }

    /// <summary>Lines of the text, from 1, first and last; null for all.</summary>
    public (int First, int Last)? Lines { get; init; }
}
