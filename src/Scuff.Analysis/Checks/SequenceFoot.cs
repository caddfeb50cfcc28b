using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks;

/// <summary>A part that begins with the foot on which the part before ends.</summary>
public sealed class SequenceFoot : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "sequence/foot-not-free",
        Severity.Error,
        "{after} begins with {foot}, but {before} before it ends with the weight on {foot}.",
        "In a phrased dance every part has to lead into every part that may follow it.",
        """
        Joints

        sequence: A B A

        part A
        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        part B
        section 1
        1-2  step R forward, touch L together
        3-4  step L back, touch R together
        5-6  step R forward, touch L together
        7-8  step L back, step R together
        """,
        """
        Joints

        sequence: A B A

        part A
        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        part B
        section 1
        1-2  step R forward, touch L together
        3-4  step L back, touch R together
        5-6  step R forward, touch L together
        7-8  step L back, touch R together
        """,
        "trade rule R06");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (!context.Dance.IsPhrased)
        {
            yield break;
        }

        HashSet<(string, string)> told = [];
        foreach (Junction junction in context.TrackTimelines.Select(track => track.Timeline).Append(context.PlainTimeline).SelectMany(Junction.Of))
        {
            PlanStretch before = junction.Before.Plan;
            PlanStretch after = junction.After.Plan;
            bool isOfSequence = after.Kind switch
            {
                StretchKind.Wall => before.Kind == StretchKind.Wall && after.StartsWall && !(before.IsCutByRestart && before.Cause is not null),
                StretchKind.Tag => before.Kind == StretchKind.Wall && after.Cause is null,
                _ => false,
            };
            if (isOfSequence && told.Add((before.Name, after.Name)))
            {
                Part? part = context.Dance.FindPart(after.Name);
                TextSpan span = junction.Last?.Written.Span ?? part?.Span ?? junction.Next.Written.Span;
                yield return TheRule
                    .At(span, ("after", Name(after)), ("before", Name(before)), ("foot", Words.Of(junction.Foot)))
                    .OnCount(junction.Last?.CountLabel)
                    .WithRelated(junction.Next.Written.Span, Name(after) + " begins here");
            }
        }
    }

    private static string Name(PlanStretch stretch) => (stretch.Kind == StretchKind.Tag ? "Tag " : "Part ") + stretch.Name;
}
