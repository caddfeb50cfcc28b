namespace Scuff.Audio.Songs;

/// <summary>
/// Chance that falls the same on every machine: SplitMix64 (Steele, Lea and Flood 2014) begun from words. A fork depends on its
/// name alone and not on what was rolled before, so that one more roll in one place changes nothing in another.
/// </summary>
internal sealed class Dice
{
    private readonly string _name;
    private ulong _state;

    public Dice(string name)
    {
        _name = name;

        // FNV-1a
        ulong hash = 14695981039346656037;
        foreach (char letter in name)
        {
            hash = unchecked((hash ^ letter) * 1099511628211);
        }

        _state = hash;
    }

    public Dice Fork(string name) => new($"{_name}/{name}");

    /// <summary>From 0 up to and without 1.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    public double Between(double low, double high) => low + ((high - low) * Unit());

    /// <summary>From 0 up to and without the limit.</summary>
    public int Below(int limit) => (int)(Unit() * limit);

    public bool Chance(double share) => Unit() < share;

    public T Pick<T>(params ReadOnlySpan<T> choices) => choices[Below(choices.Length)];

    /// <summary>About normal with mean 0 and deviation 1, never beyond 3 (the sum of twelve evens needs no logarithm).</summary>
    public double Bell()
    {
        double sum = -6;
        for (int i = 0; i < 12; i++)
        {
            sum += Unit();
        }

        return Math.Clamp(sum, -3, 3);
    }

    private ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            ulong z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
