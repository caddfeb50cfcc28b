using System.Globalization;

namespace Scuff.Music.Labels;

/// <summary>
/// A map written by hand, for a track whose sound is not at hand: what is known of it, an item a line or with commas between.
/// <code>
/// title: Harbour Lights Out
/// tempo 112, first beat 0.35, 4/4, swing 2
/// intro 32, A 32 verse, A 32 verse, B 32 chorus, stop 41.5 to 43.6
/// </code>
/// Sections follow one another in counts from the first beat; a letter that comes again is the same music.
/// </summary>
public static class TrackMapText
{
    private const int MostBeats = 24_000;

    /// <summary>Reads a map. Never throws; what is not understood is told, and then there is no map.</summary>
    public static MapReading Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Draft draft = new();
        int number = 0;
        foreach (string line in text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n'))
        {
            number++;
            string words = line.Trim();
            if (words.Length == 0 || words[0] == '#')
            {
                continue;
            }

            if (After(words, "title:") is { } title)
            {
                draft.Title = title;
            }
            else if (After(words, "artist:") is { } artist)
            {
                draft.Artist = artist;
            }
            else
            {
                foreach (string item in words.Split(',', ';').Select(i => i.Trim()).Where(i => i.Length > 0))
                {
                    if (Take(item, draft) is { } trouble)
                    {
                        draft.Troubles.Add(new TextTrouble(number, trouble));
                    }
                }
            }
        }

        return draft.Troubles.Count > 0 ? new MapReading(null, [.. draft.Troubles]) : Made(draft);
    }

    private static string? After(string words, string start)
        => words.StartsWith(start, StringComparison.OrdinalIgnoreCase) ? words[start.Length..].Trim() : null;

    // Takes one item in; says what is wrong with it, or null.
    private static string? Take(string item, Draft draft)
    {
        string[] words = item.Replace(':', ' ').Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string[] lower = [.. words.Select(w => w.ToLowerInvariant())];
        switch (lower)
        {
            case ["tempo", string tempo, ..]:
                return Number(tempo, 20, 400, out draft.Tempo) ? null : $"the tempo is a number from 20 to 400, and not {tempo}.";
            case ["first", "beat", string first]:
                return Number(first, 0, 600, out draft.FirstBeat) ? null : $"the first beat is a time in seconds, and not {first}.";
            case ["4/4"] or ["meter", "4/4"]:
                draft.Meter = Meter.Four;
                return null;
            case ["3/4"] or ["meter", "3/4"] or ["waltz"]:
                draft.Meter = Meter.Three;
                return null;
            case ["6/8"] or ["meter", "6/8"]:
                draft.Meter = new Meter(4, IsCompound: true);
                return null;
            case ["meter", ..]:
                return $"the meter is 4/4, 3/4 or 6/8, and not {string.Join(' ', words[1..])}.";
            case ["swing", string swing, ..]:
                return Number(swing, 0.5, 4, out draft.Swing) ? null : $"the swing is a ratio such as 1.8, and not {swing}.";
            case ["straight"]:
                draft.Swing = 1;
                return null;
            case ["length", string minutes, string seconds]:
                return Number(minutes, 0, 600, out double m) && Number(seconds, 0, 59.999, out double s)
                    ? Length(draft, (60 * m) + s)
                    : $"the length is minutes and seconds such as 3:12, and not {minutes}:{seconds}.";
            case ["length", string seconds]:
                return Number(seconds, 1, 36_000, out double all) ? Length(draft, all) : $"the length is minutes and seconds such as 3:12, and not {seconds}.";
            case ["stop", string from, "to", string to]:
                if (!Number(from, 0, 36_000, out double start) || !Number(to, start, 36_000, out double end))
                {
                    return $"a stop is from one time to a later one, in seconds, and not {from} to {to}.";
                }

                draft.Stops.Add(new TrackBreak(start, end, true, 1));
                return null;
            case ["sections" or "section", .. string[] rest] when rest.Length > 0:
                return Sections(words[1..], draft);
            case ["intro", string counts] when Whole(counts, out int beats):
                draft.Sections.Add(("I", "intro", beats));
                draft.HasIntro |= draft.Sections.Count == 1;
                return null;
            case [_, string counts, ..] when Whole(counts, out _):
                return Sections(words, draft);
            default:
                return $"\"{item}\" is not understood; write tempo 112, first beat 0.35, 4/4, intro 32, A 32 verse, stop 41.5 to 43.6, swing 2 or length 3:12.";
        }
    }

