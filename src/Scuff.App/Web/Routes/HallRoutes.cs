using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.App.Calling;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Hall;

namespace Scuff.App.Web.Routes;

/// <summary>The hall: opening and shutting it, letting devices in, and what they all see.</summary>
internal sealed class HallRoutes : IRouteGroup
{
    private static readonly string[] Views = ["above", "behind", "front", "mirror"];

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        HallDoor hall = studio.Hall;
        routes.MapGet("/api/hall", context => Exchange.Answer(context, Standing(hall))).For(HallCircle.Here);
        routes.MapPost("/api/hall/open", async context =>
        {
            HallOpen asked = await Exchange.Read<HallOpen>(context).ConfigureAwait(false);
            await hall.Open(CircleOf(asked.Guests)).ConfigureAwait(false);
            await Exchange.Answer(context, Standing(hall)).ConfigureAwait(false);
        }).For(HallCircle.Here);
        routes.MapPost("/api/hall/shut", async context =>
        {
            await hall.Shut().ConfigureAwait(false);
            await Exchange.Answer(context, Standing(hall)).ConfigureAwait(false);
        }).For(HallCircle.Here);

        routes.MapPost("/api/hall/pair", Pair).For(HallCircle.Stranger);
        routes.MapGet("/api/hall/me", context =>
        {
            HallMe me = new(Name(HallGate.CircleOf(context)), hall.Opening is not null);
            return Exchange.Answer(context, me);
        }).For(HallCircle.Floor);
        routes.MapGet("/api/hall/time", context => Exchange.Answer(context, new HallTime(hall.Session.Now))).For(HallCircle.Floor);
        routes.MapGet("/api/hall/follow", context => Follow(hall.Session, context)).For(HallCircle.Floor);
        routes.MapGet("/api/hall/dance", context => Dance(hall.Session, context)).For(HallCircle.Floor);

