using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Fit;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>Counts that are left over when the music ends away from the front.</summary>
public sealed class LeftOver : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/left-over",
        Severity.Hint,
        "When “{track}” ends, {counts} of wall {wall} are danced and the floor faces {facing}: {mend}.",
        "A floor that ends facing the front as the music stops looks as if it knew the music.",
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R forward, pivot 1/2 left
        7-8  step R together, step L in place

        track: "Quay Road", 120 bpm, intro 16
        """,
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R forward, pivot 1/2 left
        7-8  step R together, step L in place

        track: "Quay Road", 120 bpm, intro 16
        ending: wall 11, after 4 counts: step R to side, touch L together, step L to side, hold
        """,
        "trade rule R27")
    {
        Music = """
            title: Quay Road
            tempo 120, first beat 0.5, 4/4
            intro 16, A 32, B 32, A 24
            """,
    };

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (TrackFit fit in context.Fits)
        {
            if (fit.Plan is not { } plan || plan.Walls.Count == 0 || context.IsDoubtful(fit.Track.Span)
                || plan.Timeline.FacingAfter is not { } facing || plan.EndsAtFront || plan.Ending is { IsHers: true })
            {
                continue;
            }

            FitWall last = plan.Walls[^1];
            bool hasOne = (fit.Track.Ending ?? context.Dance.Ending) is not null;
            string mend = hasOne ? "the ending is not there yet, or turns elsewhere" : "an ending could turn it to the front";
            yield return TheRule.At(
                fit.Track.Span,
                ("track", fit.Track.Title),
                ("counts", Words.Of(Counts.FromWhole(last.Danced))),
                ("wall", Words.Of(last.Number)),
                ("facing", facing.ToString()),
                ("mend", mend));
        }
    }
}