    // letter or word, counts, and words that name it up to the next pair
    private static string? Sections(string[] words, Draft draft)
    {
        int i = 0;
        while (i < words.Length)
        {
            if (i + 1 >= words.Length || !Whole(words[i + 1], out int beats))
            {
                return $"a section is a letter and its counts such as A 32, and not {string.Join(' ', words[i..Math.Min(words.Length, i + 2)])}.";
            }

            int end = i + 2;
            while (end < words.Length && !(end + 1 < words.Length && Whole(words[end + 1], out _)))
            {
                end++;
            }

            draft.Sections.Add((words[i], string.Join(' ', words[(i + 2)..end]), beats));
            i = end;
        }

        return null;
    }

    private static string? Length(Draft draft, double seconds)
    {
        draft.Length = seconds;
        return null;
    }

    private static MapReading Made(Draft draft)
    {
        if (draft.Tempo == 0)
        {
            return new MapReading(null, [new TextTrouble(0, "The tempo is missing: write, for example, tempo 112.")]);
        }

        double period = 60 / draft.Tempo;
        int told = draft.Sections.Sum(s => s.Beats);
        int beats = told > 0 ? told : (int)Math.Floor((draft.Length - draft.FirstBeat) / period) + 1;
        if (beats is < 2 or > MostBeats)
        {
            return new MapReading(null, [new TextTrouble(0, "Nothing says how long the track is: write its sections, or its length such as length 3:12.")]);
        }

        List<TrackSection> sections = [];
        int at = 0;
        foreach ((string label, string name, int counts) in draft.Sections)
        {
            sections.Add(new TrackSection(at, counts, label, name, 1));
            at += counts;
        }

        double[] times = [.. Enumerable.Range(0, beats).Select(i => draft.FirstBeat + (i * period))];
        return new MapReading(
            new TrackMap
            {
                Title = draft.Title,
                Artist = draft.Artist,
                Seconds = Math.Max(draft.Length, times[^1] + period),
                Beats = CountRun.Lay(times, draft.Meter, sections.Count > 0 ? sections.Select(s => s.FirstBeat) : [0]),
                Tempo = Estimate<double>.Said(draft.Tempo),
                Meter = Estimate<Meter>.Said(draft.Meter),
                Swing = draft.Swing > 0 ? Estimate<double>.Said(draft.Swing) : new Estimate<double>(1, 0),
                Sections = [.. sections],
                Breaks = [.. draft.Stops.OrderBy(s => s.Start)],
                FirstCount = draft.HasIntro && sections.Count > 1 ? Estimate<int>.Said(sections[1].FirstBeat) : new Estimate<int>(0, 0.5),
            },
            []);
    }

    private static bool Number(string word, double least, double most, out double number)
        => double.TryParse(word, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number) && number >= least && number <= most;

    private static bool Whole(string word, out int number)
        => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out number) && number is >= 1 and <= MostBeats;

    private sealed class Draft
    {
        public double Tempo;
        public double FirstBeat;
        public double Swing;

        public string Title { get; set; } = "";

        public string Artist { get; set; } = "";

        public double Length { get; set; }

        public Meter Meter { get; set; } = Meter.Four;

        public bool HasIntro { get; set; }

        public List<(string Label, string Name, int Beats)> Sections { get; } = [];

        public List<TrackBreak> Stops { get; } = [];

        public List<TextTrouble> Troubles { get; } = [];
    }
}
