using Scuff.Audio.Signals;

namespace Tests.Audio;

/// <summary>Sounds whose beats are known because they were put there.</summary>
internal static class MadeSounds
{
    /// <summary>Bursts of 8 ms at the given times, the first of every four a little higher, over silence.</summary>
    public static MonoAudio Clicks(IReadOnlyList<double> seconds, double length, double strength = 0.5)
    {
        float[] samples = new float[(int)(length * Hearing.Rate)];
        for (int i = 0; i < seconds.Count; i++)
        {
            int from = (int)Math.Round(seconds[i] * Hearing.Rate);
            double hertz = i % 4 == 0 ? 1800 : 1200;
            for (int k = 0; k < Hearing.Rate * 8 / 1000 && from + k < samples.Length; k++)
            {
                samples[from + k] += (float)(strength * Math.Exp(-k / 40.0) * Math.Cos(2 * Math.PI * hertz * k / Hearing.Rate));
            }
        }

        return new MonoAudio(samples, Hearing.Rate);
    }

    /// <summary>White noise, the same for the same seed.</summary>
    public static MonoAudio Noise(double length, double strength, int seed)
    {
        Random random = new(seed);
        IEnumerable<int> places = Enumerable.Range(0, (int)(length * Hearing.Rate));
        return new MonoAudio([.. places.Select(_ => (float)(strength * ((2 * random.NextDouble()) - 1)))], Hearing.Rate);
    }

    /// <summary>A steady tone.</summary>
    public static MonoAudio Tone(double length, double hertz, double strength)
    {
        IEnumerable<int> places = Enumerable.Range(0, (int)(length * Hearing.Rate));
        return new MonoAudio([.. places.Select(i => (float)(strength * Math.Sin(2 * Math.PI * hertz * i / Hearing.Rate)))], Hearing.Rate);
    }
}
