namespace Scuff.Audio.Decoding;

/// <summary>Which channels of a sound are read.</summary>
internal enum SoundSide
{
    /// <summary>The mean of all.</summary>
    Both,

    /// <summary>The first of two; of more than two, or of one, the mean.</summary>
    Left,

    /// <summary>The second of two; of more than two, or of one, the mean.</summary>
    Right,
}
