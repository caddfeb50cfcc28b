using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>The heading's tags against those on the sheet.</summary>
public sealed class TagCount : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/tags-differ",
        Severity.Error,
        "The heading says {claimed}, but {counted}.",
        "Dancers listen for as many tags as they were told.",
        """
        Tags

        tags: 2

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        tag "Buoys" 4 counts
        1-4  sway R, sway L, sway R, sway L

        wall 2: after 8 tag "Buoys"
        """,
        """
        Tags

        tags: 1

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        tag "Buoys" 4 counts
        1-4  sway R, sway L, sway R, sway L

        wall 2: after 8 tag "Buoys"
        """,
        "trade rule R25");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        if (dance.ClaimedTags is not { } claim || !InterruptionEvents.AreAllRead(context))
        {
            yield break;
        }

        // a heading may mean the times a tag is danced, with or without bridges, or how many different ones there are
        List<(Tag? Tag, int Times)> played = [.. InterruptionEvents.Of(dance)
            .SelectMany(i => i.Acts.OfType<InterruptionAct.PlayTag>().Select(act => (dance.FindTag(act.Name), i.Walls.Distinct().Count())))
            .Concat(dance.Sequence.Where(item => item.IsTag).Select(item => (dance.FindTag(item.Name), 1)))];
        int times = played.Sum(p => p.Times);
        int tagTimes = played.Where(p => p.Tag is not { IsBridge: true }).Sum(p => p.Times);
        int kinds = played.Select(p => p.Tag?.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count();
        if (claim.Value == times || claim.Value == tagTimes || claim.Value == kinds || claim.Value == dance.Tags.Count)
        {
            yield break;
        }

        string counted = times switch
        {
            0 => "none is danced",
            1 => "one is danced",
            _ => Words.Of(times) + " are danced",
        };
        yield return TheRule
            .At(claim.Span, ("claimed", claim.Value == 1 ? "1 tag" : Words.Of(claim.Value) + " tags"), ("counted", counted))
            .WithFixes(new Fix("write tags: " + Words.Of(times), new DanceEdit.SetHeader("tags", Words.Of(times)), IsSafe: true));
    }
}
