namespace Scuff.Audio.Songs.Synthesis;

/// <summary>
/// A string that is plucked: noise going round in a delay line that loses its highs (Karplus and Strong 1983; fractional tuning by
/// an all-pass after Jaffe and Smith 1983).
/// </summary>
internal static class PluckedString
{
    /// <summary>Adds a note to a buffer.</summary>
    /// <param name="buffer">Mono samples of the part.</param>
    /// <param name="start">Index of its first sample.</param>
    /// <param name="held">Samples until it is damped.</param>
    /// <param name="frequency">In hertz.</param>
    /// <param name="level">Of its loudest moment.</param>
    /// <param name="sound">What string it is.</param>
    /// <param name="force">From 0 to 1: harder is brighter.</param>
    /// <param name="seed">Of the noise.</param>
    /// <param name="rate">Samples a second.</param>
    public static void Pluck(
        float[] buffer, int start, int held, double frequency, float level, StringSound sound, double force, uint seed, int rate)
    {
        double period = rate / frequency;
        double bright = Math.Clamp(sound.Brightness * (0.6 + (0.5 * force)), 0.02, 0.98);

        // the average of two samples delays by the share of the older one
        float old = (float)(0.5 * (1 - bright));
        double rest = period - old;
        int length = Math.Max(2, (int)(rest - 0.3));
        double fraction = rest - length;
        float tuning = (float)((1 - fraction) / (1 + fraction));
        float loss = (float)Math.Pow(0.001, period / (sound.Decay * Math.Pow(110 / frequency, 0.4) * rate));

        Span<float> line = length <= 2048 ? stackalloc float[length] : new float[length];
        Noise noise = new(seed);
        OnePole dark = new(900 + (11000 * bright * bright), rate);
        float sum = 0;
        for (int i = 0; i < length; i++)
        {
            line[i] = dark.Low(noise.Next());
            sum += line[i];
        }

        // plucked at a place of its length, some harmonics are missing; no mean, or it would thump
        int place = Math.Max(1, (int)(length * sound.PluckedAt));
        float peak = 1e-6f;
        Span<float> comb = length <= 2048 ? stackalloc float[length] : new float[length];
        for (int i = 0; i < length; i++)
        {
            comb[i] = line[i] - (0.8f * line[(i + length - place) % length]) - (0.2f * sum / length);
            peak = Math.Max(peak, Math.Abs(comb[i]));
        }

        comb.CopyTo(line);
        float gain = level / peak;
        float damp = (float)Math.Exp(-1 / (sound.Damping * rate));
        float envelope = 1;

        // the finger takes half a millisecond to let go
        int release = rate / 2000;
        float last = 0;
        float passIn = 0;
        float passOut = 0;
        int at = 0;
        int end = Math.Min(buffer.Length, start + held + (int)(sound.Damping * rate * 7));
        for (int i = start; i < end; i++)
        {
            float x = line[at];
            buffer[i] += gain * (i - start < release ? (i - start + 1f) / release : envelope) * x;
            float filtered = loss * (((1 - old) * x) + (old * last));
            last = x;
            float y = (tuning * (filtered - passOut)) + passIn;
            passIn = filtered;
            passOut = y;
            line[at] = y;
            at = at + 1 == length ? 0 : at + 1;
            if (i >= start + held)
            {
                envelope *= damp;
            }
        }
    }
}
