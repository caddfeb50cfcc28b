using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>How the dance finishes with the music.</summary>
public sealed record Ending
{
    /// <summary>The wall it happens in, or null for the last one.</summary>
    public int? Wall { get; init; }

    /// <summary>After how many counts of that wall; null when not stated.</summary>
    public Counts? AfterCounts { get; init; }

    /// <summary>What is danced, counted from the place where it leaves the dance.</summary>
    public Section? Body { get; init; }

    /// <summary>The facing she prints for the end, or null.</summary>
    public FacingClaim? Claim { get; init; }

    /// <summary>The facing at which the ending's wall starts, when stated.</summary>
    public Facing? WallFacing { get; init; }

    /// <summary>Whether she says that it ends at the front, however far the last turn then is.</summary>
    public bool SaysFront { get; init; }

    /// <summary>Her words for what is danced, without the wall and the counts; empty when they are not told apart.</summary>
    public string MoveWords { get; init; } = "";

    /// <summary>Where it is written.</summary>
    public required TextSpan Span { get; init; }

    /// <summary>One-based line of the text.</summary>
    public required int Line { get; init; }

    /// <summary>Her words.</summary>
    public required string Verbatim { get; init; }
}
