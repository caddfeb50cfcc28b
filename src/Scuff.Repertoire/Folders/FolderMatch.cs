namespace Scuff.Repertoire.Folders;

/// <summary>Which file of the folder is which dance of the club: the whole of it is worked out before anything is done.</summary>
internal sealed class FolderMatch
{
    private FolderMatch()
    {
    }

    /// <summary>Dances whose file has another content than when both last agreed.</summary>
    public List<(KnownFile Dance, SeenFile File)> Edited { get; } = [];

    /// <summary>Dances whose file is found under another name.</summary>
    public List<(KnownFile Dance, SeenFile File)> Renamed { get; } = [];

    /// <summary>Dances whose file is gone.</summary>
    public List<KnownFile> Gone { get; } = [];

    /// <summary>Dances of the bin whose file is there again.</summary>
    public List<(KnownFile Dance, SeenFile File)> Returned { get; } = [];

    /// <summary>Files that are no dance of the club yet.</summary>
    public List<SeenFile> New { get; } = [];

    /// <summary>
    /// Matches them. A file is a dance's by name and content, else by content alone where the name is gone or someone else's content lies there (a
    /// rename, also two names exchanged), else by name alone (an edit). A copy that was made of a file before it was edited stays a file of its
    /// own.
    /// </summary>
    /// <param name="dances">The dances of the club.</param>
    /// <param name="files">The files that could be read.</param>
    /// <param name="unreadable">Names of files that are there but could not be read: nothing is concluded about them.</param>
    public static FolderMatch Of(IReadOnlyList<KnownFile> dances, IReadOnlyList<SeenFile> files, IReadOnlySet<string> unreadable)
    {
        FolderMatch match = new();
        Dictionary<string, SeenFile> byName = files.ToDictionary(f => f.Name, StringComparer.Ordinal);
        HashSet<string> claimed = new(StringComparer.Ordinal);
        List<KnownFile> open = [];
        foreach (KnownFile dance in dances.Where(d => d.FileName is not null && !unreadable.Contains(d.FileName)))
        {
            if (byName.TryGetValue(dance.FileName!, out SeenFile? file) && file.Digest == dance.FileDigest)
            {
                claimed.Add(file.Name);
            }
            else
            {
                open.Add(dance);
            }
        }

        ILookup<string?, KnownFile> openByDigest = open.ToLookup(d => d.FileDigest);
        List<KnownFile> homeless = [];
        foreach (KnownFile dance in open)
        {
            if (byName.TryGetValue(dance.FileName!, out SeenFile? file) && !openByDigest[file.Digest].Any(other => other != dance))
            {
                match.Edited.Add((dance, file));
                claimed.Add(file.Name);
            }
            else
            {
                homeless.Add(dance);
            }
        }

        Dictionary<string, Queue<SeenFile>> free = files.Where(f => !claimed.Contains(f.Name))
            .GroupBy(f => f.Digest)
            .ToDictionary(g => g.Key, g => new Queue<SeenFile>(g));
        foreach (KnownFile dance in homeless)
        {
            if (Taken(free, dance) is { } file)
            {
                match.Renamed.Add((dance, file));
            }
            else
            {
                match.Gone.Add(dance);
            }
        }

        foreach (KnownFile dance in dances.Where(d => d is { FileName: null, IsBinned: true, FileDigest: not null }))
        {
            if (Taken(free, dance) is { } file)
            {
                match.Returned.Add((dance, file));
            }
        }

        match.New.AddRange(free.Values.SelectMany(q => q).OrderBy(f => f.Name, StringComparer.Ordinal));
        return match;
    }

    private static SeenFile? Taken(Dictionary<string, Queue<SeenFile>> free, KnownFile dance)
        => dance.FileDigest is not null && free.TryGetValue(dance.FileDigest, out Queue<SeenFile>? files) && files.TryDequeue(out SeenFile? file) ? file : null;
}
