namespace Scuff.Audio.Songs;

/// <summary>What a drummer strikes.</summary>
public enum DrumVoice
{
    /// <summary>Bass drum.</summary>
    Kick,

    /// <summary>Snare drum.</summary>
    Snare,

    /// <summary>Stick across the rim.</summary>
    SideStick,

    /// <summary>Hands.</summary>
    Clap,

    /// <summary>Hi-hat, closed.</summary>
    ClosedHat,

    /// <summary>Hi-hat, closed by the foot.</summary>
    PedalHat,

    /// <summary>Hi-hat, open.</summary>
    OpenHat,

    /// <summary>Ride cymbal.</summary>
    Ride,

    /// <summary>Crash cymbal.</summary>
    Crash,

    /// <summary>High tom.</summary>
    HighTom,

    /// <summary>Middle tom.</summary>
    MiddleTom,

    /// <summary>Low tom.</summary>
    LowTom,

    /// <summary>Shaker.</summary>
    Shaker,

    /// <summary>Tambourine.</summary>
    Tambourine,

    /// <summary>Cowbell.</summary>
    Cowbell,

    /// <summary>High conga, open.</summary>
    HighConga,

    /// <summary>Low conga, open.</summary>
    LowConga,

    /// <summary>Conga, slapped.</summary>
    MutedConga,

    /// <summary>Scraper, a long stroke.</summary>
    LongScrape,

    /// <summary>Scraper, a short stroke.</summary>
    ShortScrape,

    /// <summary>Brush on the snare drum.</summary>
    BrushTap,

    /// <summary>Brush swept over the snare drum.</summary>
    BrushSweep,

    /// <summary>Two sticks together, for the count-in.</summary>
    Sticks,
}
