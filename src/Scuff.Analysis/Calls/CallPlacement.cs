namespace Scuff.Analysis.Calls;

/// <summary>
/// Decides what is said and when, exactly: of all ways to say some of the items in order, each ending before what it names and none overlapping, the one
/// that dancers would miss least from. Ends are the only thing that what comes later needs to know, so of two beginnings the one that ends later and is
/// worth no more is dropped.
/// </summary>
/// <param name="clock">When the counts fall.</param>
/// <param name="options">The voice.</param>
internal sealed class CallPlacement(CountClock clock, CallOptions options)
{
    // What a shorter wording loses, and what a place off the usual one loses, as shares of the item's worth; design values.
    private const double PerRung = 0.1;
    private const double PerCountOff = 0.05;
    private const double HalfCount = 0.5;
    private const double Near = 1e-9;

    private readonly Dictionary<string, Spoken> _spoken = new(StringComparer.Ordinal);

    /// <summary>The calls, in the order said, each with the item it says.</summary>
    /// <param name="items">The items.</param>
    public List<(CallItem Item, Call Call)> Place(IEnumerable<CallItem> items)
    {
        List<(CallItem Item, Call Call)> said = [];
        for (State? state = Solve(items); state is { Before: not null }; state = state.Before)
        {
            CallItem item = state.Way.Item;
            said.Add((item, new Call(
                item.Kind,
                state.Way.Wording,
                state.Moment.At,
                item.For,
                item.Wall,
                state.Moment.Start,
                state.Moment.End,
                clock.SecondsAt(item.For.Value.ToDouble()))
            {
                Span = item.Span,
                IsHers = item.IsHers,
            }));
        }

        said.Reverse();
        return said;
    }

    /// <summary>What the best way to say some of the items is worth.</summary>
    internal double WorthOf(IEnumerable<CallItem> items) => Solve(items).Worth;

    /// <summary>The order in which items are said, if they are: by when they must have been said.</summary>
    internal static List<CallItem> InOrder(IEnumerable<CallItem> items)
        => [.. items.OrderBy(i => i.Latest).ThenBy(i => i.IsFixed).ThenByDescending(i => i.Kind)];

    /// <summary>All ways to say an item: which words, and from when.</summary>
    internal List<Way> WaysOf(CallItem item)
    {
        List<Way> ways = [];
        double due = item.For.Value.ToDouble();
        for (int rung = 0; rung < item.Wordings.Count; rung++)
        {
            Spoken spoken = SpokenOf(item.Wordings[rung]);
            double lead = item.Lead ?? LeadOf(spoken, due, item.Latest);
            for (double early = 0; early <= (item.IsFixed ? 0 : item.Early) + Near; early += HalfCount)
            {
                double worth = item.Worth * (1 - (PerRung * rung) - (PerCountOff * early));
                ways.Add(new Way(item, item.Wordings[rung], spoken.Seconds, spoken.Words, due - lead - early, worth));
            }
        }

        return ways;
    }

    /// <summary>When a way is said after what was said before, and what that is worth; null when there is no room for it.</summary>
    /// <param name="way">The way.</param>
    /// <param name="said">When what was said before ended, in seconds.</param>
    internal Moment? After(Way way, double said)
    {
        double from = clock.SecondsAt(way.From);
        if (way.From < -options.Intro - Near)
        {
            return null;
        }

        if (way.Item.IsFixed)
        {
            // a number is hurried where the beat is, so that the next one has its own
            double end = Math.Min(from + way.Seconds, clock.SecondsAt(way.From + 1) - CallLead.Breath);
            return said > from ? null : new Moment(way.From, from, end, way.Worth);
        }

        double latest = clock.SecondsAt(way.Item.Latest);
        double start = Math.Max(from, said + CallLead.Pause);
        double at = clock.CountAt(start);
        bool fits = start + way.Seconds <= latest - CallLead.Breath && way.Words <= CallLead.WordsIn(way.Item.Latest - at, latest - start) + Near;
        return fits ? new Moment(at, start, start + way.Seconds, way.Worth * Math.Max(HalfCount, 1 - (PerCountOff * Math.Max(0, at - way.From)))) : null;
    }

