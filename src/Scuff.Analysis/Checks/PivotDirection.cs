using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Analysis.Checks;

/// <summary>A pivot towards the foot that stepped.</summary>
public sealed class PivotDirection : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "turn/pivot-direction",
        Severity.Warning,
        "Count {count}: after {step} a pivot goes {usual}, not {written}. If it turns on {foot} alone, write turn {written} on {foot}.",
        "In a two-count pivot the stepping foot is in front, so the body can only unwind away from it. The other way the legs cross.",
        """
        Pivot

        section 1
        1-2  step R forward, pivot 1/2 right
        3-4  step R forward, pivot 1/2 left
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        """
        Pivot

        section 1
        1-2  step R forward, pivot 1/2 left
        3-4  step R forward, pivot 1/2 left
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        "trade rule R14");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Section section in context.Dance.Sections.Concat(context.Dance.Tags.Select(tag => tag.Body)))
        {
            WalkedStep? before = null;
            foreach (WalkedStep step in context.StepsOf(section))
            {
                if (before is not null && !step.IsDoubtful && IsPivot(step) && SteppedForward(before)
                    && step.Action.Turn.Sign == Side(before.Foot!.Value)
                    && (step.Foot is null || step.Foot != before.Foot || !step.Written.WeightIsStated))
                {
                    StepAction other = step.Action with { Turn = -step.Action.Turn };
                    string usual = Words.Of(other.Turn);
                    yield return TheRule
                        .At(
                            step.Written.Span,
                            ("count", step.Label),
                            ("step", Words.Of(before.Action)),
                            ("usual", usual),
                            ("written", Words.Of(step.Action.Turn)),
                            ("foot", Words.Of(before.Foot.Value)))
                        .OnCount(step.Label)
                        .WithRelated(before.Written.Span, "the foot that stepped")
                        .WithFixes(new Fix("turn " + usual, new DanceEdit.ReplaceStep(step.Written, other), IsSafe: false));
                }

                before = step;
            }
        }
    }

    private static bool IsPivot(WalkedStep step) => step.Action.Turn.Sign != 0
        && (step.Action.Kind == ActionKind.Pivot
            || (step.Action is { Kind: ActionKind.Recover, Effect: WeightEffect.Takes } && step.Move.Definition?.TotalTurn.Sign == -1));

    private static bool SteppedForward(WalkedStep before) => before.Foot is not null
        && before.Action is { Kind: ActionKind.Step, Effect: WeightEffect.Takes, Direction: Direction.Forward or Direction.DiagonalForward };

    private static int Side(Foot foot) => foot == Foot.Right ? 1 : -1;
}
