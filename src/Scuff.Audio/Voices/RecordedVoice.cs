using System.Collections.Concurrent;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;

namespace Scuff.Audio.Voices;

/// <summary>
/// Her own recordings: sound files named after the words in them, such as <c>vine right.wav</c>. Silence around the words is cut and the level evened.
/// A file that cannot be read is left out and told.
/// </summary>
public sealed class RecordedVoice : IVoice
{
    private static readonly HashSet<string> Endings = new(StringComparer.OrdinalIgnoreCase)
    {
        ".wav", ".wave", ".aif", ".aiff", ".mp3", ".ogg", ".oga", ".opus", ".flac", ".m4a", ".aac", ".mp4", ".wma", ".webm", ".3gp", ".amr", ".caf",
    };

    private readonly Dictionary<string, string> _paths = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, MonoAudio?> _said = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, string> _troubles = new(StringComparer.Ordinal);
    private readonly string _ffmpeg;

    /// <summary>Recordings, each with its words.</summary>
    /// <param name="recordings">Words and the path of the sound file; of two with the same words the first counts.</param>
    /// <param name="ffmpeg">The program ffmpeg, for the kinds that Scuff does not decode.</param>
    public RecordedVoice(IEnumerable<(string Words, string Path)> recordings, string ffmpeg = "ffmpeg")
    {
        _ffmpeg = ffmpeg;
        foreach ((string words, string path) in recordings)
        {
            if (SpokenText.Phrase(words) is { Length: > 0 } phrase)
            {
                _paths.TryAdd(phrase, path);
            }
        }
    }

    /// <inheritdoc/>
    public string Name => "your recordings";

    /// <summary>All that was recorded.</summary>
    public IEnumerable<string> Words => _paths.Keys.Order(StringComparer.Ordinal);

    /// <summary>What was wrong with recordings that have been asked for: a sentence each, beginning with the name of the file.</summary>
    public IEnumerable<string> Troubles => _troubles.OrderBy(t => t.Key, StringComparer.Ordinal).Select(t => t.Value);

    /// <summary>The sound files of a folder, without those of folders in it.</summary>
    /// <exception cref="AudioException">There is no such folder, it may not be read, or there is no sound file in it.</exception>
    public static RecordedVoice OfFolder(string folder, string ffmpeg = "ffmpeg")
    {
        string[] files;
        try
        {
            files = [.. Directory.EnumerateFiles(folder).Where(f => Endings.Contains(Path.GetExtension(f))).Order(StringComparer.Ordinal)];
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new AudioException(
                File.Exists(folder) ? "This is a file; recordings are taken from a folder of files named after their words."
                    : Directory.Exists(folder) ? "The folder of recordings may not be read."
                    : "There is no such folder of recordings.",
                trouble);
        }

        return files.Length == 0
            ? throw new AudioException("There is no sound file in this folder. Name each recording after the words in it, for example: vine right.wav")
            : new RecordedVoice(files.Select(f => (Path.GetFileNameWithoutExtension(f), f)), ffmpeg);
    }

    /// <inheritdoc/>
    public MonoAudio? Say(string phrase) => _paths.TryGetValue(phrase, out string? path) ? _said.GetOrAdd(phrase, _ => Read(path)) : null;

    /// <inheritdoc/>
    public double? SecondsOf(string phrase) => Say(phrase)?.Seconds;

    private MonoAudio? Read(string path)
    {
        try
        {
            MonoAudio? words = VoiceTrim.Of(AudioFile.Read(path, _ffmpeg, IVoice.Rate).Audio);
            if (words is null)
            {
                _troubles[path] = $"{Path.GetFileName(path)}: nothing is to be heard in this recording.";
            }

            return words;
        }
        catch (AudioException trouble)
        {
            _troubles[path] = $"{Path.GetFileName(path)}: {trouble.Message}";
            return null;
        }
    }
}
