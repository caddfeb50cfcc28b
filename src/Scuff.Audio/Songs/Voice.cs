namespace Scuff.Audio.Songs;

/// <summary>The sounds of the band, drums aside. All are synthesised; none is a recording.</summary>
public enum Voice
{
    /// <summary>Plucked double bass.</summary>
    UprightBass,

    /// <summary>Electric bass, played with fingers.</summary>
    ElectricBass,

    /// <summary>Electric bass, played with a pick.</summary>
    PickedBass,

    /// <summary>Synthesiser bass.</summary>
    SynthBass,

    /// <summary>Tuba, as in a street band.</summary>
    Tuba,

    /// <summary>Steel-string guitar.</summary>
    SteelGuitar,

    /// <summary>Nylon-string guitar.</summary>
    NylonGuitar,

    /// <summary>Electric guitar, clean.</summary>
    CleanGuitar,

    /// <summary>Electric guitar, driven hard.</summary>
    DrivenGuitar,

    /// <summary>Guitar with the strings damped.</summary>
    MutedGuitar,

    /// <summary>Banjo.</summary>
    Banjo,

    /// <summary>Harp.</summary>
    Harp,

    /// <summary>Piano.</summary>
    Piano,

    /// <summary>Electric piano.</summary>
    ElectricPiano,

    /// <summary>Vibraphone.</summary>
    Vibes,

    /// <summary>Electric organ.</summary>
    Organ,

    /// <summary>Accordion.</summary>
    Accordion,

    /// <summary>Harmonica.</summary>
    Harmonica,

    /// <summary>A section of strings.</summary>
    Strings,

    /// <summary>Soft synthesiser chords.</summary>
    SynthPad,

    /// <summary>Voices without words.</summary>
    Choir,

    /// <summary>A section of brass.</summary>
    Brass,

    /// <summary>Fiddle.</summary>
    Fiddle,

    /// <summary>Flute.</summary>
    Flute,

    /// <summary>Clarinet.</summary>
    Clarinet,

    /// <summary>Trumpet with a mute.</summary>
    MutedTrumpet,

    /// <summary>A reed like a saxophone.</summary>
    Saxophone,

    /// <summary>Synthesiser melody.</summary>
    SynthLead,

    /// <summary>A singer of vowels.</summary>
    Singer,
}
