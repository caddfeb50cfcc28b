namespace Scuff.Audio.Songs;

/// <summary>Who plays, and how it is mixed.</summary>
public sealed record Band
{
    /// <summary>The bass.</summary>
    public Voice Bass { get; init; } = Voice.ElectricBass;

    /// <summary>Chords in rhythm.</summary>
    public Voice Chords { get; init; } = Voice.SteelGuitar;

    /// <summary>Broken chords; null for none.</summary>
    public Voice? Broken { get; init; }

    /// <summary>Long chords.</summary>
    public Voice Pad { get; init; } = Voice.Strings;

    /// <summary>Melody.</summary>
    public Voice Lead { get; init; } = Voice.Singer;

    /// <summary>Solos and answers.</summary>
    public Voice Second { get; init; } = Voice.Fiddle;

    /// <summary>From 0 (brushes, soft beaters) to 1 (machine-hard attacks).</summary>
    public double DrumHardness { get; init; } = 0.5;

    /// <summary>Level of the drums in decibels against their usual place.</summary>
    public double DrumLevel { get; init; }

    /// <summary>Level of the bass drum in decibels against the rest of the drums.</summary>
    public double KickLevel { get; init; }

    /// <summary>Level of the bass in decibels against its usual place.</summary>
    public double BassLevel { get; init; }

    /// <summary>Level of all chords in decibels against their usual place.</summary>
    public double ChordLevel { get; init; }

    /// <summary>Level of melody and answers in decibels against their usual place.</summary>
    public double LeadLevel { get; init; }

    /// <summary>From 0 (dull) to 1 (bright), over the whole mix.</summary>
    public double Brightness { get; init; } = 0.6;

    /// <summary>From 0 (dry) to 1 (a hall).</summary>
    public double Room { get; init; } = 0.3;

    /// <summary>Loudness of the song in decibels of its root mean square below full scale.</summary>
    public double Loudness { get; init; } = -14;

    /// <summary>How often a melody enters between the beats, from 0 to 1.</summary>
    public double Syncopation { get; init; } = 0.3;

    /// <summary>How often the players stress what lies between the beats, with an open hi-hat and chords there, from 0 to 1.</summary>
    public double OffBeats { get; init; }
}
