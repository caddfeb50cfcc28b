using System.Security.Cryptography;
using Scuff.Audio;
using Scuff.Music;

namespace Scuff.App.Tracks;

/// <summary>
/// What was heard before, kept by the content of the files: a file that was renamed is known, one that was changed is heard anew, and so is everything
/// after a change to the program. The folder may be deleted at any time. What is damaged in it is not used.
/// </summary>
/// <param name="folder">Full path of the folder, made when the first track is kept; null keeps nothing.</param>
internal sealed class TrackCache(string? folder)
{
    /// <summary>The environment variable that names another folder.</summary>
    public const string Variable = "SCUFF_CACHE";

    /// <summary>Names the program part that hears, in its version: another analysis has another name.</summary>
    public static string Ear { get; } = $"ear {typeof(TrackListener).Module.ModuleVersionId:N}"[..16];

    // The compiler names every build of a program part after its content, so another analysis is another name.
    private static readonly string Version = $"{typeof(TrackListener).Module.ModuleVersionId:N}{typeof(TrackMap).Module.ModuleVersionId:N}"
        + $"{typeof(TrackCache).Module.ModuleVersionId:N}";

    /// <summary>
    /// Where tracks are kept if nothing else was said: what the variable says, else the place that the system has for such things (XDG_CACHE_HOME or
    /// <c>~/.cache</c>; Library/Caches on a Mac; the local application data on Windows). Null where there is none.
    /// </summary>
    /// <param name="variable">What an environment variable holds, or null.</param>
    /// <param name="home">The home folder of the user, or empty.</param>
    public static string? UsualFolder(Func<string, string?> variable, string home)
    {
        if (variable(Variable) is { Length: > 0 } said)
        {
            return said;
        }

        string? root = OperatingSystem.IsWindows()
            ? Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData)
            : variable("XDG_CACHE_HOME") is { Length: > 0 } given && Path.IsPathRooted(given) ? given
            : home.Length == 0 ? null
            : OperatingSystem.IsMacOS() ? Path.Combine(home, "Library", "Caches")
            : Path.Combine(home, ".cache");
        return string.IsNullOrEmpty(root) ? null : Path.Combine(root, "scuff", "tracks");
    }

    /// <summary>The name that a file's content has here; null when nothing is kept, or the file cannot be read.</summary>
    public string? KeyOf(string path)
    {
        if (folder is null)
        {
            return null;
        }

        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0, FileOptions.SequentialScan);
            byte[] content = SHA256.HashData(file);
            return Convert.ToHexStringLower(SHA256.HashData([.. content, .. System.Text.Encoding.ASCII.GetBytes(Version)]));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>What was heard in a file of that content; null when that is not known.</summary>
    public (TrackMap Map, string? Warning)? Find(string? key)
    {
        if (folder is null || key is null)
        {
            return null;
        }

        try
        {
            return TrackBytes.Read(File.ReadAllBytes(PathOf(folder, key)));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Keeps what was heard, whole or not at all. Not being able to is no trouble: it is heard again next time.</summary>
    public void Keep(string? key, TrackMap map, string? warning)
    {
        if (folder is null || key is null)
        {
            return;
        }

        try
        {
            string path = PathOf(folder, key);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            byte[] bytes = TrackBytes.Write(map, warning);
            WholeFile.Write(path, stream => stream.Write(bytes));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            // a full or locked disk keeps nothing
        }
    }

    // Few files to a folder, for file systems that are slow with many.
    private static string PathOf(string folder, string key) => Path.Combine(folder, key[..2], key + ".heard");
}
