using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.Analysis.Fit;
using Scuff.App.Calling;
using Scuff.App.Web.Contract;
using Scuff.Dances;
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
        => routes.MapPost("/api/calls", async context =>
        {
            CallQuestion asked = await Exchange.Read<CallQuestion>(context).ConfigureAwait(false);
            await Exchange.Answer(context, Of(studio, asked)).ConfigureAwait(false);
        });

    /// <summary>The calls.</summary>
    /// <exception cref="RefusalException">The text is too long, or the pace none that can be danced.</exception>
    internal static CallAnswer Of(Studio studio, CallQuestion asked)
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

        (Dance dance, Timeline timeline, CountClock clock, bool isOnTrack) = Danced(studio, analysis, asked);
        CallScript script = CallWriter.Write(dance, timeline, clock, new CallOptions
        {
            HelpByWall = help,
            FirstWall = Math.Clamp(asked.FirstWall, 1, MostPlaces),
            Intro = isOnTrack ? -clock.CountAt(0) : CalledDance.CountInOf(dance),
        });
        return new CallAnswer([.. script.Calls.Select(c => Told(c, clock))], script.CountIn);
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

    private static (Dance Dance, Timeline Timeline, CountClock Clock, bool IsOnTrack) Danced(Studio studio, DanceAnalysis analysis, CallQuestion asked)
    {
        if (asked.Plays is { } track)
        {
            (FitPlan plan, ValueList<CountTime> times) = PlayedRoom.On(studio, analysis, track);
            return (plan.Dance, plan.WithEnding, CountClock.Of(times).AtSpeed(asked.Speed), true);
        }

        (Timeline timeline, string title) = DanceRoutes.Danced(analysis, asked.Track, asked.Ending);
        return asked.Table is { } table
            ? (analysis.Dance, timeline, ClockOf(table).AtSpeed(asked.Speed), true)
            : (analysis.Dance, timeline, EvenClock(analysis, title, asked), false);
    }

    private static CountClock EvenClock(DanceAnalysis analysis, string title, CallQuestion asked)
    {
        if (asked.CountsPerMinute is { } pace && pace is not (>= SlowestPace and <= FastestPace))
        {
            throw Refused($"A dance is called at {SlowestPace} to {FastestPace} counts a minute.");
        }

        double usual = asked.CountsPerMinute ?? CalledDance.PaceOf(analysis.Dance, title);
        return CountClock.Even(usual * asked.Speed);
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
