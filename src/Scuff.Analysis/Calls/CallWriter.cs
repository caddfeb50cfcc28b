using Scuff.Dances;
using Scuff.Timelines;

namespace Scuff.Analysis.Calls;

/// <summary>Writes what a caller says through a dance. The same input gives the same calls.</summary>
public static class CallWriter
{
    /// <summary>
    /// The calls of a danced dance. Every call ends before what it names begins (a number of the count-in is said on its own count), none overlaps
    /// another, and none has more words than its beats have room for.
    /// </summary>
    /// <param name="dance">The dance.</param>
    /// <param name="timeline">The dance as danced.</param>
    /// <param name="clock">When its counts fall.</param>
    /// <param name="options">How it is called; null for the usual.</param>
    public static CallScript Write(Dance dance, Timeline timeline, CountClock clock, CallOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(dance);
        ArgumentNullException.ThrowIfNull(timeline);
        ArgumentNullException.ThrowIfNull(clock);
        CallOptions asked = options ?? new CallOptions();
        List<CallItem> items = CallItems.Of(dance, timeline, asked);
        List<(CallItem Item, Call Call)> placed = new CallPlacement(clock, asked).Place(items);
        HashSet<CallItem> said = new(placed.Select(p => p.Item), ReferenceEqualityComparer.Instance);
        IEnumerable<Call> unsaid = items.Where(i => i.IsHers && !said.Contains(i)).Select(i => Unplaced(i, clock));
        int eight = dance.BeatsPerBar == 3 ? 6 : 8;
        return new CallScript(placed.Select(p => p.Call).OrderBy(c => c.Seconds).ToValueList(), unsaid.ToValueList(), asked.WithCountIn ? eight : 0);
    }

    private static Call Unplaced(CallItem item, CountClock clock)
    {
        double due = clock.SecondsAt(item.For.Value.ToDouble());
        return new Call(item.Kind, item.Wordings[0], item.Latest, item.For, item.Wall, due, due, due) { Span = item.Span, IsHers = true };
    }
}
