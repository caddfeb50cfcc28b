namespace Scuff.Audio.Mixing;

/// <summary>A kind of sound file that is written.</summary>
public enum SoundFormat
{
    /// <summary>WAV of 16 bits.</summary>
    Wav,

    /// <summary>MP3, with the help of ffmpeg.</summary>
    Mp3,

    /// <summary>AAC in M4A, with the help of ffmpeg.</summary>
    M4a,
}
