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
        List<CallItem> ordered = [.. items.OrderBy(i => i.Latest).ThenBy(i => i.IsFixed).ThenByDescending(i => i.Kind)];
        List<State> states = [new State(double.NegativeInfinity, 0, null, null)];
        foreach (CallItem item in ordered)
        {
            states = Next(states, item);
        }

        List<(CallItem Item, Call Call)> said = [];
        for (State? state = states.MaxBy(s => s.Worth); state is not null; state = state.Before)
        {
            if (state.Said is { } call)
            {
                said.Add((call.Item, call.Call));
            }
        }

        said.Reverse();
        return said;
    }

    private List<State> Next(List<State> states, CallItem item)
    {
        List<State> next = [.. states];
        for (int rung = 0; rung < item.Wordings.Count; rung++)
        {
            string words = item.Wordings[rung];
            Spoken spoken = SpokenOf(words);
            double latest = clock.SecondsAt(item.Latest) - (item.IsFixed ? 0 : CallLead.Breath);
            double usual = item.For.Value.ToDouble();
            double lead = item.Lead ?? LeadOf(spoken, usual, item.Latest);
            for (double early = 0; early <= (item.IsFixed ? 0 : item.Early) + Near; early += HalfCount)
            {
                double from = clock.SecondsAt(usual - lead - early);
                double worth = item.Worth * (1 - (PerRung * rung) - (PerCountOff * early));
                foreach (State state in states)
                {
                    double start = Math.Max(from, state.End + CallLead.Pause);
                    double end = start + spoken.Seconds;
                    if (item.IsFixed ? state.End > from : end > latest)
                    {
                        continue;
                    }

                    start = item.IsFixed ? from : start;
                    end = start + spoken.Seconds;
                    double at = clock.CountAt(start);
                    if (at < -options.Intro - Near)
                    {
                        continue;
                    }

                    if (!item.IsFixed && spoken.Words > CallLead.WordsIn(item.Latest - at, latest + CallLead.Breath - start) + Near)
                    {
                        continue;
                    }

                    double late = Math.Max(0, at - (usual - lead - early));
                    Call call = new(item.Kind, words, at, item.For, item.Wall, start, end, clock.SecondsAt(usual))
                    {
                        Span = item.Span,
                        IsHers = item.IsHers,
                    };
                    next.Add(new State(end, state.Worth + (worth * Math.Max(HalfCount, 1 - (PerCountOff * late))), state, new Said(item, call)));
                }
            }
        }

        return Best(next);
    }

    // Nothing is kept that ends later than another and is worth no more.
    private static List<State> Best(List<State> states)
    {
        states.Sort((a, b) => a.End != b.End ? a.End.CompareTo(b.End) : b.Worth.CompareTo(a.Worth));
        List<State> best = [];
        double most = double.NegativeInfinity;
        foreach (State state in states)
        {
            if (state.Worth > most + Near)
            {
                best.Add(state);
                most = state.Worth;
            }
        }

        return best;
    }

    // The beats that the words ask for, or more where they take longer to say.
    private double LeadOf(Spoken spoken, double due, double latest)
    {
        double lead = CallLead.ForWords(spoken.Words) + (due - latest);
        double seconds = clock.SecondsAt(latest) - CallLead.Breath - spoken.Seconds;
        double room = Math.Ceiling((due - clock.CountAt(seconds)) / HalfCount) * HalfCount;
        double budget = Math.Ceiling(spoken.Words / Math.Max(HalfCount, CallLead.WordsIn(1, clock.SecondsAt(due) - clock.SecondsAt(due - 1))) / HalfCount) * HalfCount;
        return Math.Max(lead, Math.Max(room, budget + (due - latest)));
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

    private readonly record struct Spoken(double Seconds, int Words);

    private sealed record Said(CallItem Item, Call Call);

    private sealed record State(double End, double Worth, State? Before, Said? Said);
}
