using Scuff.Dances;

namespace Scuff.Analysis.Fit;

/// <summary>A track of a dance's text laid over its music.</summary>
/// <param name="Track">The track as written.</param>
/// <param name="Music">The music in counts of the dance.</param>
/// <param name="Plan">The dance as its text has it there; null when it has no steps or the music no beats.</param>
public sealed record TrackFit(Track Track, CountedMusic Music, FitPlan? Plan);
