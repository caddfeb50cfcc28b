namespace Scuff.Repertoire;

/// <summary>
/// A folder of <c>.dance</c> files that <em>is</em> the library: every file in it (not in folders within) is a dance, every save is written to the file,
/// and edits made outside are picked up. The club knows for each dance which file it is and what the file held when both last agreed.
/// </summary>
public sealed class LinkedFolder
{
    internal LinkedFolder()
    {
    }

    /// <summary>Full path of the folder; null when none is linked.</summary>
    public string? Path => throw Club.Unfinished;

    /// <summary>
    /// Links a folder. Its files become dances (one whose text the club has already becomes that dance's file); dances of the club that have no file get
    /// one. Another folder that was linked is let go.
    /// </summary>
    /// <param name="path">The folder; it must be there.</param>
    /// <exception cref="ClubTrouble">The folder is not there or cannot be read.</exception>
    public FolderReport Link(string path) => throw Club.Unfinished;

    /// <summary>Lets go of the folder. Files and dances stay as they are; they only follow each other no longer.</summary>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public void Unlink() => throw Club.Unfinished;

    /// <summary>
    /// Looks through the folder and brings both sides together. The club does so by itself at opening and when the system tells of a change; asking is for
    /// changes it did not tell of (network drives, sleep). A report with nothing in it when no folder is linked.
    /// </summary>
    /// <exception cref="ClubTrouble">The club could not be read or written.</exception>
    public FolderReport Rescan() => throw Club.Unfinished;
}
