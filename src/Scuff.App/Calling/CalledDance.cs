using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.Analysis.Fit;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Timelines;

namespace Scuff.App.Calling;

/// <summary>A dance as danced with the clock its counts fall by: all that calling it needs.</summary>
/// <param name="Dance">The dance.</param>
/// <param name="Timeline">The dance as danced.</param>
/// <param name="Clock">When its counts fall; at an even pace the count-in begins at 0 seconds.</param>
/// <param name="TrackTitle">The track it is danced to, or empty.</param>
internal sealed record CalledDance(Dance Dance, Timeline Timeline, CountClock Clock, string TrackTitle)
{
    /// <summary>The pace where neither the dance nor she says one: class music lies at 90 to 130 (trade notes on music, section 1, common practice).</summary>
    public const double UsualPace = 110;

    /// <summary>Counts of the count-in: an eight, in a waltz a six.</summary>
    public static int CountInOf(Dance dance) => dance.BeatsPerBar == 3 ? 6 : 8;

    /// <summary>At an even pace.</summary>
    /// <param name="dance">The dance.</param>
    /// <param name="timeline">As danced.</param>
    /// <param name="trackTitle">The track whose breaks are danced, or empty.</param>
    /// <param name="countsPerMinute">The pace; null as the track or the dance says, or else the usual.</param>
    /// <param name="speed">Practice speed.</param>
    public static CalledDance Even(Dance dance, Timeline timeline, string trackTitle, double? countsPerMinute, double speed)
    {
        double pace = (countsPerMinute ?? PaceOf(dance, trackTitle)) * speed;
        return new CalledDance(dance, timeline, CountClock.Even(pace, CountInOf(dance) * 60 / pace), trackTitle);
    }

    /// <summary>To a track: by the plan that the text has for it, or else the kindest.</summary>
    /// <returns>The dance on the track; null where there is no way to dance it there.</returns>
    public static CalledDance? On(DanceAnalysis analysis, TrackMap map, double speed)
    {
        FitAnswer answer = analysis.Fit(map);
        bool written = analysis.Dance.Tracks.Any(t => DanceFitter.IsOf(t, map));
        FitPlan? plan = written ? answer.AsWritten ?? answer.Kindest : answer.Kindest;
        if (plan is null)
        {
            return null;
        }

        ValueList<CountTime> times = answer.Music.Performed(plan.Begins);
        return times.Count < 2 ? null : new CalledDance(plan.Dance, plan.WithEnding, CountClock.Of(times).AtSpeed(speed), map.Title);
    }

    /// <summary>The calls.</summary>
    /// <param name="options">How it is called.</param>
    public CallScript Called(CallOptions options) => CallWriter.Write(Dance, Timeline, Clock, options with { Intro = -Clock.CountAt(0) });

    /// <summary>Counts a minute that a dance is danced at.</summary>
    public static double PaceOf(Dance dance, string trackTitle)
    {
        Track? track = dance.Tracks.FirstOrDefault(t => t.Title == trackTitle && t.Tempo is { BeatsPerMinute.Sign: > 0 })
            ?? dance.Tracks.FirstOrDefault(t => t.Tempo is { BeatsPerMinute.Sign: > 0 });
        return track?.Tempo is { } tempo && dance.BeatsPerCount.Sign > 0 ? (tempo.BeatsPerMinute / dance.BeatsPerCount).ToDouble() : UsualPace;
    }
}
