namespace Scuff.App.Commands;

/// <summary>Options that no command has: the parser takes them for files or words, and a slip of the finger must not pass for one.</summary>
internal static class Options
{
    /// <summary>Whether none of the words looks like an option without being a file; tells about the first that does.</summary>
    public static bool AreKnown(IEnumerable<string> words, Terminal terminal)
    {
        string? slip = words.FirstOrDefault(w => w.Length > 1 && w[0] == '-' && !File.Exists(terminal.FullPath(w)));
        if (slip is not null)
        {
            terminal.Tell($"There is no option {slip} here; add --help to see those there are.");
        }

        return slip is null;
    }
}
