using Microsoft.AspNetCore.Http;

namespace Scuff.App.Web.Hall;

/// <summary>Whether the studio is open to devices in the hall's network. It is shut until she opens it. Safe to share between threads.</summary>
/// <param name="studio">Whose door it is.</param>
internal sealed class HallDoor(Studio studio) : IAsyncDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);
    private volatile HallOpening? _opening;

    /// <summary>Where it opens.</summary>
    public HallPlace Place { get; set; } = HallPlace.Around;

    /// <summary>What answers those who were let in; set by the server when it starts.</summary>
    public RequestDelegate? Answer { get; set; }

    /// <summary>What is shown in the hall.</summary>
    public HallSession Session { get; } = new(studio.Clock);

    /// <summary>The present opening; null while it is shut.</summary>
    public HallOpening? Opening => _opening;

    /// <summary>Opens it with a code, or makes another code while it is open.</summary>
    /// <param name="circle">Whom the code lets in.</param>
    /// <exception cref="RefusalException">There is no network, or no port is free.</exception>
    public async Task<HallOpening> Open(HallCircle circle)
    {
        await _turn.WaitAsync().ConfigureAwait(false);
        try
        {
            if (_opening is not { } opening)
            {
                opening = new HallOpening(studio.Clock);
                RequestDelegate answer = Answer ?? throw new InvalidOperationException("The server has not started.");
                opening.Listener = await HallListener.Start(studio, opening, Place, answer).ConfigureAwait(false);
                _opening = opening;
            }

            opening.Pairing.MakeCode(circle);
            return opening;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Shuts it. Nothing listens when this is done.</summary>
    public async Task Shut()
    {
        await _turn.WaitAsync().ConfigureAwait(false);
        try
        {
            if (_opening is { } opening)
            {
                _opening = null;
                await opening.End().ConfigureAwait(false);
                Session.Shut();
                await opening.DisposeAsync().ConfigureAwait(false);
            }
        }
        finally
        {
            _turn.Release();
        }
    }

    public async ValueTask DisposeAsync()
    {
        Session.Shut();
        await Shut().ConfigureAwait(false);
        _turn.Dispose();
    }
}
