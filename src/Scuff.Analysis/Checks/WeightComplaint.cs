using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Analysis.Checks;

/// <summary>What the complaints about a foot that is not free have in common: values, related places and mends.</summary>
internal static class WeightComplaint
{
    /// <summary>The complaint of a finding.</summary>
    public static Diagnostic Of(Rule rule, WeightFinding finding)
    {
        WalkedStep step = finding.Step;
        string foot = Words.Of(finding.Foot);
        string since = finding.Giver is { } giver ? "since count " + giver.Label + InOther(giver, step) : "at the start";
        Diagnostic complaint = rule
            .At(
                step.Written.Span,
                ("count", step.Label),
                ("foot", foot),
                ("other", Words.Of(finding.Foot.Other())),
                ("what", WithoutFoot(step.Action)),
                ("since", since),
                ("section", "Section " + Words.Of(step.Section.Number)))
            .OnCount(step.Label);
        if (finding.Giver is { } cause)
        {
            complaint = complaint.WithRelated(cause.Written.Span, "the weight went to " + foot + " here");
        }

        return complaint.WithFixes([.. Mends(finding)]);
    }

    /// <summary>Mends, best first: the step before was meant without weight, or with it; or the other foot was meant here.</summary>
    public static IEnumerable<Fix> Mends(WeightFinding finding)
    {
        if (finding.Giver is { Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes } action } giver
            && ReferenceEquals(giver, finding.Previous)
            && action.Direction == Direction.Together)
        {
            yield return Replace(giver, action with { Kind = ActionKind.Touch, Contact = Contact.Ball, Effect = WeightEffect.Keeps });
        }

        if (finding.Previous is { Action: { Kind: ActionKind.Touch, Effect: WeightEffect.Keeps } touch } previous
            && previous.Foot == finding.Foot.Other())
        {
            yield return Replace(previous, touch with { Kind = ActionKind.Step, Contact = Contact.Flat, Effect = WeightEffect.Takes });
        }

        if (finding.Trouble is WeightTrouble.FootNotFree or WeightTrouble.GestureNotFree)
        {
            yield return Replace(finding.Step, finding.Step.Action with { Foot = finding.Foot.Other().ToActingFoot() });
        }
    }

    /// <summary>A mend that dances something else on a count.</summary>
    public static Fix Replace(WalkedStep old, StepAction action)
        => new("change count " + old.Label + " to " + Words.Of(action), new DanceEdit.ReplaceStep(old.Written, action), IsSafe: false);

    private static string InOther(WalkedStep giver, WalkedStep step)
        => ReferenceEquals(giver.Section, step.Section) || giver.Section.Number == 0 ? "" : " of section " + Words.Of(giver.Section.Number);

    private static string WithoutFoot(StepAction action) => Words.Of(action with { Foot = ActingFoot.None });
}
