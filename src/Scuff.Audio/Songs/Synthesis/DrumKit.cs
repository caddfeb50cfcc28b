namespace Scuff.Audio.Songs.Synthesis;

/// <summary>
/// The drums of one song, each struck beforehand: three strokes of each, soft and hard. Skins are falling sines with noise, metal is
/// a cluster of inharmonic squares, hands and shakers are shaped noise. Every sound begins with its first sample.
/// </summary>
internal sealed class DrumKit
{
    private const int Takes = 3;

    private readonly int _rate;
    private readonly Dice _dice;
    private readonly double _hardness;
    private readonly Dictionary<(DrumVoice Voice, bool IsHard, int Take), float[]> _strokes = [];

    // drawn once, so that a drum keeps its tune
    private readonly double _kickTune;
    private readonly double _kickLength;
    private readonly double _snareTune;
    private readonly double _snareWires;
    private readonly double _metal;
    private readonly double _skinTune;

    public DrumKit(Dice dice, double hardness, int rate)
    {
        _dice = dice;
        _hardness = hardness;
        _rate = rate;
        _kickTune = dice.Between(44, 64);
        _kickLength = dice.Between(0.09, 0.26);
        _snareTune = dice.Between(165, 240);
        _snareWires = dice.Between(0.07, 0.16);
        _metal = dice.Between(0.85, 1.2);
        _skinTune = dice.Between(0.85, 1.2);
    }

    /// <summary>A stroke, at full level; scale it by its force.</summary>
    public float[] Stroke(DrumVoice voice, double force, int number)
    {
        (DrumVoice Voice, bool IsHard, int Take) key = (voice, force > 0.6, number % Takes);
        if (!_strokes.TryGetValue(key, out float[]? stroke))
        {
            stroke = Strike(voice, key.IsHard, new Noise((uint)_dice.Fork($"{voice} {key.IsHard} {key.Take}").Below(int.MaxValue)));
            _strokes.Add(key, stroke);
        }

        return stroke;
    }

    private float[] Strike(DrumVoice voice, bool isHard, Noise noise)
    {
        double hard = (isHard ? 1 : 0.55) * (0.35 + (0.65 * _hardness));
        return voice switch
        {
            DrumVoice.Kick => Skin(_kickTune, 2.2 + (2.5 * hard), 0.03, _kickLength, 0.9, 0.35 * hard, 3500, 0.006, noise),
            DrumVoice.Snare => Snare(hard, noise),
            DrumVoice.SideStick => Wood(1720, 820, 0.018, 0.6, 0.4 * hard, noise),
            DrumVoice.Sticks => Wood(2500, 1340, 0.015, 0.7, 0.5, noise),
            DrumVoice.Clap => Clap(noise),
            DrumVoice.ClosedHat => Metal(0.022 + (0.02 * _metal), 7000, 0.42 * (0.6 + (0.4 * hard)), 0.6, noise),
            DrumVoice.PedalHat => Metal(0.03, 5500, 0.3, 0.5, noise),
            DrumVoice.OpenHat => Metal(0.16, 6500, 0.4, 0.55, noise),
            DrumVoice.Ride => Ride(hard, noise),
            DrumVoice.Crash => Metal(0.75, 3800, 0.5, 0.75, noise),
            DrumVoice.HighTom => Skin(185 * _skinTune, 1.5, 0.05, 0.16, 0.8, 0.25 * hard, 4000, 0.01, noise),
            DrumVoice.MiddleTom => Skin(135 * _skinTune, 1.5, 0.05, 0.2, 0.85, 0.25 * hard, 3500, 0.01, noise),
            DrumVoice.LowTom => Skin(92 * _skinTune, 1.5, 0.05, 0.24, 0.9, 0.25 * hard, 3000, 0.01, noise),
            DrumVoice.HighConga => Skin(262 * _skinTune, 1.15, 0.02, 0.11, 0.7, 0.3 * hard, 3000, 0.008, noise),
            DrumVoice.LowConga => Skin(182 * _skinTune, 1.15, 0.02, 0.15, 0.75, 0.25 * hard, 2600, 0.008, noise),
            DrumVoice.MutedConga => Skin(275 * _skinTune, 1.1, 0.01, 0.025, 0.4, 0.5, 3800, 0.012, noise),
            DrumVoice.Shaker => Hiss(0.014, 0.024, 6200, 0.3, noise),
            DrumVoice.Tambourine => Tambourine(noise),
            DrumVoice.Cowbell => Cowbell(noise),
            DrumVoice.LongScrape => Scrape(0.2, noise),
            DrumVoice.ShortScrape => Scrape(0.06, noise),
            DrumVoice.BrushTap => Hiss(0.001, 0.05, 2400, 0.3, noise),
            _ => Hiss(0.06, 0.12, 1900, 0.22, noise),
        };
    }

