using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Fit;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A stated length against that of the music.</summary>
public sealed class LengthMeasured : ICheck
{
    // players round, and leave out silence at the end
    private const double Near = 4;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/length-measured",
        Severity.Warning,
        "“{track}” is said to last {stated}, but its music lasts {heard}.",
        "Songs exist in several edits with other intros and breaks. The length tells which one the sheet means.",
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Quay Road", 120 bpm, intro 16, 2:30
        """,
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Quay Road", 120 bpm, intro 16, 0:56
        """,
        "trade rule R27")
    {
        Music = """
            title: Quay Road
            tempo 120, first beat 0.5, 4/4
            intro 16, A 32, B 32, A 32
            """,
    };

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (TrackFit fit in context.Fits)
        {
            if (fit.Track.LengthSeconds is { } stated && Math.Abs(stated.ToDouble() - fit.Music.Map.Seconds) > Near)
            {
                yield return TheRule.At(
                    fit.Track.Span, ("track", fit.Track.Title), ("stated", Words.Clock(stated.ToDouble())), ("heard", Words.Clock(fit.Music.Map.Seconds)));
            }
        }
    }
}
