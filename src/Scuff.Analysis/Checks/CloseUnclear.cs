using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Analysis.Checks;

/// <summary>A slide, drag, press or sway which the next action contradicts.</summary>
public sealed class CloseUnclear : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/close-unclear",
        Severity.Warning,
        "Count {count}: {what} {does}, but count {next} goes on with {foot}: say where the weight is, or write {meant}.",
        "Slides, drags, presses and sways are danced with and without weight. What follows tells which was meant, but only to those who read ahead.",
        """
        Close

        section 1
        1-2  step R to side, drag L together
        3-4  step R to side, step L together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        """
        Close

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, step L together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        "trade rule R34");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (WeightFinding finding in context.Weights.Where(f => f.Trouble == WeightTrouble.CloseUnclear))
        {
            bool tookWeight = finding.Giver is
            {
                Written.WeightIsStated: false,
                Action: { Effect: WeightEffect.Takes, Kind: ActionKind.Sway or ActionKind.Slide or ActionKind.Drag or ActionKind.Press },
            };
            WalkedStep doubtful = (tookWeight ? finding.Giver : finding.Previous) ?? finding.Step;
            StepAction step = new(ActionKind.Step, doubtful.Action.Foot, MeantDirection(doubtful.Action), Contact.Flat, WeightEffect.Takes);
            Diagnostic complaint = TheRule
                .At(
                    doubtful.Written.Span,
                    ("count", doubtful.Label),
                    ("what", Words.Of(doubtful.Action)),
                    ("does", tookWeight ? "takes the weight" : "takes no weight"),
                    ("next", finding.Step.Label),
                    ("foot", Words.Of(finding.Foot)),
                    ("meant", tookWeight ? "(weight on " + Words.Of(finding.Foot.Other()) + ")" : Words.Of(step)))
                .OnCount(doubtful.Label)
                .WithRelated(finding.Step.Written.Span, Words.Of(finding.Foot) + " moves here");
            yield return tookWeight ? complaint : complaint.WithFixes(WeightComplaint.Replace(doubtful, step));
        }
    }

    private static Direction MeantDirection(StepAction action)
        => action.Direction == Direction.Unstated ? Direction.Together : action.Direction;
}
