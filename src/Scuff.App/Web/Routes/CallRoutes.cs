using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.Analysis.Fit;
using Scuff.App.Calling;
using Scuff.App.Web.Contract;
using Scuff.Timelines;

namespace Scuff.App.Web.Routes;

/// <summary>What a caller says through a dance.</summary>
internal sealed class CallRoutes : IRouteGroup
{
    private const double SlowestPace = 20;
    private const double FastestPace = 400;
    private const double SlowestSpeed = 0.25;
    private const double FastestSpeed = 2;
    private const int MostPlaces = 20_000;

    public void Map(IEndpointRouteBuilder routes, Studio studio)
    {
        routes.MapPost("/api/calls", async context =>
        {
            CallQuestion asked = await Exchange.Read<CallQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Of(studio, asked)).ConfigureAwait(false);
        });
        routes.MapPost("/api/calls/file", async context =>
        {
            CallFileQuestion asked = await Exchange.Read<CallFileQuestion>(context).ConfigureAwait(false);
            (string type, string ending, byte[] content, string missing) = await CallFiles.Of(studio, asked, context.RequestAborted).ConfigureAwait(false);
            if (missing.Length > 0)
            {
                // a file has no place for words of ours
                context.Response.Headers["Scuff-Missing"] = Uri.EscapeDataString(missing);
            }

            await Exchange.File(context, type, "dance" + ending, content).ConfigureAwait(false);
        });
    }

    /// <summary>The calls.</summary>
    /// <exception cref="RefusalException">The text is too long, or the pace none that can be danced.</exception>
    internal static CallAnswer Of(Studio studio, CallQuestion asked)
    {
        (CalledDance called, CallOptions options) = Called(studio, asked, fromZero: false);
        CallScript script = CallWriter.Write(called.Dance, called.Timeline, called.Clock, options);
        return new CallAnswer([.. script.Calls.Select(c => Told(c, called.Clock))], script.CountIn);
    }

    /// <summary>The dance ready to be called, and how.</summary>
    /// <param name="studio">The studio.</param>
    /// <param name="asked">What is asked.</param>
    /// <param name="fromZero">Whether the count-in begins at 0 seconds where no track is played, as in a file; else count 1 does, as in the player.</param>
    internal static (CalledDance Called, CallOptions Options) Called(Studio studio, CallQuestion asked, bool fromZero)
    {
        DanceAnalysis analysis = asked.Easier ? DanceRoutes.Analyse(studio, asked.Text).Easier : DanceRoutes.Analyse(studio, asked.Text);
        if (asked.Speed is not (>= SlowestSpeed and <= FastestSpeed))
        {
            throw Refused($"The practice speed is a number from {SlowestSpeed} to {FastestSpeed}; 1 is the speed of the music.");
        }

        ValueList<CallHelp> help = new CallOptions().HelpByWall;
        if (asked.Help is { Length: > 0 } words)
        {
            help = HelpWords.Read(words, out string? unknown)
                ?? throw Refused($"There is no help named {unknown}. It is {string.Join(", ", HelpWords.All)}.");
        }

        (CalledDance called, bool isOnTrack) = Danced(studio, analysis, asked, fromZero);
        return (called, new CallOptions
        {
            HelpByWall = help,
            FirstWall = Math.Clamp(asked.FirstWall, 1, MostPlaces),
            Intro = isOnTrack ? -called.Clock.CountAt(0) : CalledDance.CountInOf(called.Dance),
        });
    }

    /// <summary>A call as the page has it.</summary>
    internal static CalledWords Told(Call call, CountClock clock) => new(
        HelpWords.Of(call.Kind),
        call.Words,
        Math.Round(call.At, 4),
        Math.Round(clock.CountAt(call.Until), 4),
        call.For.Value.ToDouble(),
        call.Wall,
        Math.Round(call.Seconds, 4),
        Math.Round(call.Due, 4),
        call.Span.Start,
        call.Span.End);

    private static (CalledDance Called, bool IsOnTrack) Danced(Studio studio, DanceAnalysis analysis, CallQuestion asked, bool fromZero)
    {
        if (asked.Plays is { } track)
        {
            (FitPlan plan, ValueList<CountTime> times) = PlayedRoom.On(studio, analysis, track);
            return (new CalledDance(plan.Dance, plan.WithEnding, CountClock.Of(times).AtSpeed(asked.Speed), plan.Track.Title), true);
        }

        (Timeline timeline, string title) = DanceRoutes.Danced(analysis, asked.Track, asked.Ending);
        return asked.Table is { } table
            ? (new CalledDance(analysis.Dance, timeline, ClockOf(table).AtSpeed(asked.Speed), title), true)
            : (new CalledDance(analysis.Dance, timeline, EvenClock(analysis, title, asked, fromZero), title), false);
    }

    private static CountClock EvenClock(DanceAnalysis analysis, string title, CallQuestion asked, bool fromZero)
    {
        if (asked.CountsPerMinute is { } typed && typed is not (>= SlowestPace and <= FastestPace))
        {
            throw Refused($"A dance is called at {SlowestPace} to {FastestPace} counts a minute.");
        }

        double pace = (asked.CountsPerMinute ?? CalledDance.PaceOf(analysis.Dance, title)) * asked.Speed;
        return CountClock.Even(pace, fromZero ? CalledDance.CountInOf(analysis.Dance) * 60 / pace : 0);
    }

    private static CountClock ClockOf(double[][] table)
    {
        if (table.Length is < 2 or > MostPlaces || table.Any(p => p is not { Length: 2 } || !double.IsFinite(p[0]) || !double.IsFinite(p[1])))
        {
            throw Refused($"The counts of a track come with their seconds, two numbers each, two places at least.");
        }

        try
        {
            return CountClock.Of([.. table.Select(p => new CountTime(p[0], p[1]))]);
        }
        catch (ArgumentException)
        {
            throw Refused($"The counts of a track and their seconds rise from one place to the next.");
        }
    }

    private static RefusalException Refused(FormattableString words)
        => new(StatusCodes.Status400BadRequest, FormattableString.Invariant(words));
}
