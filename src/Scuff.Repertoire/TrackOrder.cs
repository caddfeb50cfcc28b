namespace Scuff.Repertoire;

/// <summary>How found tracks are ordered. Ties go by title, then by when they came.</summary>
public enum TrackOrder
{
    /// <summary>The best match of the words first; without words by title.</summary>
    BestMatch,

    /// <summary>By title, accents and case aside.</summary>
    Title,

    /// <summary>By artist.</summary>
    Artist,

    /// <summary>The one that came last first.</summary>
    LastAdded,

    /// <summary>By tempo, slowest first; unknown last.</summary>
    Tempo,
}
