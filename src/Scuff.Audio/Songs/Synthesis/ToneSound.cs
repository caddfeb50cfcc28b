namespace Scuff.Audio.Songs.Synthesis;

/// <summary>A sound made of two waves of harmonics, one dark and one bright, and an envelope.</summary>
internal sealed record ToneSound
{
    /// <summary>Level of a harmonic: its number from 1, its frequency in hertz.</summary>
    public required Func<int, double, double> Bright { get; init; }

    /// <summary>The same when it is soft or has died away.</summary>
    public required Func<int, double, double> Dark { get; init; }

    /// <summary>Seconds to full level.</summary>
    public double Attack { get; init; } = 0.01;

    /// <summary>Time constant in seconds of its fall to <see cref="Sustain"/>.</summary>
    public double Decay { get; init; } = 0.3;

    /// <summary>Level held, of 1.</summary>
    public double Sustain { get; init; } = 0.8;

    /// <summary>Time constant in seconds of its end.</summary>
    public double Release { get; init; } = 0.05;

    /// <summary>Share of the bright wave held; at the attack it is as the force says.</summary>
    public double HeldBrightness { get; init; } = 0.6;

    /// <summary>Depth of the vibrato in semitones.</summary>
    public double Vibrato { get; init; }

    /// <summary>Vibratos a second.</summary>
    public double VibratoRate { get; init; } = 5.4;

    /// <summary>Seconds from the attack until the vibrato is there.</summary>
    public double VibratoDelay { get; init; } = 0.25;

    /// <summary>How many play, at most 3.</summary>
    public int Players { get; init; } = 1;

    /// <summary>How far they are apart, in cents.</summary>
    public double Detune { get; init; }

    /// <summary>Level of the breath or bow.</summary>
    public double Breath { get; init; }

    /// <summary>How many semitones below its pitch it begins; slides up within the attack.</summary>
    public double Scoop { get; init; }
}
