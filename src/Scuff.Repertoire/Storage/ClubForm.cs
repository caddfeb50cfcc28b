namespace Scuff.Repertoire.Storage;

/// <summary>The form of a database file.</summary>
internal enum ClubForm
{
    /// <summary>There is none, or an empty one.</summary>
    Absent,

    /// <summary>A club in the form that this program writes.</summary>
    Present,

    /// <summary>A club in a form that earlier programs wrote.</summary>
    Older,

    /// <summary>A club in a form that this program does not know.</summary>
    Newer,

    /// <summary>A database of something else.</summary>
    Foreign,
}
