using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Timelines;

/// <summary>One stretch of the plan as danced.</summary>
/// <param name="Plan">The stretch.</param>
/// <param name="Span">Its danced counts.</param>
/// <param name="Weight">Weight at its start.</param>
/// <param name="Facing">Facing at its start; null when unknown.</param>
/// <param name="WeightAfter">Weight at its end.</param>
/// <param name="FacingAfter">Facing at its end; null when unknown.</param>
public sealed record TimedStretch(PlanStretch Plan, CountSpan Span, Weight Weight, Facing? Facing, Weight WeightAfter, Facing? FacingAfter);