    private State Solve(IEnumerable<CallItem> items)
    {
        List<CallItem> ordered = InOrder(items);
        Way[][] ways = [.. ordered.Select(i => WaysOf(i).ToArray())];
        double[] begins = EarliestOf(ways);
        List<State> states = [new State(double.NegativeInfinity, 0, null, default, default)];
        List<State> next = [];
        for (int i = 0; i < ways.Length; i++)
        {
            next.Clear();
            next.AddRange(states);
            foreach (Way way in ways[i])
            {
                Add(next, states, way);
            }

            (states, next) = (Best(next, i + 1 < begins.Length ? begins[i + 1] : double.PositiveInfinity), states);
        }

        return states.MaxBy(s => s.Worth)!;
    }

    // States come by their ends, each worth more than the one before: of those that leave a way its whole room, only the last one matters.
    private void Add(List<State> next, List<State> states, Way way)
    {
        double from = clock.SecondsAt(way.From);
        int free = 0;
        while (free + 1 < states.Count && states[free + 1].End <= from - CallLead.Pause)
        {
            free++;
        }

        for (int i = free; i < states.Count; i++)
        {
            if (After(way, states[i].End) is not { } moment)
            {
                return;
            }

            next.Add(new State(moment.End, states[i].Worth + moment.Worth, states[i], way, moment));
        }
    }

    // When the first of an item and all after it could begin, in seconds.
    private double[] EarliestOf(Way[][] ways)
    {
        double[] begins = new double[ways.Length];
        double earliest = double.PositiveInfinity;
        for (int i = ways.Length - 1; i >= 0; i--)
        {
            foreach (Way way in ways[i])
            {
                earliest = Math.Min(earliest, clock.SecondsAt(way.From));
            }

            begins[i] = earliest;
        }

        return begins;
    }

    // Nothing is kept that ends later than another and is worth no more; nor, of all that end before anything else begins, more than the best.
    private static List<State> Best(List<State> states, double begins)
    {
        states.Sort((a, b) => a.End != b.End ? a.End.CompareTo(b.End) : b.Worth.CompareTo(a.Worth));
        List<State> best = [];
        double most = double.NegativeInfinity;
        foreach (State state in states)
        {
            if (state.Worth > most + Near)
            {
                if (best.Count > 0 && state.End <= begins - CallLead.Pause)
                {
                    best.Clear();
                }

                best.Add(state);
                most = state.Worth;
            }
        }

        return best;
    }

    // The beats that the words ask for, or more where they take longer to say; what takes more than an eight nobody remembers when it is danced.
    private double LeadOf(Spoken spoken, double due, double latest)
    {
        double lead = CallLead.ForWords(spoken.Words) + (due - latest);
        double seconds = clock.SecondsAt(latest) - CallLead.Breath - spoken.Seconds;
        double room = Math.Ceiling((due - clock.CountAt(seconds)) / HalfCount) * HalfCount;
        double budget = Math.Ceiling(spoken.Words / Math.Max(HalfCount, CallLead.WordsIn(1, clock.SecondsAt(due) - clock.SecondsAt(due - 1))) / HalfCount) * HalfCount;
        return Math.Min(Math.Max(lead, Math.Max(room, budget + (due - latest))), CallLead.Warning + (due - latest));
    }

    private Spoken SpokenOf(string words)
    {
        if (!_spoken.TryGetValue(words, out Spoken spoken))
        {
            spoken = new Spoken(options.SecondsToSay(words), SpokenLength.WordsIn(words));
            _spoken.Add(words, spoken);
        }

        return spoken;
    }

    /// <summary>One way to say an item.</summary>
    /// <param name="Item">The item.</param>
    /// <param name="Wording">The words.</param>
    /// <param name="Seconds">How long they take.</param>
    /// <param name="Words">How many there are.</param>
    /// <param name="From">The count from which they may be said.</param>
    /// <param name="Worth">What they are worth there.</param>
    internal readonly record struct Way(CallItem Item, string Wording, double Seconds, int Words, double From, double Worth);

    /// <summary>A way at its time.</summary>
    /// <param name="At">Its count.</param>
    /// <param name="Start">When it begins, in seconds.</param>
    /// <param name="End">When it ends.</param>
    /// <param name="Worth">What it is worth there.</param>
    internal readonly record struct Moment(double At, double Start, double End, double Worth);

    private readonly record struct Spoken(double Seconds, int Words);

    private sealed record State(double End, double Worth, State? Before, Way Way, Moment Moment);
}
