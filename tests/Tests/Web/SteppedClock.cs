namespace Tests.Web;

/// <summary>A clock that goes only when it is told to.</summary>
internal sealed class SteppedClock : TimeProvider
{
    private DateTimeOffset _now = new(2026, 11, 28, 19, 0, 0, TimeSpan.Zero);

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public void Advance(TimeSpan time) => _now += time;

    public override DateTimeOffset GetUtcNow() => _now;

    public override long GetTimestamp() => _now.UtcTicks;
}
