using System.Text.Json;
using System.Threading.Channels;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.App.Web.Contract;
using Scuff.Repertoire;

namespace Scuff.App.Web.Routes;

/// <summary>Tells open pages what changes in the club, as it happens (server-sent events; source: the HTML standard, 9.2).</summary>
internal sealed class NewsRoutes : IRouteGroup
{
    // A line now and then shows both sides that the other is there.
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(20);

    // A page that does not read falls behind by so much at most; it asks for everything anew then.
    private const int Behind = 100;

    public void Map(IEndpointRouteBuilder routes, Studio studio) => routes.MapGet("/api/news", context => Tell(studio, context));

    private static async Task Tell(Studio studio, HttpContext context)
    {
        Channel<ClubNews> news = Channel.CreateBounded<ClubNews>(new BoundedChannelOptions(Behind) { FullMode = BoundedChannelFullMode.DropOldest });
        studio.Club.Changed += Hear;
        try
        {
            context.Response.ContentType = "text/event-stream; charset=utf-8";
            await context.Response.WriteAsync(": open\n\n", context.RequestAborted).ConfigureAwait(false);
            await context.Response.Body.FlushAsync(context.RequestAborted).ConfigureAwait(false);
            while (!context.RequestAborted.IsCancellationRequested)
            {
                string line = await Next(news.Reader, studio.Clock, context.RequestAborted).ConfigureAwait(false);
                await context.Response.WriteAsync(line, context.RequestAborted).ConfigureAwait(false);
                await context.Response.Body.FlushAsync(context.RequestAborted).ConfigureAwait(false);
            }
        }
        finally
        {
            studio.Club.Changed -= Hear;
        }

        void Hear(object? sender, ClubChange change) => news.Writer.TryWrite(new ClubNews(
            [.. change.Dances], [.. change.Tracks], [.. change.Classes], [.. change.Evenings], change.Everything));
    }

    private static async Task<string> Next(ChannelReader<ClubNews> news, TimeProvider clock, CancellationToken stop)
    {
        try
        {
            bool isThere = await news.WaitToReadAsync(stop).AsTask().WaitAsync(Quiet, clock, stop).ConfigureAwait(false);
            return isThere && news.TryRead(out ClubNews? told) ? $"data: {JsonSerializer.Serialize(told, StudioJson.Default.ClubNews)}\n\n" : ": there\n\n";
        }
        catch (TimeoutException)
        {
            return ": there\n\n";
        }
    }
}
