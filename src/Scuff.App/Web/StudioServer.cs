using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Scuff.App.Web.Hall;
using Scuff.Repertoire;

namespace Scuff.App.Web;

/// <summary>The local server behind the page. It listens on this machine only.</summary>
internal sealed class StudioServer : IAsyncDisposable
{
    /// <summary>Most bytes of a question: a text of a thousand dances. Files have a limit of their own.</summary>
    public const long LargestQuestion = 4 * 1024 * 1024;

    // What is being kept gets through; open pages listen to news without end, and Ctrl+C is not to wait for them.
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(0.5);

    private readonly WebApplication _app;
    private readonly Studio _studio;

    private StudioServer(WebApplication app, Studio studio) => (_app, _studio) = (app, studio);

    /// <summary>Its address, once it runs: <c>http://127.0.0.1:7310</c>.</summary>
    public Uri Address { get; private set; } = new("http://127.0.0.1");

    /// <summary>Starts it.</summary>
    /// <param name="studio">What it answers from; not disposed with it.</param>
    /// <param name="port">The port; 0 for any that is free.</param>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task<StudioServer> Start(Studio studio, int port)
    {
        // nothing is taken from files or variables: what it listens on is decided here
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ApplicationName = "Scuff.App", ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestQuestion;
            kestrel.Limits.MaxConcurrentConnections = 400;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
            kestrel.Listen(IPAddress.Loopback, port, listen => listen.Protocols = HttpProtocols.Http1);
        });
        builder.Services.AddRoutingCore();
        WebApplication app = builder.Build();
        StudioServer server = new(app, studio);
        server.Build(studio);
        await app.StartAsync().ConfigureAwait(false);
        server.Address = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        return server;
    }

    /// <summary>All that can be asked.</summary>
    internal IEnumerable<RouteEndpoint> Routes => ((IEndpointRouteBuilder)_app).DataSources.SelectMany(s => s.Endpoints).OfType<RouteEndpoint>();

    public async ValueTask DisposeAsync()
    {
        // first those who only listen: they would be waited for
        await _studio.Hall.DisposeAsync().ConfigureAwait(false);
        using (CancellationTokenSource late = new(Grace, _studio.Clock))
        {
            await _app.StopAsync(late.Token).ConfigureAwait(false);
        }

        await _app.DisposeAsync().ConfigureAwait(false);
    }

    private void Build(Studio studio)
    {
        HouseRules rules = new(host => HouseRules.IsThisMachine(host, Address.Port));
        _app.Use(next =>
        {
            // the hall's door leads to the same routes
            studio.Hall.Answer = next;
            return context => Guarded(rules, studio, context, next);
        });
        _app.UseRouting();
        _app.Use(next => context => HallGate.Pass(context, next));
        foreach (IRouteGroup group in FindGroups())
        {
            group.Map(_app, studio);
        }

        _app.UseEndpoints(_ => { });
        _app.Run(context => PageFiles.Answer(context, () => FirstDance(studio)));
    }

    // What goes wrong here goes wrong again, with words, when the page asks.
    private static string? FirstDance(Studio studio)
    {
        try
        {
            return studio.LastDance()?.Id;
        }
        catch (ClubTrouble)
        {
            return null;
        }
    }

    private static IEnumerable<IRouteGroup> FindGroups() => typeof(StudioServer).Assembly.GetTypes()
        .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(IRouteGroup)))
        .OrderBy(t => t.FullName, StringComparer.Ordinal)
        .Select(t => (IRouteGroup)Activator.CreateInstance(t)!);

    /// <summary>One place for all that can go wrong: no answer leaves without its headers, none with the inside of the program.</summary>
    internal static async Task Guarded(HouseRules rules, Studio studio, HttpContext context, RequestDelegate next)
    {
        HouseRules.Mark(context.Response);
        try
        {
            if (rules.Refusal(context) is { } refusal)
            {
                await Exchange.Refuse(context, StatusCodes.Status403Forbidden, refusal).ConfigureAwait(false);
                return;
            }

            await next(context).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // the page did not wait for the answer
        }
        catch (RefusalException refusal) when (!context.Response.HasStarted)
        {
            await Exchange.Refuse(context, refusal.Status, refusal.Message).ConfigureAwait(false);
        }
        catch (ClubTrouble trouble) when (!context.Response.HasStarted)
        {
            int status = trouble.Kind switch
            {
                ClubTroubleKind.NotFound => StatusCodes.Status404NotFound,
                ClubTroubleKind.Impossible => StatusCodes.Status400BadRequest,
                ClubTroubleKind.NoAudio => StatusCodes.Status409Conflict,
                _ => StatusCodes.Status503ServiceUnavailable,
            };
            await Exchange.Refuse(context, status, trouble.Message).ConfigureAwait(false);
        }
        catch (Microsoft.AspNetCore.Http.BadHttpRequestException trouble) when (!context.Response.HasStarted)
        {
            string sentence = trouble.StatusCode == StatusCodes.Status413PayloadTooLarge
                ? "This is too large for Scuff to take."
                : "This question did not arrive whole. Try again.";
            await Exchange.Refuse(context, trouble.StatusCode, sentence).ConfigureAwait(false);
        }
        catch (Exception trouble) when (!context.Response.HasStarted && trouble is not OutOfMemoryException)
        {
            studio.TellTrouble(context.Request.Path, trouble);
            string sentence = trouble is IOException or UnauthorizedAccessException
                ? $"This could not be read or written: {trouble.Message}"
                : "Something went wrong in Scuff itself. Your text is safe; try again, and if it stays, start Scuff again.";
            await Exchange.Refuse(context, StatusCodes.Status500InternalServerError, sentence).ConfigureAwait(false);
        }
    }
}
