using Scuff.Analysis.Fit;

namespace Scuff.Analysis.Calls;

/// <summary>
/// When each danced count falls, in seconds: at an even pace, or as a track has it. Between two known places it goes evenly; before the first and
/// after the last it goes on at the pace next to it.
/// </summary>
public sealed class CountClock
{
    private const double SecondsPerMinute = 60;
    private readonly double[] _counts;
    private readonly double[] _seconds;

    private CountClock(double[] counts, double[] seconds) => (_counts, _seconds) = (counts, seconds);

    /// <summary>Counts a minute between the first and the last known place.</summary>
    public double CountsPerMinute => (_counts[^1] - _counts[0]) / (_seconds[^1] - _seconds[0]) * SecondsPerMinute;

    /// <summary>A clock that goes evenly.</summary>
    /// <param name="countsPerMinute">Its pace.</param>
    /// <param name="secondsOfFirst">When count 0 falls.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pace is not above zero.</exception>
    public static CountClock Even(double countsPerMinute, double secondsOfFirst = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(countsPerMinute);
        return new CountClock([0, 1], [secondsOfFirst, secondsOfFirst + (SecondsPerMinute / countsPerMinute)]);
    }

    /// <summary>A clock that follows a track: see <see cref="CountedMusic.Performed"/>.</summary>
    /// <param name="times">Counts with their seconds, both rising.</param>
    /// <exception cref="ArgumentException">There are fewer than two, or one does not rise.</exception>
    public static CountClock Of(ValueList<CountTime> times)
    {
        if (times.Count < 2)
        {
            throw new ArgumentException("Two places at least.", nameof(times));
        }

        for (int i = 1; i < times.Count; i++)
        {
            if (!(times[i].Count > times[i - 1].Count && times[i].Seconds > times[i - 1].Seconds))
            {
                throw new ArgumentException("Both must rise.", nameof(times));
            }
        }

        return new CountClock([.. times.Select(t => t.Count)], [.. times.Select(t => t.Seconds)]);
    }

    /// <summary>The same clock for practice: everything slower or faster by one factor, counted from the beginning of the sound.</summary>
    /// <param name="speed">1 as it is, 0.8 slower by a fifth.</param>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not above zero.</exception>
    public CountClock AtSpeed(double speed)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(speed);
        return new CountClock(_counts, [.. _seconds.Select(s => s / speed)]);
    }

    /// <summary>When a count falls, in seconds.</summary>
    public double SecondsAt(double count) => Between(_counts, _seconds, count);

    /// <summary>The count at a moment.</summary>
    public double CountAt(double seconds) => Between(_seconds, _counts, seconds);

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
