namespace Scuff.App.Programmes;

/// <summary>How a night goes on: ticks, and what is asked when the rest is planned anew. Knows no clock; moments come in.</summary>
internal static class NightRun
{
    /// <summary>An evening that begins so much before or after its time is danced at another time: then its seconds count from when it really began.</summary>
    private static readonly TimeSpan Far = TimeSpan.FromHours(3);

    /// <summary>So much over the end is nothing in a hall, in seconds.</summary>
    private const int Grace = 60;

    private const int Minute = 60;

    /// <summary>The moment from which the seconds of a programme count.</summary>
    /// <param name="planned">When the evening was to begin.</param>
    /// <param name="night">The night.</param>
    public static DateTimeOffset Origin(DateTimeOffset planned, EveningNight night)
        => (night.BegunAt - planned).Duration() <= Far ? planned : night.BegunAt;

    /// <summary>When the present line began: with the last tick, or with the night.</summary>
    public static DateTimeOffset Since(EveningNight night) => night.Done is [.., var last] ? last.At : night.BegunAt;

    /// <summary>When it has to end, in seconds.</summary>
    /// <param name="plan">The plan with a night.</param>
    /// <param name="minutes">How long the evening is.</param>
    public static int EndSecond(EveningPlan plan, int minutes) => (plan.Night?.EndMinute ?? minutes) * Minute;

    /// <summary>Begins the night; one that has begun goes on.</summary>
    public static EveningPlan Begin(EveningPlan plan, DateTimeOffset now) => plan with { Night = plan.Night ?? new EveningNight { BegunAt = now } };

    /// <summary>Ticks the first line; null when that is another one by now than she saw.</summary>
    /// <param name="plan">The plan with a night.</param>
    /// <param name="start">Where the line that she saw there begins, in seconds.</param>
    /// <param name="now">The moment.</param>
    public static EveningPlan? Tick(EveningPlan plan, int start, DateTimeOffset now)
        => plan is { Night: { } night, Programme: { Items: [var first, ..] } programme } && first.Start == start
            ? plan with
            {
                Night = night with { Done = [.. night.Done, new EveningDone { Item = first, At = now }] },
                Programme = programme with { Items = [.. programme.Items.Skip(1)] },
            }
            : null;

    /// <summary>Leaves a line out, the present one or one to come; null when there is no such line.</summary>
    /// <param name="plan">The plan with a night.</param>
    /// <param name="start">Where the line begins, in seconds.</param>
    /// <param name="now">The moment.</param>
    public static EveningPlan? Skip(EveningPlan plan, int start, DateTimeOffset now)
    {
        if (plan is not { Night: { } night, Programme: { } programme } || programme.Items.FirstOrDefault(i => i.Start == start) is not { } line)
        {
            return null;
        }

        return plan with
        {
            Night = night with { Done = [.. night.Done, new EveningDone { Item = line, At = now, IsSkipped = true }] },
            Programme = programme with { Items = [.. programme.Items.Where(i => !ReferenceEquals(i, line))] },
        };
    }

    /// <summary>Takes the last tick back; null when there is none.</summary>
    public static EveningPlan? Back(EveningPlan plan)
        => plan is { Night: { Done: [.., var last] } night, Programme: { } programme }
            ? plan with
            {
                Night = night with { Done = [.. night.Done.SkipLast(1)] },
                Programme = programme with { Items = [last.Item, .. programme.Items.Where(i => i.SongKey.Length == 0 || i.DanceId != last.Item.DanceId)] },
            }
            : null;

    /// <summary>Whether what is still to come no longer fits before the end.</summary>
    /// <param name="plan">The plan with a night.</param>
    /// <param name="minutes">How long the evening is.</param>
    /// <param name="second">The moment, in seconds.</param>
    public static bool IsShort(EveningPlan plan, int minutes, int second) => plan.Programme is { Items: [var first, ..] items }
        && items[^1].Start + items[^1].Seconds + Math.Max(0, second - first.Start) > EndSecond(plan, minutes) + Grace;

    /// <summary>
    /// What is asked when the rest is planned anew: rests and lessons that are over lie where they were, those to come begin when they can, and what was
    /// danced is no wish any more.
    /// </summary>
    /// <param name="plan">The plan with a night.</param>
    /// <param name="origin">The moment from which seconds count.</param>
    /// <param name="fromSecond">Where the rest begins.</param>
    public static EveningPlan Asked(EveningPlan plan, DateTimeOffset origin, int fromSecond)
    {
        IReadOnlyList<EveningDone> done = plan.Night?.Done ?? [];
        EveningDone[] stopped = [.. done.Where(d => d.Item.SongKey.Length == 0)];
        int from = (fromSecond + Minute - 1) / Minute;
        List<EveningStop> stops = [];
        foreach (EveningStop stop in plan.Stops.OrderBy(s => s.AtMinute))
        {
            if (stops.Count < stopped.Length)
            {
                // over, wherever it was to be: it ended when it was ticked
                int ended = (int)((stopped[stops.Count].At - origin).TotalSeconds / Minute);
                int at = Math.Max(0, Math.Min(stop.AtMinute, Math.Min(ended, from) - 1));
                stops.Add(stop with { AtMinute = at, Minutes = Math.Max(1, Math.Min(ended, from) - at) });
            }
            else
            {
                int at = Math.Max(stop.AtMinute, from);
                stops.Add(stop with { AtMinute = at });
                from = at + stop.Minutes;
            }
        }

        // a dance that was taught is not danced by that
        HashSet<string> over = [.. done.Where(d => d.Item.SongKey.Length > 0).SelectMany(d => new[] { d.Item.DanceId, d.Item.OtherId }).Where(id => id.Length > 0)];
        return plan with
        {
            Stops = stops,
            OpeningId = done.Any(d => d.Item.SongKey.Length > 0) ? "" : plan.OpeningId,
            ClosingId = over.Contains(plan.ClosingId) ? "" : plan.ClosingId,
            Requests = [.. plan.Requests.Where(r => !over.Contains(r.DanceId))],
            Pins = [.. plan.Pins.Where(p => !over.Contains(p.DanceId) && !over.Contains(p.OtherId))],
        };
    }
}
