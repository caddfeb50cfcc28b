namespace Scuff.Audio.Stretching;

/// <summary>
/// When each moment of a sound is played: at an even speed, or by places that rise together. Between two places it goes evenly; before the first and
/// after the last it goes on at the pace next to it.
/// </summary>
public sealed class TimeMap
{
    /// <summary>The slowest pace between two places: a quarter of the speed. Slower, music falls apart into echoes.</summary>
    public const double Slowest = 0.25;

    /// <summary>The fastest pace between two places: four times the speed.</summary>
    public const double Fastest = 4;

    private readonly double[] _source;
    private readonly double[] _played;

    private TimeMap(double[] source, double[] played) => (_source, _played) = (source, played);

    /// <summary>Whether the sound is played as it is, from its beginning.</summary>
    public bool IsPlain => _source[0] == _played[0] && Array.TrueForAll([.. Enumerable.Range(1, _source.Length - 1)], i => _source[i] == _played[i]);

    /// <summary>Everything slower or faster by one factor.</summary>
    /// <param name="speed">1 as it is, 0.8 slower by a fifth; <see cref="Slowest"/> to <see cref="Fastest"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The speed is out of its range.</exception>
    public static TimeMap AtSpeed(double speed)
    {
        Check(speed, nameof(speed));
        return new TimeMap([0, speed], [0, 1]);
    }

    /// <summary>Places that rise together.</summary>
    /// <exception cref="ArgumentException">There are fewer than two, one does not rise, or the pace between two is out of its range.</exception>
    public static TimeMap Of(ValueList<TimePlace> places)
    {
        if (places.Count < 2)
        {
            throw new ArgumentException("Two places at least.", nameof(places));
        }

        for (int i = 1; i < places.Count; i++)
        {
            double source = places[i].Source - places[i - 1].Source;
            double played = places[i].Played - places[i - 1].Played;
            if (!(source > 0 && played > 0))
            {
                throw new ArgumentException("Both must rise.", nameof(places));
            }

            Check(source / played, nameof(places));
        }

        return new TimeMap([.. places.Select(p => p.Source)], [.. places.Select(p => p.Played)]);
    }

    /// <summary>When a moment of the sound is played, in seconds.</summary>
    public double PlayedAt(double source) => Between(_source, _played, source);

    /// <summary>What moment of the sound is played at a time, in seconds.</summary>
    public double SourceAt(double played) => Between(_played, _source, played);

    private static void Check(double speed, string name)
    {
        if (!(speed is >= Slowest and <= Fastest))
        {
            throw new ArgumentOutOfRangeException(name, speed, "A pace lies from a quarter of the speed to four times it.");
        }
    }

    private static double Between(double[] from, double[] to, double value)
    {
        int found = Array.BinarySearch(from, value);
        if (found >= 0)
        {
            return to[found];
        }

        int after = Math.Clamp(~found, 1, from.Length - 1);
        double share = (value - from[after - 1]) / (from[after] - from[after - 1]);
        return to[after - 1] + (share * (to[after] - to[after - 1]));
    }
}
