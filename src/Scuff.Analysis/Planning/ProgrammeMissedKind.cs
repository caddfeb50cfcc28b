namespace Scuff.Analysis.Planning;

/// <summary>Why a wish is not met.</summary>
public enum ProgrammeMissedKind
{
    /// <summary>The dance is not among those that may be danced, or it was danced already.</summary>
    NotThere,

    /// <summary>It has no song.</summary>
    NoSong,

    /// <summary>It is longer than the stretch, or the stretch has no such place.</summary>
    NoRoom,

    /// <summary>Another dance is pinned to that place.</summary>
    PlaceTaken,

    /// <summary>Its song is played for another dance.</summary>
    SongTaken,

    /// <summary>It is nearly the same as another dance beside it.</summary>
    TooAlike,

    /// <summary>She has also forbidden it.</summary>
    Forbidden,

    /// <summary>The two dances of a split have no song in common.</summary>
    NoCommonSong,

    /// <summary>Her decisions cannot all hold together; this one was let go.</summary>
    Together,

    /// <summary>Others are worth more.</summary>
    WorthLess,
}
