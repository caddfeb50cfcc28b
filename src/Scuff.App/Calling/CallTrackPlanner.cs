using Scuff.Analysis.Calls;
using Scuff.Audio.Mixing;
using Scuff.Audio.Songs;
using Scuff.Sheets.Captions;

namespace Scuff.App.Calling;

/// <summary>Puts the calls of a dance on the seconds of a call track.</summary>
internal static class CallTrackPlanner
{
    /// <summary>The plan.</summary>
    /// <param name="called">The dance with its clock.</param>
    /// <param name="script">Its calls, written for that clock.</param>
    /// <param name="music">The music at the speed of the clock; null for none.</param>
    /// <param name="clicks">Whether each count is struck.</param>
    public static CallTrackPlan Of(CalledDance called, CallScript script, StereoSound? music, bool clicks) => new()
    {
        Calls = [.. script.Calls.Select(c => new CallTime(Math.Max(0, c.Seconds), c.Words, Math.Max(Math.Max(0, c.Seconds), UntilOf(called, c))))],
        Clicks = clicks ? ClicksOf(called, script) : [],
        Music = music,
        Seconds = music is null ? called.Clock.SecondsAt(called.Timeline.Length.Value.ToDouble()) : 0,
    };

    // A number of the count-in is said on its own count and has until the next; other words have ended when what they name begins.
    private static double UntilOf(CalledDance called, Call call)
        => call.Kind == CallKind.CountIn ? called.Clock.SecondsAt(call.For.Value.ToDouble() + 1) : call.Due;

    private static ValueList<ClickTime> ClicksOf(CalledDance called, CallScript script)
    {
        IEnumerable<ClickTime> before = Enumerable.Range(-script.CountIn, script.CountIn)
            .Select(c => new ClickTime(called.Clock.SecondsAt(c), c == -script.CountIn));
        IEnumerable<ClickTime> danced = CaptionBuilder.Build(called.Dance, called.Timeline, called.Clock, script).Counts
            .Where(c => c.Wall > 0)
            .Select(c => new ClickTime(c.Start, c.Count == 1));
        return [.. before.Concat(danced).Where(c => c.Seconds >= 0)];
    }
}
