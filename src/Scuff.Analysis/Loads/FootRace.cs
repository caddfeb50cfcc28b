using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Loads;

/// <summary>A foot on its way.</summary>
/// <param name="Foot">The foot.</param>
/// <param name="Metres">How far it goes, straight.</param>
/// <param name="Counts">How long it has, at most one count.</param>
/// <param name="At">The action that takes it there.</param>
public sealed record FootRace(Foot Foot, double Metres, Ratio Counts, TimedStep At);
