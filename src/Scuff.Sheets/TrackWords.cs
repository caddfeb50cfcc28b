using System.Globalization;
using Scuff.Dances;
using Scuff.Sheets.Languages;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Tracks in words.</summary>
/// <param name="words">The language.</param>
internal sealed class TrackWords(Wording words)
{
    /// <summary>Title and artist.</summary>
    public string Name(Track track) => track.Artist.Length > 0
        ? words.Say("track.by", ("title", track.Title), ("artist", track.Artist))
        : words.Say("track.alone", ("title", track.Title));

    /// <summary>Tempo, length and intro in one sentence; empty when nothing is stated.</summary>
    public string Facts(Dance dance, Track track)
    {
        List<string> facts = [];
        if (Tempo(track) is { Length: > 0 } tempo)
        {
            facts.Add(tempo);
        }

        if (track.LengthSeconds is { } length)
        {
            facts.Add(words.Say("track.length", ("time", Clock(length))));
        }

        string intro = Intro(dance, track);
        if (intro.Length > 0)
        {
            facts.Add(intro);
        }

        return facts.Count == 0 ? "" : SheetWords.Capital(string.Join(", ", facts)) + ".";
    }

    /// <summary>The tempo; empty when it is not stated.</summary>
    public string Tempo(Track track) => track.Tempo is { } tempo ? words.Say("track.tempo", ("tempo", words.Decimal(tempo.BeatsPerMinute))) : "";

    /// <summary>A time of the track in minutes and seconds, to the nearest second: <c>2:05</c>.</summary>
    public static string Clock(Ratio seconds)
    {
        int whole = (seconds + new Ratio(1, 2)).Floor;
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
    }

    /// <summary>Seconds from the start of the track to a danced count; null when tempo or intro are not stated.</summary>
    public static Ratio? TimeOf(Dance dance, Track track, Counts danced)
        => (track.IntroSeconds ?? (track.Intro is { } intro ? Computed(dance, track, intro) : null)) is { } first && Computed(dance, track, danced) is { } rest
            ? first + rest
            : null;

    /// <summary>How long the dancers wait, in counts and in seconds as far as that is known; empty when it is not stated.</summary>
    public string Intro(Dance dance, Track track)
    {
        if (track.Intro is not { } length)
        {
            return track.IntroSeconds is { } only ? words.Say("track.intro-seconds", ("seconds", words.Decimal(only))) : "";
        }

        string counts = words.Counts(length);
        return track.IntroSeconds is { } stated ? words.Say("track.intro-stated", ("counts", counts), ("seconds", words.Decimal(stated)))
            : Computed(dance, track, length) is { } computed ? words.Say("track.intro-about", ("counts", counts), ("seconds", words.Decimal(computed)))
            : words.Say("track.intro", ("counts", counts));
    }

    private static Ratio? Computed(Dance dance, Track track, Counts counts)
        => track.Tempo is { BeatsPerMinute.Sign: > 0 } tempo
            ? tempo.SecondsOf(Counts.FromRatio(counts.Value * dance.BeatsPerCount))
            : null;
}
