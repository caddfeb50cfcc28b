namespace Scuff.Repertoire.Storage;

/// <summary>
/// Which versions that nobody named go with age. Of the last day all stay; of the week before, the last of every hour; of the twelve weeks before
/// that, the last of every day; of what is older, the last of every week. An hour lies in one day and a day in one week, so what once stayed as the
/// last of its week had stayed as the last of its day and of its hour: nothing depends on how often this is done.
/// </summary>
internal static class Thinning
{
    /// <summary>Until this age all stay.</summary>
    public static readonly TimeSpan All = TimeSpan.FromDays(1);

    /// <summary>Until this age the last of every hour stays.</summary>
    public static readonly TimeSpan Hourly = TimeSpan.FromDays(8);

    /// <summary>Until this age the last of every day stays; after it the last of every week.</summary>
    public static readonly TimeSpan Daily = TimeSpan.FromDays(92);

    // 1970 began on a Thursday; a week begins on Monday
    private static readonly TimeSpan ToMonday = TimeSpan.FromDays(3);

    /// <summary>The versions that go.</summary>
    /// <param name="versions">Unnamed versions of one dance.</param>
    /// <param name="timeOf">When each was saved.</param>
    /// <param name="now">The time.</param>
    public static IEnumerable<T> Spent<T>(IEnumerable<T> versions, Func<T, DateTimeOffset> timeOf, DateTimeOffset now) => versions
        .Where(v => now - timeOf(v) > All)
        .GroupBy(v => StretchOf(timeOf(v), now))
        .SelectMany(stretch => stretch.OrderByDescending(timeOf).Skip(1));

    private static (long Width, long Place) StretchOf(DateTimeOffset time, DateTimeOffset now)
    {
        TimeSpan since = time - DateTimeOffset.UnixEpoch;
        return (now - time) switch
        {
            var age when age <= Hourly => (TimeSpan.TicksPerHour, since.Ticks / TimeSpan.TicksPerHour),
            var age when age <= Daily => (TimeSpan.TicksPerDay, since.Ticks / TimeSpan.TicksPerDay),
            _ => (7 * TimeSpan.TicksPerDay, (since + ToMonday).Ticks / (7 * TimeSpan.TicksPerDay)),
        };
    }
}
