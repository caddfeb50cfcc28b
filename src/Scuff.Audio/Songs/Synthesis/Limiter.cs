namespace Scuff.Audio.Songs.Synthesis;

/// <summary>Holds both channels below a ceiling by turning down before the peak and up again after it, never by cutting.</summary>
internal static class Limiter
{
    private const int Block = 32;

    public static void Apply(float[] left, float[] right, float ceiling, int rate)
    {
        int blocks = (left.Length + Block - 1) / Block;
        float[] gains = new float[blocks + 1];
        for (int b = 0; b < blocks; b++)
        {
            float peak = 0;
            for (int i = b * Block; i < Math.Min(left.Length, (b + 1) * Block); i++)
            {
                peak = Math.Max(peak, Math.Max(Math.Abs(left[i]), Math.Abs(right[i])));
            }

            gains[b] = peak > ceiling ? ceiling / peak : 1;
        }

        gains[blocks] = 1;

        // between two points the gain runs straight: both ends of a block must suit its peak
        float[] points = new float[blocks + 1];
        for (int b = 0; b <= blocks; b++)
        {
            points[b] = Math.Min(b == 0 ? 1 : gains[b - 1], gains[b]);
        }

        float release = (float)(Block / (0.12 * rate));
        float attack = (float)(Block / (0.003 * rate));
        for (int b = 1; b <= blocks; b++)
        {
            points[b] = Math.Min(points[b], points[b - 1] + (release * (1 - points[b - 1])));
        }

        for (int b = blocks - 1; b >= 0; b--)
        {
            points[b] = Math.Min(points[b], points[b + 1] + attack);
        }

        for (int b = 0; b < blocks; b++)
        {
            int from = b * Block;
            float step = (points[b + 1] - points[b]) / Block;
            float gain = points[b];
            for (int i = from; i < Math.Min(left.Length, from + Block); i++)
            {
                left[i] *= gain;
                right[i] *= gain;
                gain += step;
            }
        }
    }
}
