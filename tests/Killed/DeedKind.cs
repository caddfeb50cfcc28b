namespace Killed;

/// <summary>What is done to a club in one go.</summary>
internal enum DeedKind
{
    /// <summary>A class is saved.</summary>
    Class,

    /// <summary>A session is saved, with its dances and the versions that hang on them.</summary>
    Session,

    /// <summary>A session is removed.</summary>
    NoSession,

    /// <summary>A class is marked.</summary>
    Mark,

    /// <summary>An evening is saved.</summary>
    Evening,

    /// <summary>A dance is saved.</summary>
    Dance,

    /// <summary>A setting is set.</summary>
    Setting,

    /// <summary>A person is saved.</summary>
    Person,

    /// <summary>All people are erased.</summary>
    NoPeople,

    /// <summary>A backup is written over the one before.</summary>
    Backup,

    /// <summary>The club goes back to the backup.</summary>
    Restore,
}
