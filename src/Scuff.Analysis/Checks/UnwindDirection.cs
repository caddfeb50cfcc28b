using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Analysis.Checks;

/// <summary>An unwind the way round in which the crossed legs wind up instead.</summary>
public sealed class UnwindDirection : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "turn/unwind-direction",
        Severity.Warning,
        "Count {count}: after {cross} the legs come apart turning {usual}, not {written}.",
        "Crossed legs come apart one way only: away from the foot in front, which is towards the foot behind. The other way they wind up.",
        """
        Unwind

        section 1
        1-2  cross R over L, unwind 1/2 right (weight on L)
        3-4  step R to side, touch L together
        5-6  step L to side, touch R together
        7-8  step R forward, step L together
        """,
        """
        Unwind

        section 1
        1-2  cross R over L, unwind 1/2 left (weight on L)
        3-4  step R to side, touch L together
        5-6  step L to side, touch R together
        7-8  step R forward, step L together
        """,
        "common practice, no source");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Section section in context.Dance.Sections.Concat(context.Dance.Tags.Select(tag => tag.Body)))
        {
            WalkedStep? cross = null;
            foreach (WalkedStep step in context.StepsOf(section))
            {
                if (cross is not null && !step.IsDoubtful && step.Action.Kind == ActionKind.Unwind
                    && step.Action.Turn.Sign == -WayApart(cross.Action))
                {
                    StepAction other = step.Action with { Turn = -step.Action.Turn };
                    string usual = Words.Of(other.Turn);
                    yield return TheRule
                        .At(
                            step.Written.Span,
                            ("count", step.Label),
                            ("cross", Words.Of(cross.Action)),
                            ("usual", usual),
                            ("written", Words.Of(step.Action.Turn)))
                        .OnCount(step.Label)
                        .WithRelated(cross.Written.Span, "the legs cross here")
                        .WithFixes(new Fix("turn " + usual, new DanceEdit.ReplaceStep(step.Written, other), IsSafe: false));
                }

                if (step.IsDoubtful || step.Action.Kind == ActionKind.Unknown)
                {
                    cross = null;
                }
                else if (step.Action.Foot != ActingFoot.None || step.Action.Turn.Sign != 0)
                {
                    // a hold or a clap keeps the legs where they are
                    cross = WayApart(step.Action) != 0 && step.Action.Turn.Sign == 0 ? step : null;
                }
            }
        }
    }

    // 1 when turning to the right brings the legs apart, -1 to the left, 0 when they are not crossed
    private static int WayApart(StepAction action)
    {
        if ((action.FootInFront ?? FootInFront(action)) is Foot front)
        {
            return front == Foot.Right ? -1 : 1;
        }

        return 0;
    }

    private static Foot? FootInFront(StepAction action) => action.Foot.ToFoot() is not Foot foot || !StaysDown(action) ? null : action.Direction switch
    {
        Direction.CrossFront or Direction.LockFront or Direction.Across => foot,
        Direction.CrossBehind or Direction.LockBehind or Direction.Behind => foot.Other(),
        _ => null,
    };

    private static bool StaysDown(StepAction action) => action.Kind is ActionKind.Step or ActionKind.Touch or ActionKind.Tap or ActionKind.Point
        or ActionKind.Stomp or ActionKind.Leap or ActionKind.Press or ActionKind.Jump or ActionKind.Rock;
}
