using Scuff.Dances;
using Scuff.Timelines;

namespace Scuff.Analysis;

/// <summary>The dance as danced to one track, with its tags and restarts.</summary>
/// <param name="Track">The track, or null for what the sheet says of every track.</param>
/// <param name="Plan">The order of the stretches.</param>
/// <param name="Timeline">The dance as danced.</param>
public sealed record TrackTimeline(Track? Track, Plan Plan, Timeline Timeline);
