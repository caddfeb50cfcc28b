using Scuff.Stance;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>A place in a track's timeline where the next stretch needs a foot that has the weight.</summary>
/// <param name="Before">The stretch that ends there.</param>
/// <param name="After">The stretch that begins there.</param>
/// <param name="Last">The last action before it that moved the weight, when it lies in <paramref name="Before"/>.</param>
/// <param name="Next">The action that needs the foot.</param>
/// <param name="Foot">The foot.</param>
internal sealed record Junction(TimedStretch Before, TimedStretch After, TimedStep? Last, TimedStep Next, Foot Foot)
{
    /// <summary>Finds them all, in danced order.</summary>
    public static IEnumerable<Junction> Of(Timeline timeline)
    {
        ILookup<int, TimedStep> steps = timeline.Steps.ToLookup(step => step.Stretch);
        for (int i = 1; i < timeline.Stretches.Count; i++)
        {
            TimedStretch after = timeline.Stretches[i];
            if (after.Weight.StandingFoot() is { } standing
                && FirstNeed(steps[i]) is { } next
                && next.Action.Foot.ToFoot() == standing)
            {
                TimedStep? last = steps[i - 1].LastOrDefault(step => step.Action.Effect != Steps.WeightEffect.Keeps);
                yield return new Junction(timeline.Stretches[i - 1], after, last, next, standing);
            }
        }
    }

    private static TimedStep? FirstNeed(IEnumerable<TimedStep> steps)
    {
        foreach (TimedStep step in steps)
        {
            if (step.Action.Foot.ToFoot() is not null && step.Action.Traits.FootRule == Steps.FootRule.Free)
            {
                return step;
            }

            if (step.Action.Effect != Steps.WeightEffect.Keeps)
            {
                return null;
            }
        }

        return null;
    }
}
