namespace Tests.Repertoire;

/// <summary>A clock that stands until it is told to go on. Its timers are real ones.</summary>
internal sealed class SlowClock : TimeProvider
{
    private DateTimeOffset _now = new(2026, 3, 2, 18, 30, 0, TimeSpan.Zero);

    /// <summary>The days of the place are those of the clock.</summary>
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    /// <summary>Goes on.</summary>
    public void GoOn(TimeSpan time) => _now += time;

    public override DateTimeOffset GetUtcNow() => _now;
}
