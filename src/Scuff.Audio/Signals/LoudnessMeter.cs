using Scuff.Music;

namespace Scuff.Audio.Signals;

/// <summary>How loud a piece of sound is along its time.</summary>
internal static class LoudnessMeter
{
    /// <summary>Values a second.</summary>
    public const int PerSecond = 20;

    /// <summary>The lowest value, in decibels.</summary>
    public const float Floor = -96;

    // The music lasts as long as it is within this of its loudest moment: a quiet intro is music, tape noise is not.
    private const float Quietest = 48;

    /// <summary>The root mean square of each twentieth of a second, in decibels against full scale.</summary>
    public static LoudnessCurve Of(MonoAudio audio)
    {
        int block = audio.Rate / PerSecond;
        int blocks = (audio.Samples.Length + block - 1) / block;
        float[] decibels = new float[blocks];
        for (int b = 0; b < blocks; b++)
        {
            ReadOnlySpan<float> samples = audio.Samples.AsSpan(b * block, Math.Min(block, audio.Samples.Length - (b * block)));
            double sum = 0;
            foreach (float s in samples)
            {
                sum += (double)s * s;
            }

            decibels[b] = (float)Math.Max(Floor, 10 * Math.Log10(Math.Max(sum / samples.Length, 1e-12)));
        }

        return new LoudnessCurve((double)audio.Rate / block, [.. decibels]);
    }

    /// <summary>When the music begins and ends, in seconds; nothing between them where all is silent.</summary>
    public static (double First, double Last) Sounding(LoudnessCurve loudness)
    {
        ReadOnlySpan<float> decibels = loudness.Decibels.Span;
        float top = Floor;
        foreach (float d in decibels)
        {
            top = Math.Max(top, d);
        }

        int first = 0;
        int last = decibels.Length - 1;
        float least = Math.Max(top - Quietest, Floor + 1);
        while (first <= last && decibels[first] < least)
        {
            first++;
        }

        while (last > first && decibels[last] < least)
        {
            last--;
        }

        return first > last ? (0, 0) : (first / loudness.PerSecond, (last + 1) / loudness.PerSecond);
    }
}
