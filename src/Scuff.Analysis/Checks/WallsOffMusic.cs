using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Fit;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A wall that begins where nothing of the music does.</summary>
public sealed class WallsOffMusic : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/walls-off-music",
        Severity.Warning,
        "On “{track}”, wall {wall} begins {where}.",
        "Dancers feel at once when the music begins anew and they do not. Something before it breaks the pattern: a tag or a restart puts it right (scuff fit says which).",
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Quay Road", 120 bpm, intro 16
        """,
        """
        Measure

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Quay Road", 120 bpm, intro 16
        wall 4: after 4 restart
        """,
        "trade rule R27")
    {
        Music = """
            title: Quay Road
            tempo 120, first beat 0.5, 4/4
            intro 16, A 28, B 32, A 32
            """,
    };

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        // what begins on the last chord is not danced any more
        int bar = context.Dance.BeatsPerBar == 3 ? 3 : 4;
        foreach (TrackFit fit in context.Fits.Where(f => f.Plan is not null && !context.IsDoubtful(f.Track.Span)))
        {
            // the first one is the cause of those after it; that of wall 1 is the intro, which is a check of its own
            FitWall? off = fit.Plan!.Walls.FirstOrDefault(w => w.Strength == 0 && fit.Music.Counts - w.Begins >= bar);
            if (off is { Number: > 1 })
            {
                yield return TheRule.At(fit.Track.Span, ("track", fit.Track.Title), ("wall", Words.Of(off.Number)), ("where", Where(fit.Music, off)));
            }
        }
    }

    private static string Where(CountedMusic music, FitWall wall)
    {
        int beat = music.BeatOf(wall.Begins).Floor;
        return $"at {Words.Clock(wall.Seconds)}, where the music is on count {Words.Of(music.Map.Beats[beat].Count)} of an eight";
    }
}
