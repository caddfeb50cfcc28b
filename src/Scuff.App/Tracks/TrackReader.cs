using Scuff.Audio;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;
using Scuff.Music;
using Scuff.Music.Labels;

namespace Scuff.App.Tracks;

/// <summary>From the name of a file to the map of its track: sound is heard, maps by hand and label files are read.</summary>
/// <param name="cache">What was heard before.</param>
/// <param name="fullPath">The full path of a name.</param>
internal sealed class TrackReader(TrackCache cache, Func<string, string> fullPath)
{
    // A minute of a track by hand is a line; labels of an hour at 400 beats a minute are half a megabyte.
    private const int LargestText = 4 * 1024 * 1024;

    // Of the work on a file, reading it is about a third.
    private const double PartOfReading = 0.35;

    /// <summary>Reads one. Never throws for a trouble of the world: it is told in the answer.</summary>
    /// <param name="name">The file as named.</param>
    /// <param name="progress">Is told the part of the work that is done, 0 to 1.</param>
    public HeardTrack Read(string name, IProgress<double> progress)
    {
        string path = fullPath(name);
        if (name.EndsWith(TrackFiles.MapEnding, StringComparison.OrdinalIgnoreCase))
        {
            return TextOf(path, name, out string? trouble) is { } text ? ByHand(name, TrackMapText.Read(text)) : HeardTrack.Refused(name, trouble!);
        }

        if (name.EndsWith(TrackFiles.BeatsEnding, StringComparison.OrdinalIgnoreCase))
        {
            return FromLabels(name, path);
        }

        return Hear(path, name, progress, CancellationToken.None);
    }

    /// <summary>Hears a sound file, unless it was heard before. Never throws for a trouble of the world.</summary>
    /// <param name="path">Its full path.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="progress">Is told the part of the work that is done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    public HeardTrack Hear(string path, string name, IProgress<double> progress, CancellationToken cancel)
    {
        string? key = cache.KeyOf(path);
        if (cache.Find(key) is { } known)
        {
            return new HeardTrack(name, known.Map, known.Warning, null);
        }

        try
        {
            HeardFile file = AudioFile.Read(path, Hearing.Rate, new Part(progress, 0, PartOfReading), cancel);
            TrackMap heard = TrackListener.Listen(file.Audio, new Part(progress, PartOfReading, 1), cancel);
            TrackMap map = heard with { Title = file.Tags.Title ?? "", Artist = file.Tags.Artist ?? "" };
            cache.Keep(key, map, file.Warning);
            return new HeardTrack(name, map, file.Warning, null);
        }
        catch (AudioException trouble)
        {
            return HeardTrack.Refused(name, $"{name} could not be heard. {trouble.Message}");
        }
    }

    /// <summary>The map of a text, by hand or from label files.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="reading">The text as it was read.</param>
    public static HeardTrack ByHand(string name, MapReading reading) => reading.Map is { } map
        ? new HeardTrack(name, map, null, null)
        : HeardTrack.Refused(name, $"{name}, {reading.Troubles[0]}{More(reading.Troubles.Count - 1)}");

    /// <summary>The map that label files make.</summary>
    /// <param name="name">The name of the file of beats.</param>
    /// <param name="beats">What it says.</param>
    /// <param name="sections">What the file of sections says, or null.</param>
    public static HeardTrack FromLabels(string name, string beats, string? sections)
    {
        LabelReading read = sections is null ? new LabelReading([], []) : LabelFile.Read(sections);
        return read.Troubles.Count > 0
            ? HeardTrack.Refused(name, $"{SectionsOf(name)}, {read.Troubles[0]}{More(read.Troubles.Count - 1)}")
            : ByHand(name, TrackLabels.ToMap(LabelFile.Read(beats), read));
    }

    private static string SectionsOf(string name) => name[..^TrackFiles.BeatsEnding.Length] + TrackFiles.SectionsEnding;

    private static string More(int others) => others switch { 0 => "", 1 => " (and one more)", _ => FormattableString.Invariant($" (and {others} more)") };

    private static string? TextOf(string path, string name, out string? trouble)
    {
        trouble = null;
        try
        {
            FileInfo file = new(path);
            if (file.Length > LargestText)
            {
                trouble = $"{name} is too large to be a text about a track.";
                return null;
            }

            DecodedText text = TextDecoding.Decode(File.ReadAllBytes(path));
            trouble = text.Trouble is { } words ? $"{name} {words}." : null;
            return text.Trouble is null ? text.Text : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            trouble = FileWords.NotRead(name, e);
            return null;
        }
    }

    private static HeardTrack FromLabels(string name, string path)
    {
        string sectionsName = SectionsOf(name);
        string sectionsPath = SectionsOf(path);
        if (TextOf(path, name, out string? trouble) is not { } beats)
        {
            return HeardTrack.Refused(name, trouble!);
        }

        string? sections = null;
        if (File.Exists(sectionsPath))
        {
            if (TextOf(sectionsPath, sectionsName, out trouble) is not { } text)
            {
                return HeardTrack.Refused(name, trouble!);
            }

            sections = text;
        }

        return FromLabels(name, beats, sections);
    }

    private sealed class Part(IProgress<double> whole, double from, double to) : IProgress<double>
    {
        public void Report(double value) => whole.Report(from + (value * (to - from)));
    }
}
