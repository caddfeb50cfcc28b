using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Scuff.Repertoire;

namespace Scuff.App.Playlists;

/// <summary>A folder that plays: the playlist in every format, the songs under plain numbered names, and a file of silence for each length of gap.</summary>
internal static partial class PlaylistFolder
{
    private const string Stem = "playlist";

    // what an M3U of ours begins with, by which a folder of ours is known again
    private const string Sign = "#EXTM3U\n#PLAYLIST:";

    /// <summary>
    /// Writes the folder whole or not at all: it is made beside its place and then takes it in one move. A folder that holds nothing but what an earlier playlist
    /// put there is replaced; any other folder with something in it is left alone.
    /// </summary>
    /// <param name="playlist">The playlist, of <see cref="EveningPlaylist.ForFolder"/>.</param>
    /// <param name="folder">Full path of the folder; its parent exists.</param>
    /// <param name="cancel">Ends it early; nothing is left lying about.</param>
    /// <exception cref="ClubTrouble">There is nothing to play, the folder holds something else, a song could not be read, or the disk refuses.</exception>
    public static async Task WriteAsync(Playlist playlist, string folder, CancellationToken cancel = default)
    {
        string target = Path.TrimEndingDirectorySeparator(folder);
        string name = Path.GetFileName(target);
        if (!playlist.Entries.Any(e => !e.IsSilence))
        {
            throw new ClubTrouble(ClubTroubleKind.NoAudio, "There is no song with audio in it, so no playlist was written.");
        }

        if (File.Exists(target))
        {
            throw new ClubTrouble(ClubTroubleKind.Folder, $"{name} is a file. Name a folder for the playlist that is not there yet.");
        }

        string beside = Path.Combine(Path.GetDirectoryName(target) ?? "", $".{name}.{Environment.ProcessId}-{Environment.CurrentManagedThreadId}");
        string made = beside + ".tmp";
        string old = beside + ".old";
        try
        {
            Recover(target, name);
            if (Directory.Exists(target) && !IsReplaceable(target))
            {
                throw new ClubTrouble(ClubTroubleKind.Folder, $"{name} holds something else than a playlist, so nothing was written. Name another folder.");
            }

            Directory.CreateDirectory(made);
            await FillAsync(playlist, made, cancel);
            if (Directory.Exists(target))
            {
                // two moves; between them both folders are whole
                Directory.Move(target, old);
            }

            Directory.Move(made, target);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(ClubTroubleKind.Folder, FileWords.NotWritten(name, trouble), trouble);
        }
        finally
        {
            if (Directory.Exists(old) && !Directory.Exists(target))
            {
                Directory.Move(old, target);
            }

            Remove(made);
            Remove(old);
        }
    }

    /// <summary>The files of the folder that are not songs, in order of their names: the playlists and each silence once.</summary>
    /// <param name="playlist">The playlist.</param>
    public static IEnumerable<(string Name, Func<Stream, CancellationToken, Task> WriteAsync)> Texts(Playlist playlist)
    {
        foreach (IPlaylistFormat format in PlaylistFormats.All)
        {
            byte[] bytes = Encoding.UTF8.GetBytes(format.Write(playlist));
            yield return ($"{Stem}.{format.Name}", async (stream, cancel) => await stream.WriteAsync(bytes, cancel));
        }

        foreach (int seconds in playlist.Entries.Where(e => e.IsSilence).Select(e => e.Seconds).Distinct().Order())
        {
            yield return (SilenceFile.NameOf(seconds), (stream, cancel) => SilenceFile.WriteAsync(stream, seconds, cancel));
        }
    }

    /// <summary>The songs that lie in the folder, each once.</summary>
    /// <param name="playlist">The playlist.</param>
    public static IEnumerable<PlaylistEntry> Songs(Playlist playlist)
        => playlist.Entries.Where(e => e is { IsSilence: false, IsBeside: true }).DistinctBy(e => e.Location, StringComparer.Ordinal);

    /// <summary>Opens the sound file of a song.</summary>
    /// <exception cref="ClubTrouble">It could not be read.</exception>
    public static Stream Open(PlaylistEntry song)
    {
        try
        {
            return new FileStream(song.Source, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(ClubTroubleKind.NoAudio, $"The audio of “{song.Title}” could not be read, so no playlist was written.", trouble);
        }
    }

    private static async Task FillAsync(Playlist playlist, string folder, CancellationToken cancel)
    {
        foreach (PlaylistEntry song in Songs(playlist))
        {
            await using Stream from = Open(song);
            await WriteFileAsync(Path.Combine(folder, song.Location), from.CopyToAsync, cancel);
        }

        foreach ((string name, Func<Stream, CancellationToken, Task> write) in Texts(playlist))
        {
            await WriteFileAsync(Path.Combine(folder, name), write, cancel);
        }
    }

    private static async Task WriteFileAsync(string path, Func<Stream, CancellationToken, Task> write, CancellationToken cancel)
    {
        await using FileStream stream = new(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        await write(stream, cancel);
        stream.Flush(flushToDisk: true);
    }

    // What a program that was killed left behind: the folder it had just moved aside goes back to its place, what it had not finished goes.
    private static void Recover(string target, string name)
    {
        string parent = Path.GetDirectoryName(target) ?? "";
        foreach (string left in Directory.EnumerateDirectories(parent).Where(f => Path.GetFileName(f).StartsWith($".{name}.", StringComparison.Ordinal)).ToArray())
        {
            Match parts = Leftover().Match(Path.GetFileName(left)[(name.Length + 2)..]);
            if (!parts.Success || !int.TryParse(parts.Groups[1].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out int process) || IsRunning(process))
            {
                continue;
            }

            if (parts.Groups[2].Value == "old" && !Directory.Exists(target))
            {
                Directory.Move(left, target);
            }
            else
            {
                Remove(left);
            }
        }
    }

    private static bool IsRunning(int process)
    {
        try
        {
            using Process running = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    [GeneratedRegex("^([0-9]+)-[0-9]+\\.(tmp|old)$")]
    private static partial Regex Leftover();

    // Empty, or nothing in it but a playlist of ours and what that names.
    private static bool IsReplaceable(string folder)
    {
        string[] there = [.. Directory.EnumerateFileSystemEntries(folder).Select(f => Path.GetFileName(f))];
        if (there.Length == 0)
        {
            return true;
        }

        string list = Path.Combine(folder, Stem + ".m3u8");
        if (!File.Exists(list))
        {
            return false;
        }

        string text = File.ReadAllText(list);
        HashSet<string> ours = new(text.Split('\n').Where(l => l.Length > 0 && l[0] != '#').Concat(PlaylistFormats.All.Select(f => $"{Stem}.{f.Name}")), StringComparer.Ordinal);
        return text.StartsWith(Sign, StringComparison.Ordinal) && Array.TrueForAll(there, ours.Contains);
    }

    private static void Remove(string folder)
    {
        try
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The first trouble is the one to tell.
        }
    }
}
