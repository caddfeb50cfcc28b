using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks;

/// <summary>A tag that ends on the foot with which the dance goes on.</summary>
public sealed class TagFoot : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "tag/foot-not-free",
        Severity.Error,
        "The {tag} ends with the weight on {foot}, but {what} goes on with {foot}.",
        "A tag has to hand back the foot it was given, or the dance begins again on the wrong one.",
        """
        Sways

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        tag "Buoys" 4 counts
        1-2  sway R, sway L
        3-4  sway R, hold

        wall 2: after 8 tag "Buoys"
        """,
        """
        Sways

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        tag "Buoys" 4 counts
        1-2  sway R, sway L
        3-4  sway R, sway L

        wall 2: after 8 tag "Buoys"
        """,
        "trade rule R24");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        HashSet<string> told = new(StringComparer.OrdinalIgnoreCase);
        IEnumerable<Timeline> timelines = context.TrackTimelines.Select(track => track.Timeline).Append(context.PlainTimeline);
        foreach (Junction junction in timelines.SelectMany(Junction.Of))
        {
            PlanStretch stretch = junction.Before.Plan;
            if (stretch.Kind != StretchKind.Tag
                || stretch.Name.Length == 0
                || context.Dance.FindTag(stretch.Name) is not { } tag
                || context.Weights.Any(finding => ReferenceEquals(finding.Step.Section, tag.Body))
                || !told.Add(tag.Name))
            {
                continue;
            }

            yield return Tell(tag, junction);
        }

        // a tag that no track plays yet is judged as one at the end of a wall
        if (!context.Dance.IsPhrased && context.Dance.Parts.Count > 0 && WeightWalk.FirstNeed(context.StepsOf(context.Dance.Parts[0])) is { } first)
        {
            foreach (Tag tag in context.Dance.Tags.Where(tag => !IsPlayed(context, tag)))
            {
                Weight end = tag.Body.Steps.Aggregate(Weight.Unknown, (weight, step) => step.Action.WeightAfter(weight));
                if (first.Foot is { } foot && end.StandingFoot() == foot)
                {
                    yield return TheRule.At(tag.Span, ("tag", Name(tag)), ("foot", Words.Of(foot)), ("what", "the dance"));
                }
            }
        }
    }

    private static bool IsPlayed(CheckContext context, Tag tag) => context.Interruptions
        .SelectMany(i => i.Acts)
        .OfType<InterruptionAct.PlayTag>()
        .Any(act => ReferenceEquals(context.Dance.FindTag(act.Name), tag));

    private static Diagnostic Tell(Tag tag, Junction junction)
    {
        string foot = Words.Of(junction.Foot);
        string what = junction.After.Plan.Kind == StretchKind.Wall ? "the dance" : "what follows";
        Diagnostic complaint = TheRule
            .At(junction.Last?.Written.Span ?? tag.Span, ("tag", Name(tag)), ("foot", foot), ("what", what))
            .OnCount(junction.Last?.CountLabel)
            .WithRelated(junction.Next.Written.Span, what + " goes on here with " + foot);
        return junction.Last is { Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes } action } last
            && last.WeightBefore == junction.Foot.Other().ToWeight()
            ? complaint.WithFixes(new Fix(
                "change count " + last.CountLabel + " to " + Words.Of(action with { Kind = ActionKind.Touch }),
                new DanceEdit.ReplaceStep(last.Written, action with { Kind = ActionKind.Touch, Contact = Contact.Ball, Effect = WeightEffect.Keeps }),
                IsSafe: false))
            : complaint;
    }

    private static string Name(Tag tag) => (tag.IsBridge ? "bridge" : "tag") + (tag.Name.Length == 0 ? "" : " " + tag.Name);
}
