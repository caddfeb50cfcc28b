using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>How far a reading of a line has come.</summary>
internal sealed record SolverState(PlacedRow? Last, int Label, Weight Weight, double Cost, Ratio? PendingTurn, bool PendingHard, int Overflow,
    int Actions, int Moves);
