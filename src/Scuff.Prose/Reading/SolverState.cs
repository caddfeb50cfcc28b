using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>How far a reading of a line has come.</summary>
internal sealed record SolverState(PlacedRow? Last, int Label, Weight Weight, double Cost, Ratio? PendingTurn, bool PendingHard, int Overflow,
    int Actions, int Moves)
{
    /// <summary>Whether a figure with quick counts of its own was laid on whole counts.</summary>
    public bool HasSlowed { get; init; }

    /// <summary>Whether a figure brought quick counts that are not printed.</summary>
    public bool HasQuick { get; init; }
}
