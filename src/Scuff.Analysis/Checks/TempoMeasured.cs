using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Fit;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>A stated tempo against that of the music.</summary>
public sealed class TempoMeasured : ICheck
{
    // sheets print whole beats
    private const double Near = 1.5;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/tempo-measured",
        Severity.Warning,
        "“{track}” says {stated} beats a minute, but its music has {heard}.",
        "Dancers look for a recording by its tempo. Half and double of it are the same music counted otherwise; anything else is a slip, or another edit.",
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Quay Road", 112 bpm, intro 16
        """,
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Quay Road", 120 bpm, intro 16
        """,
        "trade rule R28")
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
        foreach (TrackFit fit in context.Fits.Where(f => f.Music.Map.Tempo.Value > 0))
        {
            double heard = fit.Music.Map.Tempo.Value;
            if (fit.Track.Tempo is not { } tempo || new[] { 0.5, 1, 2 }.Any(times => Math.Abs((tempo.BeatsPerMinute.ToDouble() * times) - heard) < Near * Math.Max(1, times)))
            {
                continue;
            }

            Ratio value = new((long)Math.Round(heard * 10), 10);
            yield return TheRule.At(
                fit.Track.Span, ("track", fit.Track.Title), ("stated", Words.Tenths(tempo.BeatsPerMinute)), ("heard", Words.Tenths(value)));
        }
    }
}
