using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;

namespace Scuff.Repertoire.Storage;

/// <summary>The audio of a club: <c>music/</c>, each file named by the digest of its content and an ending.</summary>
/// <param name="club">The folder of the club.</param>
internal sealed class MusicFolder(string club)
{
    private const string Unfinished = ".tmp";

    // IANA's registry of media types, and for what it lacks the types that browsers use
    private static readonly Dictionary<string, string> MediaTypes = new(StringComparer.Ordinal)
    {
        [".mp3"] = "audio/mpeg",
        [".m4a"] = "audio/mp4",
        [".mp4"] = "audio/mp4",
        [".aac"] = "audio/aac",
        [".ogg"] = "audio/ogg",
        [".oga"] = "audio/ogg",
        [".opus"] = "audio/ogg",
        [".flac"] = "audio/flac",
        [".wav"] = "audio/wav",
        [".aif"] = "audio/aiff",
        [".aiff"] = "audio/aiff",
        [".aifc"] = "audio/aiff",
        [".webm"] = "audio/webm",
        [".wma"] = "audio/x-ms-wma",
    };

    private static int _last;

    /// <summary>The folder in the folder of a club.</summary>
    public const string Name = "music";

    private string Folder => Path.Combine(club, Name);

    /// <summary>
    /// The ending under which a file is kept: its own if it is one of sound, else <c>.sound</c>, so that nothing else can be made of it.
    /// </summary>
    public static string EndingOf(string fileName)
    {
        string ending = Path.GetExtension(fileName).ToLowerInvariant();
        return MediaTypes.ContainsKey(ending) ? ending : ".sound";
    }

    /// <summary>The media type of an ending.</summary>
    public static string MediaTypeOf(string ending) => MediaTypes.GetValueOrDefault(ending, "application/octet-stream");

    /// <summary>Whether it is the name of a file that lies here.</summary>
    public static bool IsName(string name) => name.Length > 65
        && name.AsSpan(0, 64).IndexOfAnyExcept(SearchValues.Create("0123456789abcdef")) < 0
        && (name[64..] == ".sound" || MediaTypes.ContainsKey(name[64..]));

    /// <summary>Full path of a file, whether it is there or not.</summary>
    public string PathOf(string digest, string ending) => Path.Combine(Folder, digest + ending);

    /// <summary>
    /// Writes a file under a passing name and brings it to the disk; <see cref="TakenAudio.Settle"/> then gives it its own in one move.
    /// </summary>
    /// <exception cref="ClubTrouble">It is too large.</exception>
    /// <exception cref="IOException">It could not be written.</exception>
    public TakenAudio Take(Stream audio, long largest)
    {
        Directory.CreateDirectory(Folder);
        string temporary = Path.Combine(Folder, string.Create(
            CultureInfo.InvariantCulture, $".{Environment.ProcessId}-{Interlocked.Increment(ref _last)}{Unfinished}"));
        try
        {
            using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            long bytes = 0;
            using (FileStream file = new(temporary, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                byte[] buffer = new byte[128 * 1024];
                for (int read; (read = Next(audio, buffer)) > 0;)
                {
                    bytes += read;
                    if (bytes > largest)
                    {
                        throw new ClubTrouble(
                            ClubTroubleKind.TooLarge,
                            $"The sound file is larger than {largest >> 20} MB, so it was not taken. "
                            + "Save it as MP3, M4A or FLAC, or cut it to the song.");
                    }

                    hash.AppendData(buffer, 0, read);
                    file.Write(buffer, 0, read);
                }

                file.Flush(flushToDisk: true);
            }

            return new TakenAudio(this, temporary, Convert.ToHexStringLower(hash.GetHashAndReset()), bytes);
        }
        catch
        {
            Delete(temporary);
            throw;
        }
    }

    /// <summary>Takes a file away; one that is not there, or not to be taken away, is left.</summary>
    public void Remove(string digest, string ending) => Delete(PathOf(digest, ending));

    /// <summary>Takes away what a program that was killed left half written a day or more ago; younger ones another program may be writing.</summary>
    public void Sweep(DateTimeOffset now)
    {
        if (!Directory.Exists(Folder))
        {
            return;
        }

        foreach (FileInfo file in new DirectoryInfo(Folder).EnumerateFiles("*" + Unfinished)
            .Where(f => now.UtcDateTime - f.LastWriteTimeUtc > TimeSpan.FromDays(1)))
        {
            Delete(file.FullName);
        }
    }

    // what fails at the other end is no trouble of the club
    private static int Next(Stream audio, byte[] buffer)
    {
        try
        {
            return audio.Read(buffer);
        }
        catch (IOException e)
        {
            throw new ClubTrouble(
                ClubTroubleKind.Folder,
                "The sound file could not be read to its end, so nothing of it was taken. Bring it again.",
                e);
        }
    }

    /// <summary>Deletes a file; one that is not there, or not to be deleted, is left.</summary>
    public static void Delete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // a file too much does no harm
        }
    }
}
