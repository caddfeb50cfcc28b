using Scuff.Dances;
using Scuff.Stance;

namespace Scuff.Analysis.Fit;

/// <summary>An interruption of a plan, and what the floor sees there.</summary>
/// <param name="Wall">The wall in which it happens, from 1.</param>
/// <param name="Part">The part of a phrased dance; empty for an ordinary dance.</param>
/// <param name="After">After so many counts of the wall.</param>
/// <param name="IsAtEnd">Whether the wall is over then.</param>
/// <param name="Begins">The count of the music.</param>
/// <param name="Seconds">When that is.</param>
/// <param name="Facing">Where the floor faces; null when unknown.</param>
/// <param name="Length">Counts of music that tags and holds there take.</param>
/// <param name="Section">The section of the music it falls in, an index into those of the map; -1 before the first.</param>
/// <param name="Written">It as it is written on the sheet.</param>
public sealed record FitBreak(
    int Wall, string Part, int After, bool IsAtEnd, int Begins, double Seconds, Facing? Facing, int Length, int Section, Interruption Written)
{
    /// <summary>Whether it stands in the order of the parts of a phrased dance rather than in a sentence of its own.</summary>
    public bool IsInSequence { get; init; }

    /// <summary>Whether the dance begins again there.</summary>
    public bool Restarts => Written.Restarts;
}
