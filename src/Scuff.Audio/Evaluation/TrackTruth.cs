using System.Text.Json;
using System.Text.Json.Serialization;

namespace Scuff.Audio.Evaluation;

/// <summary>
/// What is true of a song: a file of <c>truth/</c> in a corpus. Times in seconds from the start of the sound; beats stand at the
/// notated grid, whatever the players make of it. Null where nobody knows.
/// </summary>
public sealed record TrackTruth
{
    /// <summary>Name of the song, and of its files.</summary>
    public required string Id { get; init; }

    /// <summary>Part of the corpus it is averaged with.</summary>
    public required string Group { get; init; }

    /// <summary>Its style, in a word.</summary>
    public required string Style { get; init; }

    /// <summary>Beats of a usual bar: 4 or 3.</summary>
    public required int Meter { get; init; }

    /// <summary>Every beat, rising.</summary>
    public required ValueList<double> Beats { get; init; }

    /// <summary>For each beat its place in the bar, from 1.</summary>
    public ValueList<int>? BarPosition { get; init; }

    /// <summary>For each beat the length of its bar in beats.</summary>
    public ValueList<int>? BeatsInBar { get; init; }

    /// <summary>The beats with bar position 1.</summary>
    public ValueList<double>? Downbeats { get; init; }

    /// <summary>For each beat the dancer's count, from 1 to <see cref="CountCycle"/>; every section begins on 1.</summary>
    public ValueList<int>? Counts { get; init; }

    /// <summary>How far is counted: 8, or 6 in 3/4.</summary>
    public int? CountCycle { get; init; }

    /// <summary>Beats a minute: the mean without the slowing end; the median where a part of the song has another tempo.</summary>
    public required double TempoBpm { get; init; }

    /// <summary>Beats a minute as asked for.</summary>
    public double? TempoNominal { get; init; }

    /// <summary>The sections, in order.</summary>
    public ValueList<TruthSection>? Sections { get; init; }

    /// <summary>The breaks, in order.</summary>
    public ValueList<TruthBreak>? Breaks { get; init; }

    /// <summary>Long half to short half of what <see cref="SwingLevel"/> says: 1 straight, 2 triplets.</summary>
    public double? SwingRatio { get; init; }

    /// <summary><c>eighth</c>: halves of a beat swing; <c>sixteenth</c>: halves of a half.</summary>
    public string? SwingLevel { get; init; }

    /// <summary>What is odd about the song: names with numbers, yes or no, or words.</summary>
    public IReadOnlyDictionary<string, JsonElement> Features { get; init; } = new Dictionary<string, JsonElement>();

    /// <summary>Which instruments played it, where that is known.</summary>
    [JsonPropertyName("soundfont")]
    public string? Instruments { get; init; }

    /// <summary>What may be scored.</summary>
    public required TruthChecks Checks { get; init; }

    /// <summary>The times of every count 1.</summary>
    [JsonIgnore]
    public ValueList<double> CountOnes
    {
        get
        {
            ValueList<int> counts = Counts ?? [];
            return [.. Beats.Where((_, i) => i < counts.Count && counts[i] == 1)];
        }
    }

    /// <summary>Reads what <see cref="Write"/> writes; names it does not know are left out.</summary>
    /// <exception cref="JsonException">It is no truth.</exception>
    public static TrackTruth Read(string json) => JsonSerializer.Deserialize<TrackTruth>(json, ScoreJson.Options) ?? throw new JsonException("The file says null.");

    /// <summary>The truth as JSON, in the names of the corpus format.</summary>
    public string Write() => JsonSerializer.Serialize(this, ScoreJson.Options);
}
