using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks;

/// <summary>Printed facings against computed ones.</summary>
public sealed class FacingClaims : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "facing/claim-differs",
        Severity.Error,
        "The sheet prints {claimed} here, but the turns up to here lead to {computed}{more}.",
        "Dancers who lose the thread look for the clock time. A false one turns them to the wrong wall.",
        """
        Clock

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  turn 1/4 left step L forward, touch R together  [3:00]
        """,
        """
        Clock

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  turn 1/4 left step L forward, touch R together  [9:00]
        """,
        "trade rule R11");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        List<FacingWalk> walks = [];
        if (context.Dance.IsPhrased)
        {
            foreach (Part part in context.Dance.Parts)
            {
                // the facing at which the part first comes in the sequence, or the front when each part is written from there
                IEnumerable<Facing?> starts = Starts(context, StretchKind.Wall, part.Name).Append(Facing.Front);
                walks.Add(Best(context, [.. part.Sections.SelectMany(section => section.Lines)], starts));
            }
        }
        else
        {
            walks.Add(context.Facings);
        }

        foreach (Tag tag in context.Dance.Tags)
        {
            walks.Add(Best(context, tag.Body.Lines, Starts(context, StretchKind.Tag, tag.Name).Append(Facing.Front)));
        }

        return walks.SelectMany(walk => walk.Troubles).Select(Tell);
    }

    private static FacingWalk Best(CheckContext context, IReadOnlyList<WrittenLine> lines, IEnumerable<Facing?> starts)
        => FacingWalk.Best(lines, starts.Distinct(), line => context.IsDoubtful(line.Span));

    private static IEnumerable<Facing?> Starts(CheckContext context, StretchKind kind, string name)
        => context.TrackTimelines.Select(track => track.Timeline).Append(context.PlainTimeline)
            .SelectMany(timeline => timeline.Stretches)
            .Where(stretch => stretch.Plan.Kind == kind && string.Equals(stretch.Plan.Name, name, StringComparison.OrdinalIgnoreCase))
            .Select(stretch => stretch.Facing);

    private static Diagnostic Tell(ClaimTrouble trouble)
    {
        string computed = trouble.Computed.ToString();
        bool isAlone = trouble.Followers.Count == 0;
        string more = isAlone
            ? ""
            : "; the facings after it are off by the same " + Words.Of(-trouble.Offset) + ", so perhaps a turn before it is not as meant";
        Diagnostic complaint = TheRule
            .At(trouble.Claim.Span, ("claimed", trouble.Claim.Facing.ToString()), ("computed", computed), ("more", more))
            .OnCount(trouble.Count);
        foreach (FacingClaim follower in trouble.Followers)
        {
            complaint = complaint.WithRelated(follower.Span, "off by the same turn");
        }

        // a printed facing changes nothing that is danced; where others agree with it the turn is as likely to be wrong
        return complaint.WithFixes(new Fix(
            "print " + computed, new DanceEdit.SetFacing(trouble.Claim, trouble.Computed), IsSafe: isAlone));
    }
}
