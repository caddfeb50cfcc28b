using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Analysis.Checks;

/// <summary>Feet that would have to pass through each other.</summary>
public sealed class ImpossibleCross : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "feet/impossible-cross",
        Severity.Warning,
        "Count {count}: {what} cannot follow {before}: the legs are crossed the other way and have to uncross first.",
        "Crossed legs leave only some ways out. A dancer who tries this one trips, or takes a small step more.",
        """
        Knot

        section 1
        1-2  touch R lock behind L, cross R over L
        3-4  step L back, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        """
        Knot

        section 1
        1-2  touch R lock behind L, step R to side
        3-4  step L back, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        "trade rule R31");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (IEnumerable<WalkedStep> run in context.Dance.Parts.Select(context.StepsOf)
            .Concat(context.Dance.Tags.Select(tag => context.StepsOf(tag.Body))))
        {
            WalkedStep? before = null;
            foreach (WalkedStep step in run)
            {
                if (step.Foot is null || step.IsDoubtful)
                {
                    // a hold or a clap keeps the legs where they are; anything else may have sorted them out
                    before = step.Action.Foot == ActingFoot.None && step.Action.Kind != ActionKind.Unknown && step.Action.Turn.Sign == 0 ? before : null;
                    continue;
                }

                if (before is not null && step.Action.Turn.Sign == 0 && (CrossesBack(before, step) || PullsApart(before, step)))
                {
                    yield return TheRule
                        .At(step.Written.Span, ("count", step.Label), ("what", What(step)), ("before", What(before)))
                        .OnCount(step.Label)
                        .WithRelated(before.Written.Span, "the legs cross here");
                }

                before = step;
            }
        }
    }

    // the same leg from a tight lock on one side straight to a cross on the other
    private static bool CrossesBack(WalkedStep before, WalkedStep step) => before.Foot == step.Foot
        && ((before.Action.Direction == Direction.LockBehind && step.Action.Direction is Direction.CrossFront or Direction.LockFront)
            || (before.Action.Direction == Direction.LockFront && step.Action.Direction is Direction.CrossBehind or Direction.LockBehind));

    // one leg has crossed over to the other's side; the other foot cannot go where that leg came from
    private static bool PullsApart(WalkedStep before, WalkedStep step) => before.Foot is { } crossed
        && step.Foot == crossed.Other()
        && before.Action.Effect == WeightEffect.Takes
        && before.Action.Direction is Direction.LockFront or Direction.LockBehind or Direction.CrossFront or Direction.CrossBehind
        && step.Action.Effect == WeightEffect.Takes
        && (step.Action.Direction == Direction.Across || step.Action.Direction == (crossed == Foot.Right ? Direction.Right : Direction.Left));

    private static string What(WalkedStep step)
    {
        string where = step.Action.Direction switch
        {
            Direction.LockBehind => " locked behind",
            Direction.LockFront => " locked in front",
            Direction.Right => " to the right",
            Direction.Left => " to the left",
            Direction.Across => " across",
            _ => "",
        };
        return Words.Of(step.Action) + where;
    }
}
