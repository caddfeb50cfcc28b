namespace Scuff.Audio.Songs;

/// <summary>How the drummer plays a section.</summary>
public enum DrumPart
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>A hand instrument only: shaker, tambourine, claps.</summary>
    Hand,

    /// <summary>Held back.</summary>
    Light,

    /// <summary>With all there is.</summary>
    Full,

    /// <summary>As if the beats were half as many.</summary>
    HalfTime,
}
