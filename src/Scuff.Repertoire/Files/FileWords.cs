namespace Scuff.Repertoire.Files;

/// <summary>The one place that turns troubles of files and disks into sentences.</summary>
public static class FileWords
{
    // errno 28 (no space) and 122 (quota) of Linux, 69 (quota) of macOS; Windows error codes 39 and 112.
    private static readonly int[] FullCodes = [28, 122, 69, 39, 112];

    /// <summary>Why a file could not be read.</summary>
    public static string NotRead(string name, Exception trouble) => trouble switch
    {
        FileNotFoundException or DirectoryNotFoundException => $"There is no file or folder named {name}.",
        UnauthorizedAccessException => $"{name} may not be read: permission is missing.",
        _ => $"{name} could not be read: {Tail(trouble)}",
    };

    /// <summary>Why a file could not be written. The old file is untouched then.</summary>
    public static string NotWritten(string name, Exception trouble) => trouble switch
    {
        UnauthorizedAccessException => $"{name} was not written: the file or its folder is read-only.",
        DirectoryNotFoundException => $"{name} was not written: its folder does not exist.",
        _ when IsFull(trouble) => $"{name} was not written: the disk is full.",
        _ when trouble.Message.StartsWith("Read-only file system", StringComparison.OrdinalIgnoreCase)
            => $"{name} was not written: its disk is read-only.",
        _ => $"{name} was not written: {Tail(trouble)}",
    };

    /// <summary>Why the answer could not be written to standard output.</summary>
    public static string OutputFailed(Exception trouble) => IsFull(trouble)
        ? "The answer could not be written: the disk is full."
        : $"The answer could not be written: {Tail(trouble)}";

    /// <summary>Whether it says that the disk is full.</summary>
    public static bool IsFull(Exception trouble) => FullCodes.Contains(trouble.HResult & 0xFFFF);

    // The system's own words, without the path that it adds after a colon.
    private static string Tail(Exception trouble)
    {
        int path = trouble.Message.IndexOf(" : '", StringComparison.Ordinal);
        string words = path > 0 ? trouble.Message[..path] : trouble.Message;
        return char.ToLowerInvariant(words[0]) + words[1..].TrimEnd('.') + ".";
    }
}
