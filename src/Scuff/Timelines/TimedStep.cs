using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Timelines;

/// <summary>One action as danced: at its count from the first count of the dance, with weight and facing around it.</summary>
public sealed record TimedStep
{
    /// <summary>Danced place: counts since the first count 1; a pick-up before it is below zero.</summary>
    public required Counts At { get; init; }

    /// <summary>Its whole span as written.</summary>
    public required CountSpan Whole { get; init; }

    /// <summary>What is danced of it before the dance is cut (a restart in its middle).</summary>
    public required CountSpan Part { get; init; }

    /// <summary>Index of its stretch in the timeline.</summary>
    public required int Stretch { get; init; }

    /// <summary>The wall, from 1.</summary>
    public required int Wall { get; init; }

    /// <summary>The section it is written in.</summary>
    public required Section Section { get; init; }

    /// <summary>Printed count: <c>3&amp;</c>.</summary>
    public required string CountLabel { get; init; }

    /// <summary>The written step it comes from.</summary>
    public required WrittenStep Written { get; init; }

    /// <summary>What is danced.</summary>
    public required StepAction Action { get; init; }

    /// <summary>Weight before.</summary>
    public required Weight WeightBefore { get; init; }

    /// <summary>Weight after.</summary>
    public required Weight WeightAfter { get; init; }

    /// <summary>Facing before; null when words before could not be read.</summary>
    public required Facing? FacingBefore { get; init; }

    /// <summary>Facing after; null when words before could not be read.</summary>
    public required Facing? FacingAfter { get; init; }
}
