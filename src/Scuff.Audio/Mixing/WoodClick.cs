namespace Scuff.Audio.Mixing;

/// <summary>A struck bar of wood, the same as the click of the studio (<c>web/src/lib/clicks.ts</c>).</summary>
internal static class WoodClick
{
    /// <summary>Lowest partial of the one, in hertz.</summary>
    public const double LowHertz = 620;

    /// <summary>Lowest partial of the other counts, in hertz.</summary>
    public const double HighHertz = 1040;

    private const double Seconds = 0.14;
    private const double FadeSeconds = 0.02;
    private const double StrikeSeconds = 0.0025;
    private const double StrikeLevel = 0.5;
    private const double Peak = 0.85;

    // partials of a bar with free ends, as multiples of the lowest, each dying away faster than the one below; by ear
    private static readonly (double Ratio, double Level, double Decay)[] Partials = [(1, 1, 0.026), (2.76, 0.42, 0.011), (5.4, 0.16, 0.005)];

    /// <summary>The samples of a click.</summary>
    /// <param name="rate">Samples a second.</param>
    /// <param name="hertz">Lowest partial.</param>
    public static float[] Of(int rate, double hertz)
    {
        float[] samples = new float[(int)Math.Ceiling(Seconds * rate)];

        // always the same noise, so that no click sounds unlike another
        long seed = 9;
        float peak = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double t = (double)i / rate;
            double value = 0;
            foreach ((double ratio, double level, double decay) in Partials)
            {
                value += level * Math.Exp(-t / decay) * Math.Sin(2 * Math.PI * hertz * ratio * t);
            }

            seed = seed * 16807 % 2147483647;
            value += StrikeLevel * Math.Exp(-t / StrikeSeconds) * ((seed / 1073741823.5) - 1);
            value *= Math.Min(1, (Seconds - t) / FadeSeconds);
            samples[i] = (float)value;
            peak = Math.Max(peak, Math.Abs(samples[i]));
        }

        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = (float)(samples[i] * Peak / peak);
        }

        return samples;
    }
}
