namespace Tests.Audio.Decoding;

/// <summary>Sounds made by rule, so that a test knows every sample.</summary>
internal static class Sounds
{
    /// <summary>Where the bursts of <see cref="Bursts"/> begin, in seconds: left, then right.</summary>
    public static readonly double[][] BurstTimes = [[0.1, 0.6, 1.1], [0.35, 0.85]];

    /// <summary>Length of <see cref="Bursts"/> in seconds.</summary>
    public const double BurstSeconds = 1.5;

    /// <summary>
    /// Two channels of plucked tones over a quiet chord: sudden enough to tell a shift of one sample, rich enough to make an encoder use
    /// short and long blocks, and different on the two sides.
    /// </summary>
    public static float[][] Bursts(int rate) =>
    [
        .. Enumerable.Range(0, 2).Select(side =>
        {
            float[] samples = new float[(int)(rate * BurstSeconds)];
            for (int i = 0; i < samples.Length; i++)
            {
                double t = (double)i / rate;
                double value = 0.05 * (Math.Sin(2 * Math.PI * 220 * t) + Math.Sin(2 * Math.PI * (side == 0 ? 277.2 : 329.6) * t));
                foreach (double start in BurstTimes[side])
                {
                    double since = t - start;
                    if (since >= 0)
                    {
                        value += 0.5 * Math.Exp(-since * 18) * Math.Sin((2 * Math.PI * (side == 0 ? 660 : 990) * since) + 1.3);
                    }
                }

                samples[i] = (float)value;
            }

            return samples;
        }),
    ];

    /// <summary>
    /// Whole numbers of so many bits that no rule of a decoder fits by chance: loud, quiet, the ends of the scale (not in 32 bits, where
    /// RFC 9639 allows no jump from one end to the other).
    /// </summary>
    public static int[] Numbers(int count, int bits, int seed)
    {
        Random random = new(seed);
        long most = 1L << (bits - 1);
        int[] numbers = new int[count];
        double place = 0;
        for (int i = 0; i < count; i++)
        {
            place += random.NextDouble() - 0.5;
            double value = (0.6 * Math.Sin(i * 0.07)) + (0.1 * Math.Sin(place));
            numbers[i] = (i % 97) switch
            {
                13 when bits < 32 => (int)(most - 1),
                14 when bits < 32 => (int)-most,
                _ => (int)(value * (most - 1)),
            };
        }

        return numbers;
    }

    /// <summary>The mean of some channels.</summary>
    public static float[] Mean(IReadOnlyList<float[]> channels)
        => [.. Enumerable.Range(0, channels[0].Length).Select(i => (float)(channels.Sum(c => (double)c[i]) / channels.Count))];

    /// <summary>The mean of channels of whole numbers, full scale at 1.</summary>
    public static float[] Mean(IReadOnlyList<int[]> channels, int bits)
        => [.. Enumerable.Range(0, channels[0].Length).Select(i => (float)(channels.Sum(c => (long)c[i]) / (double)(1L << (bits - 1)) / channels.Count))];

    /// <summary>How loud the difference of two sounds is against the second, in decibels; -300 for none at all.</summary>
    /// <param name="heard">A sound.</param>
    /// <param name="expected">What it should be.</param>
    /// <param name="lag">Samples by which the first is later.</param>
    public static double Difference(ReadOnlySpan<float> heard, ReadOnlySpan<float> expected, int lag)
    {
        double wrong = 0;
        double all = 1e-30;
        for (int i = Math.Max(0, -lag); i < expected.Length && i + lag < heard.Length; i++)
        {
            double off = heard[i + lag] - (double)expected[i];
            wrong += off * off;
            all += expected[i] * (double)expected[i];
        }

        return Math.Max(-300, 10 * Math.Log10((wrong / all) + 1e-30));
    }

    /// <summary>Samples by which the first sound is later than the second, by the smallest difference; looked for in the first half second.</summary>
    public static int Lag(float[] heard, float[] expected, int most)
    {
        // the tones are long against eight samples: first roughly, then to the sample
        float[] part = expected[..Math.Min(expected.Length, 22_000)];
        int rough = Enumerable.Range(-most / 8, (2 * (most / 8)) + 1).Select(k => 8 * k).MinBy(lag => Difference(heard, part, lag));
        return Enumerable.Range(rough - 8, 17).MinBy(lag => Difference(heard, part, lag));
    }

    /// <summary>One of the files beside the tests.</summary>
    public static string Fixture(string name) => Path.Combine(House.Repository.Root, "tests", "Tests", "Audio", "Fixtures", name);
}
