using System.Globalization;

namespace Scuff.Music.Labels;

/// <summary>A track as two label files, and back: its beats as points with the count, its sections with their letters.</summary>
public static class TrackLabels
{
    /// <summary>The beats: points, each with its count, or its place in the bar where no count is known.</summary>
    public static ValueList<LabelLine> BeatsOf(TrackMap map) =>
    [
        .. map.Beats.Select(b => new LabelLine(
            b.Seconds,
            b.Seconds,
            b.Count > 0 ? b.Count.ToString(CultureInfo.InvariantCulture) : b.BarPosition > 0 ? b.BarPosition.ToString(CultureInfo.InvariantCulture) : "")),
    ];

    /// <summary>The sections: each to where the next begins, its letter and then its name.</summary>
    public static ValueList<LabelLine> SectionsOf(TrackMap map) =>
    [
        .. map.Sections.Select(s => new LabelLine(
            map.Beats[s.FirstBeat].Seconds,
            s.FirstBeat + s.Beats < map.Beats.Count ? map.Beats[s.FirstBeat + s.Beats].Seconds : EndOf(map),
            s.Name.Length > 0 ? $"{s.Label} {s.Name}" : s.Label)),
    ];

    /// <summary>The map that label files tell. What they say is sure; where the beats have no numbers, counts run from the sections.</summary>
    /// <param name="beats">The beats.</param>
    /// <param name="sections">The sections; may be none.</param>
    public static MapReading ToMap(LabelReading beats, LabelReading sections)
    {
        List<TextTrouble> troubles = [.. beats.Troubles];
        double[] times = [.. beats.Lines.Select(l => l.Start)];
        if (times.Length < 2 && troubles.Count == 0)
        {
            troubles.Add(new TextTrouble(0, "A track needs two beats at the least."));
        }

        for (int i = 1; i < times.Length && troubles.Count == 0; i++)
        {
            if (times[i] - times[i - 1] < 0.05)
            {
                troubles.Add(new TextTrouble(0, string.Create(CultureInfo.InvariantCulture, $"Two beats lie at {times[i]:F2} seconds.")));
            }
        }

        troubles.AddRange(sections.Troubles.Where(t => t.Line > 0));
        if (troubles.Count > 0)
        {
            return new MapReading(null, [.. troubles]);
        }

        int[] numbers = [.. beats.Lines.Select(NumberOf)];
        Meter meter = MeterOf(numbers);
        int[] starts = [.. sections.Lines.Select(l => Nearest(times, l.Start))];
        ValueList<TrackBeat> row = numbers.All(n => n > 0)
            ? Numbered(times, numbers, meter, starts)
            : CountRun.Lay(times, meter, starts);
        int first = Enumerable.Range(0, row.Count).FirstOrDefault(i => row[i].Count == 1, 0);
        double[] lengths = [.. times.Zip(times.Skip(1), (a, b) => b - a).Order()];
        return new MapReading(
            new TrackMap
            {
                Seconds = Math.Max(times[^1], sections.Lines.Select(l => l.End).DefaultIfEmpty(0).Max()),
                Beats = row,
                Tempo = Estimate<double>.Said(60 / lengths[lengths.Length / 2]),
                Meter = Estimate<Meter>.Said(meter),
                Sections = [.. SectionsFrom(sections.Lines, starts, times.Length)],
                FirstCount = new Estimate<int>(first, 0.5),
            },
            []);
    }

    private static IEnumerable<TrackSection> SectionsFrom(ValueList<LabelLine> lines, int[] starts, int beats)
    {
        for (int i = 0; i < starts.Length; i++)
        {
            int end = i + 1 < starts.Length ? starts[i + 1] : beats;
            if (end > starts[i])
            {
                string[] words = lines[i].Label.Split(' ', 2);
                bool isLetter = words[0].Length is 1 or 2;
                yield return new TrackSection(
                    starts[i],
                    end - starts[i],
                    isLetter ? words[0] : lines[i].Label,
                    isLetter ? words.ElementAtOrDefault(1) ?? "" : "",
                    1);
            }
        }
    }

    // Numbers to 8 are counts; to 4, 3 or 2 they are places in the bar, and two bars make an eight.
    private static ValueList<TrackBeat> Numbered(double[] times, int[] numbers, Meter meter, int[] starts)
    {
        if (numbers.Max() > 4)
        {
            return [.. times.Select((t, i) => new TrackBeat(t, ((numbers[i] - 1) % meter.BeatsInBar) + 1, numbers[i]))];
        }

        HashSet<int> begins = [.. starts];
        TrackBeat[] row = new TrackBeat[times.Length];
        int bar = Array.IndexOf(numbers, 1) == 0 ? -1 : 0;
        int inEight = meter.BeatsInEight / meter.BeatsInBar;
        for (int i = 0; i < row.Length; i++)
        {
            bar = begins.Contains(i) ? 0 : numbers[i] == 1 ? (bar + 1) % inEight : Math.Max(bar, 0);
            row[i] = new TrackBeat(times[i], numbers[i], (Math.Max(bar, 0) * meter.BeatsInBar) + numbers[i]);
        }

        return [.. row];
    }

    private static Meter MeterOf(int[] numbers) => numbers.DefaultIfEmpty(0).Max() switch
    {
        3 or 6 => Meter.Three,
        2 => new Meter(2),
        _ => Meter.Four,
    };

    // "3", or the last part of "12.3" and "12:3" (bar and beat)
    private static int NumberOf(LabelLine line)
    {
        string last = line.Label.Split('.', ':', ' ')[^1];
        return int.TryParse(last, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number is >= 1 and <= 8 ? number : 0;
    }

    private static int Nearest(double[] times, double seconds)
    {
        int nearest = 0;
        for (int i = 1; i < times.Length; i++)
        {
            if (Math.Abs(times[i] - seconds) < Math.Abs(times[nearest] - seconds))
            {
                nearest = i;
            }
        }

        return nearest;
    }

    private static double EndOf(TrackMap map)
    {
        ValueList<TrackBeat> beats = map.Beats;
        double last = beats[beats.Count - 1].Seconds;
        return Math.Max(last, Math.Min(map.Seconds, beats.Count > 1 ? last + last - beats[beats.Count - 2].Seconds : last));
    }
}
