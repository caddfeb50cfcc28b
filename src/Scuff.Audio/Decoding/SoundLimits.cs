namespace Scuff.Audio.Decoding;

/// <summary>What a head may claim before it is taken for damage, and how long a track may be. Ours.</summary>
internal static class SoundLimits
{
    /// <summary>The longest track in seconds; longer ones are mixes or recordings of evenings, and their samples would fill the memory.</summary>
    public const double LongestSeconds = 3600;

    /// <summary>The slowest rate, well below a telephone's 8,000.</summary>
    public const int SlowestRate = 2_000;

    /// <summary>The fastest rate, four times that of a studio.</summary>
    public const int FastestRate = 768_000;

    /// <summary>The most channels.</summary>
    public const int MostChannels = 64;

    /// <summary>Refuses a head that claims what cannot be.</summary>
    public static void CheckHead(string format, long rate, int channels)
    {
        if (rate is < SlowestRate or > FastestRate)
        {
            throw new AudioException(FormattableString.Invariant(
                $"The head of this {format} file says {rate} samples a second, which no music has; the file is damaged."));
        }

        if (channels is < 1 or > MostChannels)
        {
            throw new AudioException(FormattableString.Invariant($"The head of this {format} file says {channels} channels; Scuff hears 1 to {MostChannels}."));
        }
    }

    /// <summary>Refuses a track that is longer than Scuff hears.</summary>
    public static void CheckLength(double seconds)
    {
        if (seconds > LongestSeconds)
        {
            throw new AudioException(FormattableString.Invariant(
                $"This track lasts {Math.Ceiling(seconds / 60):F0} minutes; Scuff hears tracks of up to {LongestSeconds / 60:F0} minutes. Cut out the part you dance to."));
        }
    }
}
