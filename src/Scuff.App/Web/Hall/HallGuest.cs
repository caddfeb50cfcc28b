namespace Scuff.App.Web.Hall;

/// <summary>A device that was let in.</summary>
/// <param name="circle">What it may do.</param>
internal sealed class HallGuest(HallCircle circle)
{
    private long _seen;

    /// <summary>What it may do.</summary>
    public HallCircle Circle { get; } = circle;

    /// <summary>When it last asked something, in ticks of universal time.</summary>
    public long Seen
    {
        get => Interlocked.Read(ref _seen);
        set => Interlocked.Exchange(ref _seen, value);
    }
}
