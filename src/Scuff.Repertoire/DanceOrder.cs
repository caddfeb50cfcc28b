namespace Scuff.Repertoire;

/// <summary>How found dances are ordered. Ties go by title, then by when they came.</summary>
public enum DanceOrder
{
    /// <summary>The best match of the words first; without words by title.</summary>
    BestMatch,

    /// <summary>By title, accents and case aside.</summary>
    Title,

    /// <summary>The one whose text changed last first.</summary>
    LastSaved,

    /// <summary>The one that came last first.</summary>
    LastAdded,

    /// <summary>By choreographer.</summary>
    Choreographer,

    /// <summary>By counts, fewest first; unknown last.</summary>
    Counts,
}
