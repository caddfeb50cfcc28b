namespace Scuff.Audio.Songs.Synthesis;

/// <summary>One cycle of each wave, without harmonics that the rate cannot carry, made when first asked for.</summary>
internal sealed class WaveTables(int rate)
{
    public const int Size = 2048;

    private static readonly float[] Sine = [.. Enumerable.Range(0, Size).Select(i => (float)Math.Sin(2 * Math.PI * i / Size))];

    private readonly Dictionary<(string Name, int Pitch), float[]> _tables = [];

    /// <summary>A wave of the given harmonics, with one sample more at its end than <see cref="Size"/>.</summary>
    public float[] Of(string name, int pitch, double frequency, Func<int, double, double> harmonic)
    {
        if (_tables.TryGetValue((name, pitch), out float[]? table))
        {
            return table;
        }

        table = new float[Size + 1];
        for (int n = 1; n * frequency < 0.42 * rate && n <= 96; n++)
        {
            float level = (float)harmonic(n, n * frequency);
            if (Math.Abs(level) < 1e-4)
            {
                continue;
            }

            // phases spread out, or the peaks of all harmonics would fall together
            int phase = n * n * 37 % Size;
            for (int i = 0; i < Size; i++)
            {
                table[i] += level * Sine[((n * i) + phase) & (Size - 1)];
            }
        }

        double energy = 0;
        for (int i = 0; i < Size; i++)
        {
            energy += table[i] * table[i];
        }

        float gain = (float)(0.35 / Math.Sqrt((energy / Size) + 1e-12));
        for (int i = 0; i < Size; i++)
        {
            table[i] *= gain;
        }

        table[Size] = table[0];
        _tables.Add((name, pitch), table);
        return table;
    }
}