    private float[] Seconds(double seconds) => new float[(int)(seconds * _rate)];

    private float Fall(double time) => (float)Math.Exp(-1 / (time * _rate));

    // A sine that falls to its pitch, and the noise of what strikes it.
    private float[] Skin(double tune, double rise, double fallTime, double length, double body, double click, double clickCutoff, double clickTime, Noise noise)
    {
        float[] sound = Seconds(length * 7);
        OnePole dark = new(clickCutoff, _rate);
        double phase = 0;
        double bend = rise - 1;
        double bendFall = Fall(fallTime);
        float level = 1;
        float levelFall = Fall(length);
        float strike = 1;
        float strikeFall = Fall(clickTime);
        for (int i = 0; i < sound.Length; i++)
        {
            // begins at a quarter of its wave: the hit is in the first sample, as with a skin already moving
            phase += 2 * Math.PI * tune * (1 + bend) / _rate;
            bend *= bendFall;
            sound[i] = ((float)(body * Math.Sin(phase + 0.9)) * level) + (float)(click * strike * 2.5 * dark.Low(noise.Next()));
            level *= levelFall;
            strike *= strikeFall;
        }

        return Ended(sound);
    }

    private float[] Snare(double hard, Noise noise)
    {
        float[] sound = Seconds(0.09 + (_snareWires * 5));
        OnePole low = new(900, _rate);
        OnePole top = new(5000 + (6000 * hard), _rate);
        float skin = 1;
        float skinFall = Fall(0.055);
        float wires = 1;
        float wiresFall = Fall(_snareWires * (0.7 + (0.3 * hard)));
        float snap = 1;
        float snapFall = Fall(0.008);
        for (int i = 0; i < sound.Length; i++)
        {
            double t = (double)i / _rate;
            double bend = 1 + (0.25 * Math.Exp(-t / 0.012));
            double tone = (0.45 * Math.Sin(2 * Math.PI * _snareTune * bend * t + 0.8)) + (0.25 * Math.Sin(2 * Math.PI * _snareTune * 1.59 * t + 0.5));
            float hiss = top.Low(low.High(noise.Next()));
            sound[i] = (float)(tone * skin) + (hiss * ((0.55f * wires) + (float)(0.7 * hard * snap)));
            skin *= skinFall;
            wires *= wiresFall;
            snap *= snapFall;
        }

        return Ended(sound);
    }

    private float[] Wood(double first, double second, double length, double body, double click, Noise noise)
    {
        float[] sound = Seconds(length * 7);
        float level = 1;
        float fall = Fall(length);
        float strike = 1;
        float strikeFall = Fall(0.002);
        for (int i = 0; i < sound.Length; i++)
        {
            double t = 2 * Math.PI * i / _rate;
            sound[i] = (float)((body * level * ((0.6 * Math.Sin(first * t + 1)) + (0.5 * Math.Sin(second * t + 1)))) + (click * strike * noise.Next()));
            level *= fall;
            strike *= strikeFall;
        }

        return Ended(sound);
    }

    // several hands, not quite together
    private float[] Clap(Noise noise)
    {
        float[] sound = Seconds(0.35);
        Resonator band = new(1250, 0.9, _rate);
        for (int i = 0; i < sound.Length; i++)
        {
            double t = (double)i / _rate;
            double level = 0.35 * Math.Exp(-t / 0.055);
            foreach (double at in (ReadOnlySpan<double>)[0, 0.009, 0.019])
            {
                level += t >= at ? Math.Exp(-(t - at) / 0.005) : 0;
            }

            sound[i] = (float)(1.5 * level) * band.Next(noise.Next());
        }

        return Ended(sound);
    }

