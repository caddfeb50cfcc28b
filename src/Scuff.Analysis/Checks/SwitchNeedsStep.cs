using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>From a heel or point of one foot to a heel or point of the other without a step.</summary>
public sealed class SwitchNeedsStep : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/switch-needs-step",
        Severity.Error,
        "Between {before} on count {earlier} and {what} on count {count} a step is missing: {other} has to come back and take the weight.",
        "The & of a heel switch is the step that frees the other foot. Without it both feet would be in the air.",
        """
        Heels

        section 1
        1-2  R heel forward, L heel forward
        3-4  step L together, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        """
        Heels

        section 1
        1&2  R heel forward, step R together, L heel forward
        3-4  step L together, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        "trade rule R09");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (WeightFinding finding in context.Weights.Where(f => f.Trouble == WeightTrouble.SwitchNeedsStep && f.Previous is not null))
        {
            WalkedStep before = finding.Previous!;
            Diagnostic complaint = TheRule
                .At(
                    finding.Step.Written.Span,
                    ("before", Words.Of(before.Action)),
                    ("earlier", before.Label),
                    ("what", Words.Of(finding.Step.Action)),
                    ("count", finding.Step.Label),
                    ("other", Words.Of(finding.Foot.Other())))
                .OnCount(finding.Step.Label)
                .WithRelated(before.Written.Span, "the other foot is out here");
            Counts between = before.Written.Count.Place + Counts.Half;
            bool hasRoom = between < finding.Step.Written.Count.Place && ReferenceEquals(before.Section, finding.Step.Section);
            StepAction close = new(
                ActionKind.Step, finding.Foot.Other().ToActingFoot(), Direction.Together, Contact.Ball, WeightEffect.Takes);
            string label = before.Written.Count.Place.IsWhole ? "&" : CountGrid.LabelOf(between);
            yield return hasRoom
                ? complaint.WithFixes(new Fix(
                    "add & " + Words.Of(close), new DanceEdit.AddStep(before.Written, label, close), IsSafe: false))
                : complaint;
        }
    }
}
