using System.Globalization;

namespace Scuff.Repertoire.Backups;

/// <summary>A folder in that of the club for work that is not done yet; it goes with everything in it.</summary>
internal sealed class PassingFolder : IDisposable
{
    private const string Prefix = ".passing-";

    private static int _last;

    private PassingFolder(string path) => FullPath = path;

    /// <summary>Its full path.</summary>
    public string FullPath { get; }

    /// <summary>Makes one.</summary>
    /// <exception cref="IOException">It could not be made.</exception>
    public static PassingFolder In(string club)
    {
        string path = Path.Combine(club, string.Create(
            CultureInfo.InvariantCulture, $"{Prefix}{Environment.ProcessId}-{Interlocked.Increment(ref _last)}"));
        Delete(path);
        Directory.CreateDirectory(path);
        return new PassingFolder(path);
    }

    /// <summary>Takes away those that a killed program left a day or more ago; younger ones another program may be at work in.</summary>
    public static void Sweep(string club, DateTimeOffset now)
    {
        foreach (DirectoryInfo left in new DirectoryInfo(club).EnumerateDirectories(Prefix + "*")
            .Where(d => now.UtcDateTime - d.LastWriteTimeUtc > TimeSpan.FromDays(1)))
        {
            Delete(left.FullName);
        }
    }

    /// <summary>Full path of a file in it.</summary>
    public string File(string name) => Path.Combine(FullPath, name);

    public void Dispose() => Delete(FullPath);

    private static void Delete(string path)
    {
        try
        {
            if (Directory.Exists(path))
            {
                Directory.Delete(path, recursive: true);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // swept another day
        }
    }
}
