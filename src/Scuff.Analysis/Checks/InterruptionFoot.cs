using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks;

/// <summary>A restart, tag or bridge that begins with the foot that has the weight.</summary>
public sealed class InterruptionFoot : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/foot-not-free",
        Severity.Error,
        "{what} in wall {wall} begins with {foot}, but the weight is on {foot} there{since}: change the count before it, for example to {change}.",
        "At a restart the foot of count 1 has to be free. Where it is not, the last count before is danced differently, and the sheet says so.",
        """
        Again

        section 1
        1-2  step R to side, touch L together
        3-4  step L forward, step R together
        5-6  step L to side, touch R together
        7-8  step R to side, step L together

        wall 2: after 4 restart
        """,
        """
        Again

        section 1
        1-2  step R to side, touch L together
        3-4  step L forward, step R together
        5-6  step L to side, touch R together
        7-8  step R to side, step L together

        wall 2: after 4 restart, with count 4: touch R together
        """,
        "trade rule R21");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        HashSet<(Interruption, string)> told = [];
        bool repeats = !context.Weights.Any(finding => finding.Trouble == WeightTrouble.DoesNotRepeat);
        foreach (TrackTimeline track in context.TrackTimelines)
        {
            foreach (Junction junction in Junction.Of(track.Timeline))
            {
                if (CauseOf(junction) is not { } cause
                    || context.IsDoubtful(cause.Span)
                    || InterruptionCutsFigure.Concerns(context, cause)
                    || (!repeats && !junction.Before.Plan.IsCutByRestart))
                {
                    continue;
                }

                string what = What(junction.After.Plan);
                if (told.Add((cause, what)))
                {
                    yield return Tell(junction, cause, what);
                }
            }
        }
    }

    /// <summary>The interruption that leads into the second stretch; null when a tag does, which is a check of its own.</summary>
    private static Interruption? CauseOf(Junction junction)
    {
        PlanStretch before = junction.Before.Plan;
        PlanStretch after = junction.After.Plan;
        return before.Kind switch
        {
            StretchKind.Wall when after.Kind is StretchKind.Tag or StretchKind.Quote => after.Cause,
            StretchKind.Wall when before.IsCutByRestart => before.Cause,
            StretchKind.Quote or StretchKind.Wait => before.Cause,
            StretchKind.Tag when before.Name.Length == 0 => before.Cause,
            _ => null,
        };
    }

    private static Diagnostic Tell(Junction junction, Interruption cause, string what)
    {
        string foot = Words.Of(junction.Foot);
        TimedStep? last = junction.Last;
        StepAction change = new(ActionKind.Touch, junction.Foot.ToActingFoot(), Direction.Together, Contact.Ball, WeightEffect.Keeps);
        Diagnostic complaint = TheRule.At(
            cause.Span,
            ("what", what),
            ("wall", Words.Of(junction.Before.Plan.Wall)),
            ("foot", foot),
            ("since", last is null ? "" : " since count " + last.CountLabel),
            ("change", Words.Of(change)));
        if (last is null)
        {
            return complaint;
        }

        complaint = complaint.WithRelated(last.Written.Span, "the weight went to " + foot + " here");
        bool canChange = junction.Before.Plan.Kind == StretchKind.Wall
            && junction.Before.Plan.Changes.Count == 0
            && last.Action is { Kind: ActionKind.Step, Effect: WeightEffect.Takes }
            && last.Action.Foot.ToFoot() == junction.Foot
            && last.WeightBefore == junction.Foot.Other().ToWeight();
        return canChange
            ? complaint.WithFixes(new Fix(
                "dance count " + last.CountLabel + " as " + Words.Of(change),
                new DanceEdit.ChangeLastCount(cause, last.CountLabel, change),
                IsSafe: false))
            : complaint;
    }

    private static string What(PlanStretch after) => after.Kind switch
    {
        StretchKind.Tag => after.Name.Length == 0 ? "What is danced" : "The tag " + after.Name,
        StretchKind.Quote => "The quoted section",
        StretchKind.Wall when after.StartsWall => "The restart",
        _ => "The rest of the dance",
    };
}
