using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>The heading's counts against the sections.</summary>
public sealed class TotalCounts : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "count/total-differs",
        Severity.Error,
        "The heading says {claimed} counts, but the sections have {sum}.",
        "The count is how a dance is found and how it is fitted to music. One of the two is left over from an earlier version.",
        """
        Sum

        counts: 16

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        """
        Sum

        counts: 8

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        "trade rule R03");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        if (dance.ClaimedCounts is not { } claim || dance.Parts.Count == 0)
        {
            yield break;
        }

        int sum = dance.Length.Value.Floor;
        if (claim.Value == sum || (dance.IsPhrased && claim.Value == context.PlainTimeline.Length.Value.Floor))
        {
            yield break;
        }

        // one cause, one complaint: missing counts, a false heading of a section or of a part already say it
        int missing = dance.Parts.Sum(part => SectionShape.MissingTails(dance, part));
        bool isExplained = (missing > 0 && sum + missing == claim.Value)
            || dance.Sections.Any(section => section.ClaimedLength is { } claimed && claimed != section.Length)
            || dance.Parts.Any(part => part.ClaimedLength is { } claimed && claimed != part.Length);
        if (isExplained)
        {
            yield break;
        }

        string each = string.Join(" + ", dance.Sections.Select(section => section.Length.ToString()));
        string parts = dance.Sections.Count() > 1 ? each + " = " + Words.Of(sum) : Words.Of(sum);
        yield return TheRule
            .At(claim.Span, ("claimed", Words.Of(claim.Value)), ("sum", parts))
            .WithFixes(new Fix("write counts: " + Words.Of(sum), new DanceEdit.SetHeader("counts", Words.Of(sum)), IsSafe: true));
    }
}
