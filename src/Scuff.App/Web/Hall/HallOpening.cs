namespace Scuff.App.Web.Hall;

/// <summary>The hall from its opening to its shutting: its code, its guests, its listener.</summary>
internal sealed class HallOpening : IAsyncDisposable
{
    private readonly CancellationTokenSource _ended = new();

    /// <summary>Makes one; nothing listens yet.</summary>
    /// <param name="clock">The time.</param>
    public HallOpening(TimeProvider clock)
    {
        Pairing = new HallPairing(clock);
        Guests = new HallGuests(clock);
        Ended = _ended.Token;
    }

    /// <summary>The code.</summary>
    public HallPairing Pairing { get; }

    /// <summary>Who was let in.</summary>
    public HallGuests Guests { get; }

    /// <summary>What listens; null until it does.</summary>
    public HallListener? Listener { get; set; }

    /// <summary>Says that the hall was shut.</summary>
    public CancellationToken Ended { get; }

    /// <summary>Lets nobody in any more, guest or not.</summary>
    public Task End() => _ended.CancelAsync();

    /// <summary>Stops listening.</summary>
    public async ValueTask DisposeAsync()
    {
        await End().ConfigureAwait(false);
        if (Listener is { } listener)
        {
            await listener.DisposeAsync().ConfigureAwait(false);
        }

        _ended.Dispose();
    }
}
