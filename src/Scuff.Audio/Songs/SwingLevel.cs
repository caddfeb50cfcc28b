namespace Scuff.Audio.Songs;

/// <summary>What swings.</summary>
public enum SwingLevel
{
    /// <summary>The halves of a beat.</summary>
    Eighth,

    /// <summary>The halves of half a beat.</summary>
    Sixteenth,
}
