using Scuff.Dances;
using Scuff.Stance;

namespace Scuff.Analysis.Fit;

/// <summary>How a plan finishes.</summary>
/// <param name="Wall">The wall it happens in.</param>
/// <param name="After">After so many counts of that wall.</param>
/// <param name="Begins">The count of the music on which it begins.</param>
/// <param name="Seconds">When that is.</param>
/// <param name="Facing">Where the floor faces there; null when unknown.</param>
/// <param name="Turn">How far it turns to the front.</param>
/// <param name="Written">It as it is written on the sheet.</param>
/// <param name="IsHers">Whether it is the ending that the dance already has.</param>
public sealed record FitEnding(int Wall, int After, int Begins, double Seconds, Facing? Facing, Turn Turn, Ending Written, bool IsHers);
