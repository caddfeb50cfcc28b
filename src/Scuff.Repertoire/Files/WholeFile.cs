using System.Text;

namespace Scuff.Repertoire.Files;

/// <summary>
/// Writes a file whole or not at all: the new content is written beside it, brought to the disk, and then takes its place
/// in one move. Whatever fails on the way, the old file is untouched and nothing is left lying about.
/// </summary>
public static class WholeFile
{
    /// <summary>Writes the text as UTF-8.</summary>
    /// <param name="path">Full path of the file.</param>
    /// <param name="text">Its new content.</param>
    /// <param name="withMark">Whether it begins with a byte order mark.</param>
    /// <exception cref="IOException">The disk is full, or the like.</exception>
    /// <exception cref="UnauthorizedAccessException">The file or its folder is read-only.</exception>
    public static void Write(string path, string text, bool withMark = false)
        => Write(path, stream => Fill(stream, text, withMark));

    /// <summary>Writes what <paramref name="fill"/> puts into the stream.</summary>
    /// <exception cref="IOException">The disk is full, or the like.</exception>
    /// <exception cref="UnauthorizedAccessException">The file or its folder is read-only.</exception>
    public static void Write(string path, Action<Stream> fill)
    {
        (string target, string temporary) = Names(path);
        try
        {
            using (FileStream stream = new(temporary, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                fill(stream);
                stream.Flush(flushToDisk: true);
            }

            Settle(temporary, target);
        }
        catch
        {
            Remove(temporary);
            throw;
        }
    }

    /// <summary>Writes what <paramref name="fill"/> puts into the stream, which may take its time.</summary>
    /// <exception cref="IOException">The disk is full, or the like.</exception>
    /// <exception cref="UnauthorizedAccessException">The file or its folder is read-only.</exception>
    public static async Task WriteAsync(string path, Func<Stream, Task> fill)
    {
        (string target, string temporary) = Names(path);
        try
        {
            FileStream stream = new(temporary, FileMode.Create, FileAccess.Write, FileShare.None);
            await using (stream.ConfigureAwait(false))
            {
                await fill(stream).ConfigureAwait(false);
                stream.Flush(flushToDisk: true);
            }

            Settle(temporary, target);
        }
        catch
        {
            Remove(temporary);
            throw;
        }
    }

    private static (string Target, string Temporary) Names(string path)
    {
        string target = Target(path);
        if (new FileInfo(target) is { Exists: true, IsReadOnly: true })
        {
            // A move over it would succeed where the folder allows it; but she has locked this file.
            throw new UnauthorizedAccessException($"{target} is read-only.");
        }

        return (target, Path.Combine(
            Path.GetDirectoryName(target) ?? "",
            $".{Path.GetFileName(target)}.{Environment.ProcessId}-{Environment.CurrentManagedThreadId}.tmp"));
    }

    private static void Settle(string temporary, string target)
    {
        FileInfo old = new(target);
        if (!OperatingSystem.IsWindows() && old.Exists)
        {
            File.SetUnixFileMode(temporary, old.UnixFileMode);
        }

        File.Move(temporary, target, overwrite: true);
    }

    // A link stays a link: the file it points to is replaced.
    private static string Target(string path) => new FileInfo(path).LinkTarget is null
        ? path
        : File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;

    private static void Fill(Stream stream, string text, bool withMark)
    {
        using StreamWriter writer = new(stream, new UTF8Encoding(withMark), leaveOpen: true);
        writer.Write(text);
    }

    private static void Remove(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The first trouble is the one to tell.
        }
    }
}
