using Scuff.Music;

namespace Scuff.App.Tracks;

/// <summary>One track that was asked for: what was heard, or the sentence that says why nothing was.</summary>
/// <param name="Name">Its file, as named.</param>
/// <param name="Map">What was heard; null when there is a trouble.</param>
/// <param name="Warning">What is wrong with the file though it could be heard; null when nothing is.</param>
/// <param name="Trouble">One sentence, or null when it was heard.</param>
internal sealed record HeardTrack(string Name, TrackMap? Map, string? Warning, string? Trouble)
{
    /// <summary>Below this, an answer is a guess that a person should look at. Ours.</summary>
    public const double Doubtful = 0.4;

    /// <summary>The name of the file without folder and ending.</summary>
    public string Stem => StemOf(Name);

    /// <summary>What was heard, with the name of the file for a title where the file has none; null when there is a trouble.</summary>
    public TrackMap? Titled => Map is { Title.Length: 0 } map ? map with { Title = Stem } : Map;

    /// <summary>Whether a person should look at it before dancing to it.</summary>
    public bool NeedsALook => Warning is not null || Map is null or { Remark.Length: > 0 } || Map.Beats.Count == 0 || Doubts.Count > 0;

    /// <summary>What was no more than guessed, in words.</summary>
    public IReadOnlyList<string> Doubts => Map is null || Map.Beats.Count == 0
        ? []
        :
        [
            .. new (string Words, double Confidence)[]
            {
                ("tempo", Map.Tempo.Confidence), ("meter", Map.Meter.Confidence), ("start of the dance", Map.FirstCount.Confidence),
            }.Where(d => d.Confidence < Doubtful).Select(d => d.Words),
        ];

    /// <summary>The name of a file without folder and ending; labels of beats have two endings.</summary>
    public static string StemOf(string name) => name.EndsWith(TrackFiles.BeatsEnding, StringComparison.OrdinalIgnoreCase)
        ? Path.GetFileName(name)[..^TrackFiles.BeatsEnding.Length]
        : Path.GetFileNameWithoutExtension(name);

    /// <summary>A track that could not be heard.</summary>
    public static HeardTrack Refused(string name, string sentence) => new(name, null, null, sentence);
}
