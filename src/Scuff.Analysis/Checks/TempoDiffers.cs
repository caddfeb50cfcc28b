using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>Two stated tempi that cannot both be true.</summary>
public sealed class TempoDiffers : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/tempo-differs",
        Severity.Warning,
        "{where} says {other} beats a minute, but “{track}” says {stated}.",
        "Half and double of a tempo are the same music counted otherwise. Any other difference means that one figure is wrong, or belongs to another edit.",
        """
        Two Clocks

        bpm: 128

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Beam and Bearing" by The Slipway Six, 108 bpm, intro 32
        """,
        """
        Two Clocks

        bpm: 108

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Beam and Bearing" by The Slipway Six, 108 bpm, intro 32
        """,
        "trade rule R28");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        Track[] timed = [.. dance.Tracks.Where(track => track.Tempo is { } tempo && DancedTempo.IsBelievable(tempo.BeatsPerMinute))];
        if (DancedTempo.OfHeading(dance) is { } heading
            && timed.Length > 0
            && !timed.Any(track => Agree(heading, Beats(track)))
            && dance.Header.FirstOrDefault(field => field.Key == "bpm") is { } field)
        {
            string value = Words.Tenths(Beats(timed[0]));
            Diagnostic found = TheRule
                .At(field.Span, ("where", "The heading"), ("other", Words.Tenths(heading)), ("track", timed[0].Title), ("stated", value))
                .WithRelated(timed[0].Span, "the track");
            yield return timed.Length > 1 || !Beats(timed[0]).IsWhole
                ? found
                : found.WithFixes(new Fix("write bpm: " + value, new DanceEdit.SetHeader("bpm", value), IsSafe: false));
        }

        for (int i = 1; i < timed.Length; i++)
        {
            Track? same = timed.Take(i).FirstOrDefault(other =>
                string.Equals(other.Title, timed[i].Title, StringComparison.OrdinalIgnoreCase)
                && string.Equals(other.Artist, timed[i].Artist, StringComparison.OrdinalIgnoreCase)
                && (other.LengthSeconds is null || timed[i].LengthSeconds is null || other.LengthSeconds == timed[i].LengthSeconds));
            if (same is not null && !Agree(Beats(same), Beats(timed[i])))
            {
                yield return TheRule
                    .At(
                        timed[i].Span,
                        ("where", "Another line"),
                        ("other", Words.Tenths(Beats(same))),
                        ("track", timed[i].Title),
                        ("stated", Words.Tenths(Beats(timed[i]))))
                    .WithRelated(same.Span, "the other line");
            }
        }
    }

    private static Ratio Beats(Track track) => track.Tempo!.Value.BeatsPerMinute;

    private static bool Agree(Ratio a, Ratio b) => IsNear(a, b) || IsNear(a, b * 2) || IsNear(a * 2, b);

    // headings are rounded to whole beats
    private static bool IsNear(Ratio a, Ratio b) => a - b is var apart && apart < 2 && apart > -2;
}
