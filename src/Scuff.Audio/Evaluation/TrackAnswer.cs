using System.Text.Json;
using System.Text.Json.Serialization;
using Scuff.Music;

namespace Scuff.Audio.Evaluation;

/// <summary>
/// What a program says about a song: a file of a folder of estimates. Times in seconds from the start of the decoded sound.
/// What it does not say (null) is not scored; what it says to be empty is.
/// </summary>
public sealed record TrackAnswer
{
    /// <summary>Every beat.</summary>
    public ValueList<double>? Beats { get; init; }

    /// <summary>Every first beat of a bar.</summary>
    public ValueList<double>? Downbeats { get; init; }

    /// <summary>Beats a minute.</summary>
    public double? TempoBpm { get; init; }

    /// <summary>Index of a beat that is a count 1; the counts go on from there by 8 (6 in 3/4).</summary>
    public int? FirstCountBeatIndex { get; init; }

    /// <summary>The times of every count 1; stronger than <see cref="FirstCountBeatIndex"/>.</summary>
    public ValueList<double>? CountOnes { get; init; }

    /// <summary>The sections.</summary>
    public ValueList<AnswerSection>? Sections { get; init; }

    /// <summary>The breaks.</summary>
    public ValueList<AnswerBreak>? Breaks { get; init; }

    /// <summary>Long half to short half of a beat.</summary>
    public double? SwingRatio { get; init; }

    /// <summary>How long it took, by the clock.</summary>
    public double? Seconds { get; init; }

    /// <summary>How long it took, of the processor.</summary>
    public double? CpuSeconds { get; init; }

    /// <summary>How long the processor took to decode, which is not in <see cref="CpuSeconds"/>.</summary>
    public double? DecodeSeconds { get; init; }

    /// <summary>Length of the song.</summary>
    public double? AudioSeconds { get; init; }

    /// <summary>Whether the answer says anything about the count.</summary>
    [JsonIgnore]
    public bool HasCount => CountOnes is not null || FirstCountBeatIndex is not null;

    /// <summary>Reads what <see cref="Write"/> writes; names it does not know are left out.</summary>
    /// <exception cref="JsonException">It is no answer.</exception>
    public static TrackAnswer Read(string json) => JsonSerializer.Deserialize<TrackAnswer>(json, ScoreJson.Options) ?? throw new JsonException("The file says null.");

    /// <summary>What a map says, without how long it took.</summary>
    public static TrackAnswer Of(TrackMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        ValueList<TrackBeat> beats = map.Beats;
        return new()
        {
            Beats = [.. beats.Select(b => b.Seconds)],
            Downbeats = [.. beats.Where(b => b.BarPosition == 1).Select(b => b.Seconds)],
            TempoBpm = map.Tempo.Value,
            FirstCountBeatIndex = map.FirstCount.Value >= 0 ? map.FirstCount.Value : null,
            CountOnes = [.. beats.Where(b => b.Count == 1).Select(b => b.Seconds)],
            Sections = [.. map.Sections.Select(s => new AnswerSection(beats[s.FirstBeat].Seconds, EndOf(s), s.Label))],
            Breaks = [.. map.Breaks.Select(b => new AnswerBreak(b.Start, b.End, b.IsStop ? AnswerBreak.Stop : AnswerBreak.Drop))],
            SwingRatio = map.Swing.Value,
            AudioSeconds = map.Seconds,
        };

        double EndOf(TrackSection section) => section.FirstBeat + section.Beats < beats.Count ? beats[section.FirstBeat + section.Beats].Seconds : map.Seconds;
    }

    /// <summary>The answer as JSON, in the names of the corpus format; what is null is left out.</summary>
    public string Write() => JsonSerializer.Serialize(this, ScoreJson.Options);

    /// <summary>The times of every count 1, rising.</summary>
    /// <param name="cycle">How far is counted: 8, or 6 in 3/4.</param>
    public ValueList<double> CountOnesOf(int cycle)
    {
        if (CountOnes is { } given)
        {
            return [.. given.Order()];
        }

        if (FirstCountBeatIndex is not int first || Beats is not { } beats)
        {
            return [];
        }

        int phase = ((first % cycle) + cycle) % cycle;
        return [.. beats.Order().Where((_, i) => i % cycle == phase)];
    }
}
