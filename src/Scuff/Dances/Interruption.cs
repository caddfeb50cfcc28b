using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>A place where the music breaks the pattern, and what is done there.</summary>
public sealed record Interruption
{
    /// <summary>Walls (repetitions, from 1) in which it happens.</summary>
    public required ValueList<int> Walls { get; init; }

    /// <summary>In a phrased dance: the part it is in (then a wall is the n-th time of that part), or empty.</summary>
    public string PartName { get; init; } = "";

    /// <summary>Whole dance if null: after how many counts of the wall.</summary>
    public Counts? AfterCounts { get; init; }

    /// <summary>What happens, in order.</summary>
    public required ValueList<InterruptionAct> Acts { get; init; }

    /// <summary>What is danced differently before it.</summary>
    public ValueList<ChangedCounts> Changes { get; init; }

    /// <summary>The facing she prints for it, or null.</summary>
    public FacingClaim? Claim { get; init; }

    /// <summary>Where it is written.</summary>
    public required TextSpan Span { get; init; }

    /// <summary>One-based line of the text.</summary>
    public required int Line { get; init; }

    /// <summary>Her words.</summary>
    public required string Verbatim { get; init; }

    /// <summary>Whether the dance begins again here.</summary>
    public bool Restarts => Acts.Any(a => a is InterruptionAct.Restart);
}
