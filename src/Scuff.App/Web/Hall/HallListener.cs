using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;

namespace Scuff.App.Web.Hall;

/// <summary>What listens in the hall's network: a second door to the same routes, with rules of its own.</summary>
internal sealed class HallListener : IAsyncDisposable
{
    /// <summary>The cookie that a device is known by.</summary>
    public const string Cookie = "scuff-hall";

    // somebody else's program may have the first
    private const int PortsTried = 10;

    // what a tablet is just keeping gets through before the door is shut
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(0.5);

    private readonly WebApplication _app;
    private readonly TimeProvider _clock;

    private HallListener(WebApplication app, TimeProvider clock, IReadOnlyList<HallAddress> addresses, int port)
    {
        _app = app;
        _clock = clock;
        Addresses = addresses;
        Port = port;
    }

    /// <summary>Where it listens.</summary>
    public IReadOnlyList<HallAddress> Addresses { get; }

    /// <summary>The port, the same at every address.</summary>
    public int Port { get; }

    /// <summary>Starts to listen.</summary>
    /// <param name="studio">Whose hall it is.</param>
    /// <param name="opening">The opening it is for.</param>
    /// <param name="place">Where.</param>
    /// <param name="answer">What answers those who pass this door.</param>
    /// <exception cref="RefusalException">There is no network, or no port is free.</exception>
    public static async Task<HallListener> Start(Studio studio, HallOpening opening, HallPlace place, RequestDelegate answer)
    {
        IReadOnlyList<HallAddress> addresses = place.Addresses();
        if (addresses.Count == 0)
        {
            throw new RefusalException(
                StatusCodes.Status409Conflict,
                "This machine is in no private network right now. Join the hall's Wi-Fi, or let this machine or a phone make one, "
                    + "and open the hall again.");
        }

        int[] ports = place.Port == 0 ? [0] : [.. Enumerable.Range(place.Port, PortsTried)];
        foreach (int port in ports)
        {
            try
            {
                return await Start(studio, opening, addresses, port, answer).ConfigureAwait(false);
            }
            catch (IOException)
            {
                // taken; the next one then
            }
        }

        throw new RefusalException(
            StatusCodes.Status409Conflict,
            $"Ports {ports[0]} to {ports[^1]} are taken by other programs on this machine. Shut one of them and open the hall again.");
    }

    public async ValueTask DisposeAsync()
    {
        using (CancellationTokenSource late = new(Grace, _clock))
        {
            await _app.StopAsync(late.Token).ConfigureAwait(false);
        }

        await _app.DisposeAsync().ConfigureAwait(false);
    }

    private static async Task<HallListener> Start(
        Studio studio,
        HallOpening opening,
        IReadOnlyList<HallAddress> addresses,
        int port,
        RequestDelegate answer)
    {
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(
            new WebApplicationOptions { ApplicationName = "Scuff.App", ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = StudioServer.LargestQuestion;

            // its own, so that a crowd in the hall never shuts her own page out
            kestrel.Limits.MaxConcurrentConnections = 400;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
            foreach (HallAddress address in addresses)
            {
                kestrel.Listen(address.Address, port, listen => listen.Protocols = HttpProtocols.Http1);
            }
        });
        WebApplication app = builder.Build();
        int bound = port;
        HouseRules rules = new(host => host.Port == bound
            && IPAddress.TryParse(host.Host, out IPAddress? named)
            && addresses.Any(a => a.Address.Equals(named)));
        app.Run(context => StudioServer.Guarded(rules, studio, context, guarded => Pass(opening, guarded, answer)));
        try
        {
            await app.StartAsync().ConfigureAwait(false);
        }
        catch
        {
            await app.DisposeAsync().ConfigureAwait(false);
            throw;
        }

        bound = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First()).Port;
        return new HallListener(app, studio.Clock, addresses, bound);
    }

    private static Task Pass(HallOpening opening, HttpContext context, RequestDelegate answer)
    {
        // a router that lets the world in is not asked
        IPAddress from = context.Connection.RemoteIpAddress ?? IPAddress.None;
        if (opening.Ended.IsCancellationRequested || !HallPlace.IsPrivate(from))
        {
            return Exchange.Refuse(context, StatusCodes.Status403Forbidden, "The hall is shut.");
        }

        context.Features.Set(new HallVisitor(opening, opening.Guests.Find(context.Request.Cookies[Cookie]), from));
        return answer(context);
    }
}
