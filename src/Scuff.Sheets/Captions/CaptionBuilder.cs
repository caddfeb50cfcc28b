using System.Globalization;
using Scuff.Analysis.Calls;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Sheets.Captions;

/// <summary>Makes captions, chapter marks and counts of a called dance.</summary>
public static class CaptionBuilder
{
    // Shorter than this nobody reads it; design value.
    private const double LeastSeconds = 0.3;

    /// <summary>The captions.</summary>
    /// <param name="dance">The dance.</param>
    /// <param name="timeline">The dance as danced.</param>
    /// <param name="clock">When its counts fall; what falls before 0 seconds is left out, because a film begins there.</param>
    /// <param name="script">The calls, written for the same clock.</param>
    public static CaptionModel Build(Dance dance, Timeline timeline, CountClock clock, CallScript script)
    {
        ArgumentNullException.ThrowIfNull(dance);
        ArgumentNullException.ThrowIfNull(timeline);
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(script);
        return new CaptionModel(dance.Title, CallsOf(script), Chapters(timeline, clock), CountsOf(dance, timeline, clock));
    }

    private static ValueList<CaptionCue> CallsOf(CallScript script)
    {
        List<CaptionCue> cues = [];
        for (int i = 0; i < script.Calls.Count; i++)
        {
            Call call = script.Calls[i];
            double next = i + 1 < script.Calls.Count ? script.Calls[i + 1].Seconds : double.PositiveInfinity;
            double start = Math.Max(0, call.Seconds);
            double end = Math.Min(Math.Max(Math.Max(call.Due, call.Until), start + LeastSeconds), next);
            if (end > start)
            {
                cues.Add(new CaptionCue(start, end, call.Words));
            }
        }

        return cues.ToValueList();
    }

    // A stretch of a wall may run over several sections, and begin or end within one.
    private static IEnumerable<(Counts From, Counts To, TimedStretch Stretch, Section? Section, Counts Skipped)> Passages(Timeline timeline)
    {
        foreach (TimedStretch stretch in timeline.Stretches)
        {
            if (stretch.Plan.Kind == StretchKind.Wait || stretch.Plan.Sections.Count == 0)
            {
                yield return (stretch.Span.Start, stretch.Span.End, stretch, null, Counts.Zero);
                continue;
            }

            Counts start = Counts.Zero;
            foreach (Section section in stretch.Plan.Sections)
            {
                Counts end = start + section.Length;
                Counts from = Counts.Max(start, stretch.Plan.Counts.Start);
                Counts to = Counts.Min(end, stretch.Plan.Counts.End);
                if (to > from)
                {
                    Counts shift = stretch.Span.Start - stretch.Plan.Counts.Start;
                    yield return (from + shift, to + shift, stretch, section, from - start);
                }

                start = end;
            }
        }
    }

    private static ValueList<CaptionCue> Chapters(Timeline timeline, CountClock clock)
    {
        List<CaptionCue> chapters = [];
        double begins = clock.SecondsAt(0);
        if (begins > LeastSeconds)
        {
            chapters.Add(new CaptionCue(0, begins, "Intro"));
        }

        foreach ((Counts from, Counts to, TimedStretch stretch, Section? section, Counts skipped) in Passages(timeline))
        {
            double start = Math.Max(0, clock.SecondsAt(from.Value.ToDouble()));
            double end = clock.SecondsAt(to.Value.ToDouble());
            string title = TitleOf(stretch, section, skipped);
            if (chapters.Count > 0 && skipped > Counts.Zero && chapters[^1].Text == title)
            {
                // the rest of a section after a bridge goes on under its own mark only if something stood between
                chapters[^1] = chapters[^1] with { End = end };
            }
            else if (end > start)
            {
                chapters.Add(new CaptionCue(start, end, title));
            }
        }

        return chapters.ToValueList();
    }

    private static string TitleOf(TimedStretch stretch, Section? section, Counts skipped)
    {
        string wall = string.Create(CultureInfo.InvariantCulture, $"Wall {stretch.Plan.Wall}");
        return stretch.Plan.Kind switch
        {
            StretchKind.Wall when section is not null => wall + ", " + PlaceOf(stretch, section) + (skipped > Counts.Zero ? ", going on" : ""),
            StretchKind.Ending => "Ending",
            _ => wall + ", " + PlaceOf(stretch, section),
        };
    }

    private static string PlaceOf(TimedStretch stretch, Section? section) => stretch.Plan.Kind switch
    {
        StretchKind.Wait => "hold",
        StretchKind.Tag => stretch.Plan.Name.Length > 0 ? "tag " + stretch.Plan.Name : "tag",
        StretchKind.Ending => "ending",
        _ when section is not null => (stretch.Plan.Name.Length > 0 ? "part " + stretch.Plan.Name + ", " : "")
            + string.Create(CultureInfo.InvariantCulture, $"section {section.Number}") + (section.Title.Length > 0 ? ": " + section.Title : ""),
        _ => "",
    };

    private static ValueList<CaptionCount> CountsOf(Dance dance, Timeline timeline, CountClock clock)
    {
        List<CaptionCount> counts = [];
        int eight = dance.BeatsPerBar == 3 ? 6 : 8;
        for (int i = -(eight / 2); i < 0; i++)
        {
            double start = clock.SecondsAt(i);
            if (start >= 0)
            {
                counts.Add(new CaptionCount(start, clock.SecondsAt(i + 1), eight + i + 1, 0, 0, "", "count-in", ""));
            }
        }

        Dictionary<int, List<TimedStep>> byCount = timeline.Steps.GroupBy(s => s.At.Value.Floor).ToDictionary(g => g.Key, g => g.ToList());
        Facing? facing = Facing.Front;
        foreach ((Counts from, Counts to, TimedStretch stretch, Section? section, Counts skipped) in Passages(timeline))
        {
            for (int i = 0; Counts.FromWhole(i) < to - from; i++)
            {
                Counts at = from + Counts.FromWhole(i);
                List<TimedStep> danced = byCount.GetValueOrDefault(at.Value.Floor) ?? [];
                facing = danced.Count > 0 ? danced[0].FacingBefore : facing;
                double start = clock.SecondsAt(at.Value.ToDouble());
                if (start >= 0)
                {
                    counts.Add(new CaptionCount(
                        start,
                        clock.SecondsAt(Counts.Min(at + Counts.One, to).Value.ToDouble()),
                        skipped.Value.Floor + i + 1,
                        stretch.Plan.Wall,
                        stretch.Plan.Kind == StretchKind.Wall ? section?.Number ?? 0 : 0,
                        facing?.ToString() ?? "",
                        PlaceOf(stretch, section),
                        string.Join(", ", danced.Select(s => Phrasing.Describe(s.Action)))));
                }

                facing = danced.Count > 0 ? danced[^1].FacingAfter : facing;
            }
        }

        return counts.ToValueList();
    }
}
