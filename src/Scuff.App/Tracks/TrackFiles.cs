
namespace Scuff.App.Tracks;

/// <summary>Finds the tracks that are meant: files as named, and all tracks of a folder.</summary>
internal static class TrackFiles
{
    /// <summary>The ending of a label file of beats; that of its sections stands beside it.</summary>
    public const string BeatsEnding = ".beats.txt";

    /// <summary>The ending of a label file of sections.</summary>
    public const string SectionsEnding = ".sections.txt";

    /// <summary>The ending of a map written by hand.</summary>
    public const string MapEnding = ".track";

    /// <summary>The ending of what a person said about a track.</summary>
    public const string CorrectionsEnding = ".corrections.json";

    // What a folder is searched for; a file that is named is read whatever its ending.
    private static readonly string[] Endings =
    [
        ".wav", ".aif", ".aiff", ".aifc", ".mp3", ".ogg", ".oga", ".opus", ".flac", ".m4a", ".mp4", ".aac", ".wma", ".webm", MapEnding, BeatsEnding,
    ];

    /// <summary>The tracks in the order named, those of a folder in order of their names; a name without one brings its trouble along.</summary>
    public static IReadOnlyList<(string Name, string? Trouble)> Find(IReadOnlyList<string> names, Terminal terminal)
    {
        List<(string Name, string? Trouble)> found = [];
        foreach (string name in names)
        {
            try
            {
                string path = terminal.FullPath(name);
                if (!Directory.Exists(path))
                {
                    found.Add((name, File.Exists(path) ? null : $"There is no file or folder named {name}."));
                    continue;
                }

                string[] files =
                [
                    .. Directory.EnumerateFiles(path)
                        .Select(f => Path.GetFileName(f))
                        .Where(f => Array.Exists(Endings, e => f.EndsWith(e, StringComparison.OrdinalIgnoreCase)))
                        .Order(StringComparer.Ordinal),
                ];
                found.AddRange(files.Select(f => (Path.Combine(name, f), (string?)null)));
                if (files.Length == 0)
                {
                    found.Add((name, $"There is no track in the folder {name}."));
                }
            }
            catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or ArgumentException)
            {
                found.Add((name, FileWords.NotRead(name, trouble)));
            }
        }

        return found;
    }
}
