namespace Scuff.Audio.Songs.Synthesis;

/// <summary>What each voice of the band sounds like.</summary>
internal static class VoiceSounds
{
    // F1, F2 and F3 of the vowels a, e, i, o, u of a low woman's or high man's voice, in hertz (Peterson and Barney 1952, rounded)
    private static readonly double[][] Vowels = [[780, 1180, 2600], [560, 1900, 2550], [330, 2250, 2950], [530, 880, 2500], [360, 850, 2400]];

    /// <summary>The string of a plucked voice; null for other voices.</summary>
    public static StringSound? StringOf(Voice voice) => voice switch
    {
        Voice.UprightBass => new(0.22, 2.2, 0.28, 0.05),
        Voice.ElectricBass => new(0.35, 4, 0.2, 0.03),
        Voice.PickedBass => new(0.62, 4, 0.1, 0.025),
        Voice.SteelGuitar => new(0.8, 4.5, 0.13, 0.04),
        Voice.NylonGuitar => new(0.5, 3, 0.22, 0.05),
        Voice.CleanGuitar => new(0.7, 4.5, 0.17, 0.03),
        Voice.DrivenGuitar => new(0.75, 8, 0.15, 0.03),
        Voice.MutedGuitar => new(0.6, 0.35, 0.12, 0.012),
        Voice.Banjo => new(0.93, 1.1, 0.08, 0.03),
        Voice.Harp => new(0.55, 5, 0.4, 0.25),
        _ => null,
    };

    /// <summary>How hard a voice is driven into its amplifier; 0 for not at all.</summary>
    public static double DriveOf(Voice voice) => voice switch
    {
        Voice.DrivenGuitar => 7,
        Voice.Organ => 1.2,
        Voice.SynthBass => 1.5,
        _ => 0,
    };

