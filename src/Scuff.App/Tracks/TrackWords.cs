using System.Globalization;
using Scuff.Music;

namespace Scuff.App.Tracks;

/// <summary>How what was heard in a track is said.</summary>
internal static class TrackWords
{
    /// <summary>A place in a track: minutes, seconds and tenths, such as <c>1:02.3</c>.</summary>
    public static string Time(double seconds)
    {
        long tenths = (long)Math.Round(seconds * 10);
        return string.Create(CultureInfo.InvariantCulture, $"{tenths / 600}:{tenths / 10 % 60:D2}.{tenths % 10}");
    }

    /// <summary>The length of a track: minutes and seconds.</summary>
    public static string Length(double seconds)
    {
        long whole = (long)Math.Round(seconds);
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:D2}");
    }

    /// <summary>How sure an answer is, in a word.</summary>
    public static string Sure(double confidence) => confidence switch
    {
        >= 0.9 => "sure",
        >= 0.7 => "fairly sure",
        >= HeardTrack.Doubtful => "not sure",
        _ => "a guess",
    };

    /// <summary>Beats a minute, to the tenth where that says more.</summary>
    public static string Tempo(double beatsAMinute) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(beatsAMinute, 1):0.#}");

    /// <summary>The meter as it is written.</summary>
    public static string Meter(Meter meter) => meter switch
    {
        { IsCompound: true } => "6/8, felt in two",
        { BeatsInBar: 3 } => "3/4, a waltz",
        _ => string.Create(CultureInfo.InvariantCulture, $"{meter.BeatsInBar}/4"),
    };

    /// <summary>How a divided beat is played.</summary>
    public static string Swing(double ratio) => ratio switch
    {
        < 1.15 => "straight",
        < 1.35 => string.Create(CultureInfo.InvariantCulture, $"hardly swung, {ratio:0.0} to 1"),
        < 1.8 => string.Create(CultureInfo.InvariantCulture, $"lightly swung, {ratio:0.0} to 1"),
        _ => string.Create(CultureInfo.InvariantCulture, $"swung, {ratio:0.0} to 1"),
    };

    /// <summary>What the name of a section is with its letter.</summary>
    public static string Section(TrackSection section) => section.Name.Length > 0 ? $"{section.Label} {section.Name}" : section.Label;

    /// <summary>A number of counts.</summary>
    public static string Counts(int counts) => string.Create(CultureInfo.InvariantCulture, $"{counts} {(counts == 1 ? "count" : "counts")}");

    /// <summary>Beats before the first count 1 that begin the track.</summary>
    public static int PickupOf(TrackMap map)
    {
        int first = Enumerable.Range(0, map.Beats.Count).FirstOrDefault(i => map.Beats[i].Count == 1, 0);
        return map.FirstCount.Value >= first ? first : 0;
    }

    /// <summary>Counts from the first count 1 to the start of the dance.</summary>
    public static int IntroOf(TrackMap map) => map.FirstCount.Value - PickupOf(map);

    /// <summary>The section that a beat lies in, or null.</summary>
    public static TrackSection? SectionAt(TrackMap map, int beat) => map.Sections.LastOrDefault(s => s.FirstBeat <= beat);

    /// <summary>The number of the section that a beat lies in, an index into those of the map; -1 before the first.</summary>
    public static int SectionNumberAt(TrackMap map, int beat)
    {
        int at = map.Sections.Count - 1;
        while (at >= 0 && map.Sections[at].FirstBeat > beat)
        {
            at--;
        }

        return at;
    }

    /// <summary>A place where the music stops or thins out: from when to when, for how many counts.</summary>
    public static string Break(TrackMap map, TrackBreak stop)
    {
        int counts = BeatsBetween(map, stop.Start, stop.End);
        string what = stop.IsStop ? "" : " without drums";
        return $"{Time(stop.Start)} to {Time(stop.End)}, {Counts(counts)}{what}";
    }

    /// <summary>How many beats lie from one time to another.</summary>
    public static int BeatsBetween(TrackMap map, double from, double to) => map.Beats.Count(b => b.Seconds >= from - 0.05 && b.Seconds < to - 0.05);
}
