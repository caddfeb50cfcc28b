namespace Scuff.Repertoire;

/// <summary>
/// What stands in the way, for callers that answer one trouble otherwise than another. The sentence of a <see cref="ClubTrouble"/> says it to a
/// person.
/// </summary>
public enum ClubTroubleKind
{
    /// <summary>There is no such dance, track, version, class, session or person, or it is gone for good.</summary>
    NotFound,

    /// <summary>The folder or file is no club, or no backup of one.</summary>
    NotAClub,

    /// <summary>A later Scuff wrote it, in a form that this one does not know.</summary>
    Newer,

    /// <summary>The file of the club, or a backup, is damaged.</summary>
    Damaged,

    /// <summary>Another program holds the club.</summary>
    Busy,

    /// <summary>The disk is full.</summary>
    DiskFull,

    /// <summary>Permission is missing, or the disk is read-only.</summary>
    NotAllowed,

    /// <summary>A file is larger than what is taken.</summary>
    TooLarge,

    /// <summary>The track has no audio here.</summary>
    NoAudio,

    /// <summary>A folder or file beside the club cannot be reached, read or written.</summary>
    Folder,

    /// <summary>What was to be kept cannot be: a class without a title, a session of no minutes.</summary>
    Impossible,
}