        routes.MapPost("/api/hall/playhead", async context =>
        {
            HallTell told = await Exchange.Read<HallTell>(context).ConfigureAwait(false);
            Check(told.Playhead);
            await Exchange.Answer(context, new HallTold(hall.Session.Tell(told))).ConfigureAwait(false);
        }).For(HallCircle.Tablet);
        routes.MapPost("/api/hall/ask", async context =>
        {
            HallAsk ask = await Exchange.Read<HallAsk>(context).ConfigureAwait(false);
            Check(ask);
            hall.Session.Ask(ask);
            await Exchange.Answer(context, new DoneAnswer("")).ConfigureAwait(false);
        }).For(HallCircle.Tablet);
        routes.MapPost("/api/hall/dance", async context =>
        {
            HallTellDance told = await Exchange.Read<HallTellDance>(context).ConfigureAwait(false);
            if (told.Eight is < 1 or > 64 || told.Title.Length > 500)
            {
                throw new RefusalException(
                    StatusCodes.Status400BadRequest,
                    "This dance cannot be shown in the hall: its title is too long, or its eights are none.");
            }

            await Exchange.Answer(context, new HallTold(hall.Session.Tell(told, () => (
                DanceRoutes.Floor(studio, told.Floor),
                told.Calls is { } calls ? CallRoutes.Of(studio, calls).Calls : [])))).ConfigureAwait(false);
        }).For(HallCircle.Tablet);
    }

    private static string Name(HallCircle circle) => circle switch
    {
        HallCircle.Here => "here",
        HallCircle.Tablet => "tablet",
        _ => "floor",
    };

    private static HallCircle CircleOf(string guests) => guests switch
    {
        "tablet" => HallCircle.Tablet,
        "floor" => HallCircle.Floor,
        _ => throw new RefusalException(StatusCodes.Status400BadRequest, "The hall is opened for her tablet or for screens that watch."),
    };

    private static HallAnswer Standing(HallDoor hall)
    {
        if (hall.Opening is not { Listener: { } listener } opening)
        {
            return new HallAnswer(false, "floor", null, 0, "", [], 0, 0);
        }

        return new HallAnswer(
            true,
            Name(opening.Pairing.Circle),
            opening.Pairing.Digits,
            (int)opening.Pairing.Left.TotalSeconds,
            opening.Pairing.Why,
            [
                .. listener.Addresses.Select(a =>
                {
                    string address = string.Create(CultureInfo.InvariantCulture, $"http://{a.Address}:{listener.Port}{HallGate.Page}");
                    return new HallAddressAnswer(address, a.Network, HallSigns.Of(address));
                }),
            ],
            opening.Guests.Present(HallCircle.Tablet),
            opening.Guests.Present(HallCircle.Floor));
    }

    private static async Task Pair(HttpContext context)
    {
        if (context.Features.Get<HallVisitor>() is not { } visitor)
        {
            throw new RefusalException(StatusCodes.Status409Conflict, "This is the machine that Scuff runs on: it needs no code.");
        }

        HallPair asked = await Exchange.Read<HallPair>(context).ConfigureAwait(false);
        HallTry tried = visitor.Opening.Pairing.Try(visitor.Address.ToString(), asked.Code);
        if (tried.Circle is not { } circle)
        {
            if (tried.Wait > TimeSpan.Zero)
            {
                context.Response.Headers.RetryAfter = ((int)Math.Ceiling(tried.Wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
            }

            throw new RefusalException(StatusCodes.Status403Forbidden, tried.Sentence);
        }

        string secret = visitor.Opening.Guests.Add(circle)
            ?? throw new RefusalException(StatusCodes.Status503ServiceUnavailable, "The hall is full. Shut it and open it again to begin anew.");
        CookieOptions options = new() { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" };
        context.Response.Cookies.Append(HallListener.Cookie, secret, options);
        await Exchange.Answer(context, new HallMe(Name(circle), true)).ConfigureAwait(false);
    }

    // Server-sent events: the HTML standard, 9.2.
    private static async Task Follow(HallSession session, HttpContext context)
    {
        HallFollower follower = session.Follow()
            ?? throw new RefusalException(StatusCodes.Status503ServiceUnavailable, "Too many screens look at this hall.");
        try
        {
            context.Response.ContentType = "text/event-stream";
            await foreach (ReadOnlyMemory<byte> message in follower.Waiting.ReadAllAsync(context.RequestAborted).ConfigureAwait(false))
            {
                await context.Response.Body.WriteAsync(message, context.RequestAborted).ConfigureAwait(false);
                await context.Response.Body.FlushAsync(context.RequestAborted).ConfigureAwait(false);
            }
        }
        finally
        {
            session.Leave(follower);
        }
    }

    private static Task Dance(HallSession session, HttpContext context)
    {
        if (session.Dance is not { } dance)
        {
            throw new RefusalException(StatusCodes.Status404NotFound, "Nothing is danced in the hall yet.");
        }

        bool isSmaller = context.Request.Headers.AcceptEncoding.ToString().Contains("gzip", StringComparison.OrdinalIgnoreCase);
        if (isSmaller)
        {
            context.Response.Headers.ContentEncoding = "gzip";
        }

        return Exchange.File(context, "application/json; charset=utf-8", null, isSmaller ? dance.Small : dance.Plain);
    }

    private static void Check(HallAsk ask)
    {
        bool isKnown = ask.Kind switch
        {
            "play" or "stop" or "again" => true,
            "speed" => ask.Number is >= 0.25 and <= 2,
            "wall" => ask.Number is >= 1 and <= 1000,
            "section" => ask.Number is null || ask.To > ask.Number,
            "help" => ask.Word is "thinning" || HelpWords.All.Contains(ask.Word, StringComparer.Ordinal),
            "view" => Views.Contains(ask.Word, StringComparer.Ordinal),
            _ => false,
        };
        if (!isKnown)
        {
            throw new RefusalException(StatusCodes.Status400BadRequest, "A remote asks to play, to stop, for a speed, a section, a wall, a help or a view.");
        }
    }

    private static void Check(HallPlayhead playhead)
    {
        // JSON knows no infinity; what is left is nonsense that would stop every screen
        if (playhead.Pace is < 0 or > 20 || !Views.Contains(playhead.View, StringComparer.Ordinal))
        {
            throw new RefusalException(StatusCodes.Status400BadRequest, "This is no place of a playhead.");
        }
    }
}
