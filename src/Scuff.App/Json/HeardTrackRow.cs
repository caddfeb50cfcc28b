using System.Text.Json.Serialization;
using Scuff.App.Tracks;
using Scuff.Music;

namespace Scuff.App.Json;

/// <summary>What <c>hear --json</c> says about one track; times in seconds from the start of the sound. The names are fixed: scripts depend on them.</summary>
internal sealed record HeardTrackRow
{
    /// <summary>The file as named.</summary>
    public required string File { get; init; }

    /// <summary>Why it could not be heard; absent when it was.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Error { get; init; }

    /// <summary>The title that the file gives, or empty.</summary>
    public string Title { get; init; } = "";

    /// <summary>Who plays it by the file, or empty.</summary>
    public string Artist { get; init; } = "";

    /// <summary>Length.</summary>
    public double Seconds { get; init; }

    /// <summary>Whether a person should look at it: a warning, a remark, or an answer that is a guess.</summary>
    public bool NeedsALook { get; init; }

    /// <summary>Beats a minute; null without beats.</summary>
    public HeardValue<double>? Tempo { get; init; }

    /// <summary>The meter: <c>4/4</c>, <c>3/4</c> or <c>6/8</c> felt in two; null without beats.</summary>
    public HeardValue<string>? Meter { get; init; }

    /// <summary>Long half to short half of a beat; null without beats.</summary>
    public HeardValue<double>? Swing { get; init; }

    /// <summary>Where the dance starts; null without beats.</summary>
    public HeardValue<double>? FirstCount { get; init; }

    /// <summary>Counts from the first count 1 to the start of the dance.</summary>
    public int IntroCounts { get; init; }

    /// <summary>The sections.</summary>
    public IReadOnlyList<HeardSectionRow> Sections { get; init; } = [];

    /// <summary>Where the music stops or thins out.</summary>
    public IReadOnlyList<HeardBreakRow> Breaks { get; init; } = [];

    /// <summary>Eights that are too short or too long.</summary>
    public IReadOnlyList<HeardOddRow> OddEights { get; init; } = [];

    /// <summary>Every beat.</summary>
    public IReadOnlyList<HeardBeatRow> Beats { get; init; } = [];

    /// <summary>What a person should know of the track, or empty.</summary>
    public string Remark { get; init; } = "";

    /// <summary>What is wrong with the file, or null.</summary>
    public string? Warning { get; init; }

    /// <summary>A track as heard; or why it was not.</summary>
    public static HeardTrackRow Of(HeardTrack track)
    {
        if (track.Map is not { } map)
        {
            return new HeardTrackRow { File = track.Name, Error = track.Trouble, NeedsALook = true };
        }

        HeardTrackRow row = new()
        {
            File = track.Name,
            Title = map.Title,
            Artist = map.Artist,
            Seconds = map.Seconds,
            NeedsALook = track.NeedsALook,
            Remark = map.Remark,
            Warning = track.Warning,
        };
        return map.Beats.Count == 0 ? row : row with
        {
            Tempo = HeardValue<double>.Of(map.Tempo, t => t),
            Meter = HeardValue<string>.Of(map.Meter, m => m.IsCompound ? "6/8" : $"{m.BeatsInBar}/4"),
            Swing = HeardValue<double>.Of(map.Swing, s => s),
            FirstCount = map.FirstCount.Value < 0 ? null : HeardValue<double>.Of(map.FirstCount, f => map.Beats[f].Seconds),
            IntroCounts = map.FirstCount.Value < 0 ? 0 : TrackWords.IntroOf(map),
            Sections = [.. map.Sections.Select(s => HeardSectionRow.Of(map, s))],
            Breaks = [.. map.Breaks.Select(b => new HeardBreakRow(b.Start, b.End, b.IsStop ? "stop" : "thin", b.Confidence))],
            OddEights = [.. OddEight.In(map).Select(o => new HeardOddRow(map.Beats[o.FirstBeat].Seconds, o.FirstBeat, o.Beats, o.Expected))],
            Beats = [.. map.Beats.Select(b => new HeardBeatRow(b.Seconds, b.BarPosition, b.Count))],
        };
    }
}