    private float[] Metal(double length, double cutoff, double level, double hissShare, Noise noise)
    {
        ReadOnlySpan<double> partials = [1, 1.342, 1.2312, 1.6532, 1.9523, 2.1523];
        float[] sound = Seconds(Math.Min(2.6, length * 6));
        OnePole first = new(cutoff * _metal, _rate);
        OnePole second = new(cutoff * 0.7, _rate);
        Span<double> phases = stackalloc double[partials.Length];
        float slow = 1;
        float slowFall = Fall(length);
        float quick = 1;
        float quickFall = Fall(Math.Min(0.012, length / 3));
        for (int i = 0; i < sound.Length; i++)
        {
            float ring = 0;
            for (int p = 0; p < partials.Length; p++)
            {
                phases[p] += partials[p] * 410 * _metal / _rate;
                phases[p] -= phases[p] >= 1 ? 1 : 0;
                ring += phases[p] < 0.5 ? 0.2f : -0.2f;
            }

            float all = ((float)(1 - hissShare) * ring) + ((float)hissShare * noise.Next());
            sound[i] = (float)level * second.High(first.High(all)) * ((0.75f * slow) + (0.6f * quick));
            slow *= slowFall;
            quick *= quickFall;
        }

        return Ended(sound);
    }

    private float[] Ride(double hard, Noise noise)
    {
        float[] sound = Metal(0.35, 5200, 0.2, 0.45, noise);
        for (int i = 0; i < sound.Length; i++)
        {
            double t = (double)i / _rate;
            double ping = Math.Exp(-t / 0.12) * ((0.5 * Math.Sin(2 * Math.PI * 3150 * _metal * t + 0.9)) + (0.4 * Math.Sin(2 * Math.PI * 4720 * _metal * t + 0.4)));
            sound[i] += (float)(0.16 * (0.5 + hard) * ping);
        }

        return Ended(sound);
    }

    private float[] Hiss(double rise, double length, double cutoff, double level, Noise noise)
    {
        float[] sound = Seconds(rise + (length * 7));
        OnePole high = new(cutoff, _rate);
        OnePole higher = new(cutoff * 0.6, _rate);
        for (int i = 0; i < sound.Length; i++)
        {
            double t = (double)i / _rate;
            double shape = t < rise ? (0.3 + (0.7 * t / rise)) : Math.Exp(-(t - rise) / length);
            sound[i] = (float)(1.6 * level * shape) * higher.High(high.High(noise.Next()));
        }

        return Ended(sound);
    }

    private float[] Tambourine(Noise noise)
    {
        float[] sound = Seconds(0.4);
        Resonator low = new(6300, 3, _rate);
        Resonator high = new(9400, 4, _rate);
        for (int i = 0; i < sound.Length; i++)
        {
            double t = (double)i / _rate;
            double jingle = Math.Exp(-t / 0.05) * (0.75 + (0.25 * Math.Sin(2 * Math.PI * 31 * t + 1.5)));
            float hiss = noise.Next();
            sound[i] = (float)(1.1 * jingle) * (low.Next(hiss) + high.Next(hiss)) + (float)(0.25 * Math.Exp(-t / 0.003)) * hiss;
        }

        return Ended(sound);
    }

    private float[] Cowbell(Noise noise)
    {
        float[] sound = Seconds(0.45);
        Resonator band = new(900 * _skinTune, 1.2, _rate);
        for (int i = 0; i < sound.Length; i++)
        {
            double t = (double)i / _rate;
            float square = (t * 545 * _skinTune % 1 < 0.5 ? 0.4f : -0.4f) + (t * 812 * _skinTune % 1 < 0.5 ? 0.4f : -0.4f);
            double level = (0.6 * Math.Exp(-t / 0.015)) + (0.4 * Math.Exp(-t / 0.07));
            sound[i] = (float)level * (band.Next(square) + (0.15f * square) + (float)(0.2 * Math.Exp(-t / 0.002)) * noise.Next());
        }

        return Ended(sound);
    }

    private float[] Scrape(double length, Noise noise)
    {
        float[] sound = Seconds(length + 0.03);
        OnePole high = new(2500, _rate);
        for (int i = 0; i < sound.Length; i++)
        {
            double t = (double)i / _rate;
            double teeth = Math.Exp(-(t * 95 % 1) * 5);
            double shape = t < length ? 0.5 + (0.5 * t / length) : Math.Exp(-(t - length) / 0.005);
            sound[i] = (float)(0.4 * teeth * shape) * high.High(noise.Next());
        }

        return Ended(sound);
    }

    // the last hundredth of a second goes to nothing: a cut would be heard
    private float[] Ended(float[] sound)
    {
        int tail = Math.Min(sound.Length, _rate / 100);
        for (int i = 0; i < tail; i++)
        {
            sound[sound.Length - 1 - i] *= (float)i / tail;
        }

        return sound;
    }
}
