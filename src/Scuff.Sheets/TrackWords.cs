using System.Globalization;
using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Tracks in words.</summary>
internal static class TrackWords
{
    /// <summary>Title and artist.</summary>
    public static string Name(Track track) => track.Artist.Length > 0
        ? $"“{track.Title}” by {track.Artist}"
        : $"“{track.Title}”";

    /// <summary>Tempo, length and intro in one sentence; empty when nothing is stated.</summary>
    public static string Facts(Dance dance, Track track)
    {
        List<string> facts = [];
        if (track.Tempo is { } tempo)
        {
            facts.Add(Decimal(tempo.BeatsPerMinute) + " bpm");
        }

        if (track.LengthSeconds is { } length)
        {
            int seconds = (length + new Ratio(1, 2)).Floor;
            facts.Add(string.Create(CultureInfo.InvariantCulture, $"length {seconds / 60}:{seconds % 60:00}"));
        }

        string intro = Intro(dance, track);
        if (intro.Length > 0)
        {
            facts.Add(intro);
        }

        return facts.Count == 0 ? "" : SheetWords.Capital(string.Join(", ", facts)) + ".";
    }

    private static string Intro(Dance dance, Track track)
    {
        if (track.Intro is { } counts)
        {
            string seconds = track.IntroSeconds is { } stated
                ? $" ({Decimal(stated)} seconds)"
                : Computed(dance, track, counts) is { } computed ? $" (about {Decimal(computed)} seconds)" : "";
            return $"intro {SheetWords.Counts(counts)}{seconds}";
        }

        return track.IntroSeconds is { } only ? $"intro {Decimal(only)} seconds" : "";
    }

    private static Ratio? Computed(Dance dance, Track track, Counts counts)
        => track.Tempo is { BeatsPerMinute.Sign: > 0 } tempo
            ? tempo.SecondsOf(Counts.FromRatio(counts.Value * dance.BeatsPerCount))
            : null;

    // One decimal is closer than anybody starts to dance.
    private static string Decimal(Ratio value) => value.ToDouble().ToString("0.#", CultureInfo.InvariantCulture);
}
