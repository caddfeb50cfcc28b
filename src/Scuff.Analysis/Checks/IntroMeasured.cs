using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Fit;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A stated intro against the music.</summary>
public sealed class IntroMeasured : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/intro-measured",
        Severity.Warning,
        "The intro of “{track}” is said to be {stated}, but {heard}.",
        "Who starts on another count than the sheet says is off the music from the first wall on.",
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Quay Road", 120 bpm, intro 15
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
        "trade rule R26")
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
        foreach (TrackFit fit in context.Fits.Where(f => f.Music.Counts > 0))
        {
            CountedMusic music = fit.Music;
            if (fit.Track.Intro is { IsWhole: true } intro && CountOf(music, intro.Value.Floor) is { } count)
            {
                double seconds = music.SecondsOf(count);
                double half = count + 1 < music.Counts ? (music.SecondsOf(count + 1) - seconds) / 2 : 0.5;
                double? stated = fit.Track.IntroSeconds?.ToDouble();
                if (stated is { } said && Math.Abs(said - seconds) > Math.Max(half, 0.5))
                {
                    yield return Tell(fit, $"{Words.Of(intro)} and {Words.Tenths(said)} seconds", $"those counts last {Words.Tenths(seconds)} seconds");
                }
                else if (music.StrengthOf(count) == 0)
                {
                    int beat = music.BeatOf(count).Floor;
                    yield return Tell(fit, Words.Of(intro), $"there the music is on count {Words.Of(music.Map.Beats[beat].Count)}");
                }
            }
            else if (fit.Track.Intro is { IsWhole: true } late)
            {
                yield return Tell(fit, Words.Of(late), "the music is over by then");
            }
        }
    }

    private static Diagnostic Tell(TrackFit fit, string stated, string heard)
        => TheRule.At(fit.Track.Span, ("track", fit.Track.Title), ("stated", stated), ("heard", heard));

    private static int? CountOf(CountedMusic music, int intro)
    {
        for (int i = intro; i < music.Counts; i++)
        {
            if (music.IntroOf(i) == intro)
            {
                return i;
            }
        }

        return null;
    }
}
