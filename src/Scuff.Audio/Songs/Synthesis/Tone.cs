namespace Scuff.Audio.Songs.Synthesis;

/// <summary>Plays a <see cref="ToneSound"/>.</summary>
internal static class Tone
{
    // envelope, vibrato and colour are reckoned every so many samples and run straight between
    private const int Stride = 32;

    /// <summary>Adds a note to a buffer.</summary>
    public static void Play(
        float[] buffer, int start, int held, double frequency, float level, ToneSound sound, float[] bright, float[] dark, double force, uint seed, int rate)
    {
        int end = Math.Min(buffer.Length, start + held + (int)(sound.Release * rate * 7));
        Span<double> phases = [Unit(seed), Unit(seed ^ 0x5bd1e995), Unit(seed ^ 0x27d4eb2f)];
        phases[0] = sound.Players == 1 ? 0 : phases[0];
        Span<double> tunes = [1, Math.Pow(2, sound.Detune / 1200), Math.Pow(2, -sound.Detune / 1200)];
        double step = frequency * WaveTables.Size / rate;
        float share = (float)(level / Math.Sqrt(sound.Players));
        Noise noise = new(seed);
        OnePole breathy = new(Math.Min(8000, 3 * frequency), rate);
        float envelope = 0;
        float colour = (float)Math.Clamp(0.25 + (0.75 * force), 0, 1);
        for (int from = start; from < end; from += Stride)
        {
            int count = Math.Min(Stride, end - from);
            double t = (double)(from + Stride - start) / rate;
            double after = t - ((double)held / rate);
            float nextEnvelope = (float)(Shape(sound, Math.Min(t, (double)held / rate)) * (after > 0 ? Math.Exp(-after / sound.Release) : 1));
            float nextColour = (float)Math.Clamp((0.25 + (0.75 * force)) * (sound.HeldBrightness + ((1 - sound.HeldBrightness) * Math.Exp(-t / sound.Decay))), 0, 1);
            double bend = sound.Vibrato == 0 ? 0
                : sound.Vibrato * Math.Clamp((t - sound.VibratoDelay) / 0.2, 0, 1) * Math.Sin(2 * Math.PI * sound.VibratoRate * (t + phases.Length * Unit(seed)));
            bend -= sound.Scoop * Math.Exp(-t / 0.03);
            double speed = step * (1 + (bend * 0.05946));
            float envelopeStep = (nextEnvelope - envelope) / Stride;
            float colourStep = (nextColour - colour) / Stride;
            for (int p = 0; p < sound.Players; p++)
            {
                double phase = phases[p] * WaveTables.Size;
                double each = speed * tunes[p];
                float e = envelope;
                float c = colour;
                for (int i = 0; i < count; i++)
                {
                    int at = (int)phase;
                    float part = (float)(phase - at);
                    float d = dark[at] + (part * (dark[at + 1] - dark[at]));
                    float b = bright[at] + (part * (bright[at + 1] - bright[at]));
                    buffer[from + i] += share * e * (d + (c * (b - d)));
                    e += envelopeStep;
                    c += colourStep;
                    phase += each;
                    if (phase >= WaveTables.Size)
                    {
                        phase -= WaveTables.Size;
                    }
                }

                phases[p] = phase / WaveTables.Size;
            }

            if (sound.Breath > 0)
            {
                float e = envelope * level * (float)sound.Breath;
                for (int i = 0; i < count; i++)
                {
                    buffer[from + i] += e * breathy.Low(noise.Next());
                }
            }

            envelope = nextEnvelope;
            colour = nextColour;
        }
    }

    private static double Shape(ToneSound sound, double t) => t < sound.Attack
        ? t / sound.Attack
        : sound.Sustain + ((1 - sound.Sustain) * Math.Exp(-(t - sound.Attack) / sound.Decay));

    private static double Unit(uint seed) => unchecked((seed * 2654435761) >> 8) / 16777216.0;
}
