using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Calls;

/// <summary>Something to be called, with the ways it can be said; whether and how it is, the placement decides.</summary>
internal sealed record CallItem
{
    /// <summary>What it is for.</summary>
    public required CallKind Kind { get; init; }

    /// <summary>The words, fullest first.</summary>
    public required List<string> Wordings { get; init; }

    /// <summary>The count on which begins what they name.</summary>
    public required Counts For { get; init; }

    /// <summary>The count by which they must have ended; never after <see cref="For"/>.</summary>
    public required double Latest { get; init; }

    /// <summary>Counts before <see cref="For"/> at which it is to begin; null as the number of its words asks.</summary>
    public double? Lead { get; init; }

    /// <summary>How many counts earlier it may begin where the place is taken.</summary>
    public double Early { get; init; } = 1;

    /// <summary>Whether it begins exactly at its lead, or not at all.</summary>
    public bool IsFixed { get; init; }

    /// <summary>How much dancers would miss it.</summary>
    public required double Worth { get; init; }

    /// <summary>The wall, from 1.</summary>
    public required int Wall { get; init; }

    /// <summary>The words of the text that are called.</summary>
    public TextSpan Span { get; init; }

    /// <summary>Whether the words are hers.</summary>
    public bool IsHers { get; init; }
}