    /// <summary>The sound of a voice that is not plucked.</summary>
    /// <param name="voice">The voice.</param>
    /// <param name="vowel">For the singer, which vowel.</param>
    public static ToneSound ToneOf(Voice voice, int vowel) => voice switch
    {
        Voice.SynthBass => new()
        {
            Bright = (n, f) => 1.0 / n / (1 + Square(f / 1400)),
            Dark = (n, f) => 1.0 / n / (1 + Square(f / 250)),
            Attack = 0.002,
            Decay = 0.12,
            Sustain = 0.7,
            HeldBrightness = 0.35,
            Release = 0.02,
        },
        Voice.Tuba => new()
        {
            Bright = (n, f) => 1.0 / n / (1 + Square(f / 900)),
            Dark = (n, f) => 1.0 / n / (1 + Square(f / 300)),
            Attack = 0.025,
            Decay = 0.2,
            Sustain = 0.75,
            Release = 0.04,
            Breath = 0.01,
        },
        Voice.Piano => new()
        {
            Bright = (n, f) => Math.Pow(n, -1.1) * (n % 8 == 0 ? 0.2 : 1) / (1 + Square(f / 4200)),
            Dark = (n, f) => Math.Pow(n, -1.9) / (1 + Square(f / 1400)),
            Attack = 0.002,
            Decay = 0.7,
            Sustain = 0.08,
            Release = 0.08,
            HeldBrightness = 0.2,
            Players = 2,
            Detune = 1.6,
        },
        Voice.ElectricPiano => new()
        {
            Bright = (n, f) => n switch { 1 => 1, 2 => 0.35, 3 => 0.22, 4 => 0.1, 14 or 15 => 0.12, _ => 0.02 },
            Dark = (n, f) => n switch { 1 => 1, 2 => 0.12, 3 => 0.03, _ => 0 },
            Attack = 0.003,
            Decay = 0.9,
            Sustain = 0.15,
            Release = 0.09,
            HeldBrightness = 0.12,
        },
        Voice.Vibes => new()
        {
            Bright = (n, f) => n switch { 1 => 1, 4 => 0.3, 10 => 0.12, _ => 0 },
            Dark = (n, f) => n == 1 ? 1 : 0,
            Attack = 0.002,
            Decay = 0.6,
            Sustain = 0.1,
            Release = 0.3,
            HeldBrightness = 0.1,
        },
        Voice.Organ => new()
        {
            Bright = (n, f) => n switch { 1 => 1, 2 => 0.8, 3 => 0.7, 4 => 0.4, 6 => 0.3, 8 => 0.35, _ => 0 },
            Dark = (n, f) => n switch { 1 => 1, 2 => 0.6, 3 => 0.4, _ => 0 },
            Attack = 0.006,
            Sustain = 1,
            Release = 0.02,
            HeldBrightness = 0.9,
            Vibrato = 0.12,
            VibratoRate = 6.3,
            VibratoDelay = 0,
        },
        Voice.Accordion => new()
        {
            Bright = (n, f) => Math.Pow(n, -0.8) / (1 + Square(f / 3600)),
            Dark = (n, f) => Math.Pow(n, -1.2) / (1 + Square(f / 1800)),
            Attack = 0.022,
            Sustain = 0.9,
            Release = 0.035,
            HeldBrightness = 0.8,
            Players = 2,
            Detune = 7,
        },
        Voice.Harmonica => new()
        {
            Bright = (n, f) => Math.Pow(n, -0.7) * (n % 2 == 0 ? 0.6 : 1) / (1 + Square(f / 3800)),
            Dark = (n, f) => Math.Pow(n, -1.2) / (1 + Square(f / 1900)),
            Attack = 0.03,
            Sustain = 0.9,
            Release = 0.04,
            Vibrato = 0.2,
            Breath = 0.03,
            Scoop = 0.4,
        },
        Voice.Strings => new()
        {
            Bright = (n, f) => 1.0 / n / (1 + Square(f / 3800)),
            Dark = (n, f) => 1.0 / n / (1 + Square(f / 1500)),
            Attack = 0.13,
            Sustain = 0.95,
            Release = 0.16,
            Players = 3,
            Detune = 9,
            Vibrato = 0.1,
            HeldBrightness = 0.8,
        },
        Voice.SynthPad => new()
        {
            Bright = (n, f) => 1.0 / n / (1 + Square(f / 2600)),
            Dark = (n, f) => 1.0 / n / (1 + Square(f / 700)),
            Attack = 0.03,
            Decay = 0.5,
            Sustain = 0.8,
            Release = 0.12,
            Players = 3,
            Detune = 12,
            HeldBrightness = 0.5,
        },
        Voice.Choir => new()
        {
            Bright = (n, f) => Math.Pow(n, -0.6) * Formants(f, Vowels[0]),
            Dark = (n, f) => Math.Pow(n, -0.8) * Formants(f, Vowels[3]),
            Attack = 0.12,
            Sustain = 0.95,
            Release = 0.15,
            Players = 3,
            Detune = 11,
            Vibrato = 0.15,
            Breath = 0.02,
        },
        Voice.Brass => new()
        {
            Bright = (n, f) => Math.Pow(n, -0.5) / (1 + Square(Square(f / 2400))),
            Dark = (n, f) => Math.Pow(n, -1.1) / (1 + Square(f / 900)),
            Attack = 0.03,
            Decay = 0.12,
            Sustain = 0.8,
            Release = 0.05,
            Players = 3,
            Detune = 6,
            HeldBrightness = 0.65,
            Scoop = 0.25,
        },
        Voice.Fiddle => new()
        {
            Bright = (n, f) => Math.Pow(n, -0.9) * (0.5 + Bump(f, 480, 250) + (0.8 * Bump(f, 2700, 1200))) / (1 + Square(f / 7000)),
            Dark = (n, f) => Math.Pow(n, -1.1) * (0.5 + Bump(f, 480, 250)) / (1 + Square(f / 2600)),
            Attack = 0.035,
            Sustain = 0.92,
            Release = 0.06,
            Vibrato = 0.28,
            VibratoRate = 5.7,
            HeldBrightness = 0.75,
            Breath = 0.03,
            Scoop = 0.25,
        },
        Voice.Flute => new()
        {
            Bright = (n, f) => n switch { 1 => 1, 2 => 0.45, 3 => 0.22, 4 => 0.08, 5 => 0.04, _ => 0 },
            Dark = (n, f) => n switch { 1 => 1, 2 => 0.15, 3 => 0.05, _ => 0 },
            Attack = 0.04,
            Sustain = 0.92,
            Release = 0.06,
            Vibrato = 0.18,
            VibratoRate = 4.9,
            Breath = 0.09,
        },
        Voice.Clarinet => new()
        {
            Bright = (n, f) => (n % 2 == 1 ? 1 : 0.12) * Math.Pow(n, -0.9) / (1 + Square(f / 3500)),
            Dark = (n, f) => (n % 2 == 1 ? 1 : 0.05) * Math.Pow(n, -1.5) / (1 + Square(f / 1500)),
            Attack = 0.025,
            Sustain = 0.92,
            Release = 0.05,
            Vibrato = 0.06,
            Breath = 0.02,
        },
        Voice.MutedTrumpet => new()
        {
            Bright = (n, f) => Math.Pow(n, -0.3) * (0.15 + Bump(f, 1900, 900)) / (1 + Square(f / 6000)),
            Dark = (n, f) => Math.Pow(n, -0.9) * (0.4 + Bump(f, 1300, 800)) / (1 + Square(f / 3000)),
            Attack = 0.02,
            Decay = 0.1,
            Sustain = 0.85,
            Release = 0.04,
            Vibrato = 0.15,
            Breath = 0.01,
        },
        Voice.Saxophone => new()
        {
            Bright = (n, f) => Math.Pow(n, -0.6) * (0.4 + Bump(f, 900, 700)) / (1 + Square(f / 3800)),
            Dark = (n, f) => Math.Pow(n, -1.0) / (1 + Square(f / 1300)),
            Attack = 0.028,
            Sustain = 0.9,
            Release = 0.05,
            Vibrato = 0.22,
            VibratoRate = 5.1,
            Breath = 0.05,
            Scoop = 0.5,
        },
        Voice.SynthLead => new()
        {
            Bright = (n, f) => 1.0 / n / (1 + Square(f / 5200)),
            Dark = (n, f) => (n % 2 == 1 ? 1.0 : 0.3) / n / (1 + Square(f / 1700)),
            Attack = 0.004,
            Decay = 0.2,
            Sustain = 0.75,
            Release = 0.05,
            Players = 2,
            Detune = 8,
            Vibrato = 0.1,
        },
        _ => new()
        {
            Bright = (n, f) => Math.Pow(n, -0.5) * Formants(f, Vowels[vowel % Vowels.Length]),
            Dark = (n, f) => Math.Pow(n, -0.8) * Formants(f, Vowels[vowel % Vowels.Length]) / (1 + Square(f / 1800)),
            Attack = 0.045,
            Decay = 0.25,
            Sustain = 0.85,
            Release = 0.07,
            Vibrato = 0.3,
            VibratoRate = 5.3,
            VibratoDelay = 0.3,
            Breath = 0.035,
            Scoop = 0.8,
        },
    };

    private static double Square(double x) => x * x;

    private static double Bump(double f, double centre, double width) => Math.Exp(-Square((f - centre) / width));

    private static double Formants(double f, double[] vowel)
        => 0.03 + Bump(f, vowel[0], 130) + (0.5 * Bump(f, vowel[1], 170)) + (0.28 * Bump(f, vowel[2], 260)) + (0.5 * Bump(f, 180, 160));
}
