namespace Scuff.Music.Corrections;

/// <summary>How the beat differs from what was taken for it.</summary>
public enum BeatLevel
{
    /// <summary>Every other beat is one; those with count 1 stay.</summary>
    Half,

    /// <summary>There is one more between any two.</summary>
    Double,

    /// <summary>The beats lie halfway between.</summary>
    OffBeat,
}
