using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>The intro in counts against the intro in seconds.</summary>
public sealed class IntroSeconds : ICheck
{
    // just half a beat is still allowed, whatever a division left over
    private const double Rounding = 1e-9;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/intro-differs",
        Severity.Warning,
        "{counts} last {computed} seconds{tempo}, but the track says {stated} seconds.",
        "Who counts and who watches the clock start at different times. Half a beat is allowed; more means that one of the figures is from another edit.",
        """
        Early

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Stones in a Row" by Captain Oyster, 120 bpm, intro 16 counts 20 seconds
        """,
        """
        Early

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Stones in a Row" by Captain Oyster, 120 bpm, intro 16 counts 8 seconds
        """,
        "trade rule R26");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        foreach (Track track in dance.Tracks)
        {
            if (track is not { Tempo: { } tempo, Intro: { } counts, IntroSeconds: { } stated }
                || !DancedTempo.IsBelievable(tempo.BeatsPerMinute) || counts.Value >= 1000 || stated >= 1000)
            {
                continue;
            }

            // a minute and a second are printed whole: what rounds to the stated second is right too
            double beats = counts.Value.ToDouble() * dance.BeatsPerCount.ToDouble();
            double beat = 60 / tempo.BeatsPerMinute.ToDouble();
            double away = Math.Abs((beats * beat) - stated.ToDouble());
            if (away > (beat / 2) + Rounding && away > (stated.IsWhole ? 0.5 : 0))
            {
                Ratio computed = new((int)Math.Round(beats * beat * 10), 10);
                string value = Words.Tenths(computed);
                yield return TheRule
                    .At(
                        track.Span,
                        ("counts", Words.Of(counts)),
                        ("computed", value),
                        ("tempo", $" at {Words.Tenths(tempo.BeatsPerMinute)} beats a minute"),
                        ("stated", Words.Tenths(stated)))
                    .WithFixes(new Fix($"write {value} seconds", new DanceEdit.SetIntroSeconds(track, computed), IsSafe: false));
            }
        }
    }
}
