using System.Diagnostics;
using System.Globalization;

namespace Bench;

/// <summary>
/// The processor time of the thread that asks, so that songs heard side by side are timed each for itself: Linux tells it in
/// <c>/proc/thread-self/schedstat</c> (nanoseconds, its first number). Elsewhere it is the time of the clock, which is more when cores are shared.
/// </summary>
internal static class ThreadClock
{
    private const string Told = "/proc/thread-self/schedstat";

    private static readonly bool IsTold = File.Exists(Told);

    /// <summary>Seconds since some moment; only differences mean something.</summary>
    public static double Seconds() => IsTold
        ? long.Parse(File.ReadAllText(Told).Split(' ')[0], CultureInfo.InvariantCulture) / 1e9
        : (double)Stopwatch.GetTimestamp() / Stopwatch.Frequency;
}
