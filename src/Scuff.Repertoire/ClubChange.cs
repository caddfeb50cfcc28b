namespace Scuff.Repertoire;

/// <summary>What has changed in a club, told after it is on the disk.</summary>
public sealed class ClubChange : EventArgs
{
    /// <summary>Dances that came, changed in text, tags, versions or facts, or went.</summary>
    public ValueList<string> Dances { get; init; }

    /// <summary>Tracks that came, changed in map, corrections, tags or facts, or went.</summary>
    public ValueList<string> Tracks { get; init; }

    /// <summary>Classes that came, changed, were marked, had a session saved or removed, or went.</summary>
    public ValueList<string> Classes { get; init; }

    /// <summary>Sessions that came, changed or went.</summary>
    public ValueList<string> Sessions { get; init; }

    /// <summary>Evenings that came, changed or went.</summary>
    public ValueList<string> Evenings { get; init; }

    /// <summary>Whether the people she keeps changed. Who they are is never told.</summary>
    public bool People { get; init; }

    /// <summary>What a look through the linked folder found, when the change came from there; else null.</summary>
    public FolderReport? Folder { get; init; }

    /// <summary>Whether anything may have changed, as after restoring; the lists are empty then.</summary>
    public bool Everything { get; init; }
}
