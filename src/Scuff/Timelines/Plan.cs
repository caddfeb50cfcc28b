namespace Scuff.Timelines;

/// <summary>An order of danced stretches: the dance unrolled but not yet danced.</summary>
/// <param name="Stretches">In danced order.</param>
/// <param name="Walls">How many walls (repetitions) are begun.</param>
/// <param name="TrackTitle">The track it is for, or empty.</param>
public sealed record Plan(ValueList<PlanStretch> Stretches, int Walls, string TrackTitle);
