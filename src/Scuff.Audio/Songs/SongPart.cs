namespace Scuff.Audio.Songs;

/// <summary>A chair in the band.</summary>
public enum SongPart
{
    /// <summary>Drums; pitches are <see cref="DrumVoice"/>s.</summary>
    Drums,

    /// <summary>Bass.</summary>
    Bass,

    /// <summary>Chords in rhythm.</summary>
    Chords,

    /// <summary>Broken chords.</summary>
    Broken,

    /// <summary>Long chords.</summary>
    Pad,

    /// <summary>Melody.</summary>
    Lead,

    /// <summary>Answers to the melody, solos.</summary>
    Second,
}
