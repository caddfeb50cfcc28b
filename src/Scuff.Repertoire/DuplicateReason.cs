namespace Scuff.Repertoire;

/// <summary>Why dances or tracks look like one and the same, the surest first.</summary>
public enum DuplicateReason
{
    /// <summary>The same text, but for white space and case.</summary>
    SameText,

    /// <summary>The feet do the same.</summary>
    SameSteps,

    /// <summary>The same title, case and accents aside.</summary>
    SameTitle,

    /// <summary>Tracks of the same title and artist, and as long within a second.</summary>
    SameSong,
}
