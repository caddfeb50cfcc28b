using System.Globalization;
using System.Net;
using System.Text;
using Scuff.Music;

namespace Scuff.App.Tracks;

/// <summary>
/// Draws a track as SVG, like a page of text: a row is 40 seconds, above it the sections as named blocks, in it how loud the music is, below it the
/// counts. Everything is said by shape and word, so that it prints in black.
/// </summary>
internal static class TrackPicture
{
    private const double SecondsInRow = 40;
    private const double Left = 64;
    private const double Width = 1120;
    private const double Right = 24;
    private const double Head = 92;
    private const double BlockHeight = 24;
    private const double WaveTop = 30;
    private const double WaveHeight = 72;
    private const double TicksTop = WaveTop + WaveHeight + 2;
    private const double RowHeight = TicksTop + 46;

    private const string Paper = "#FBF8F1";
    private const string Floor = "#EADFCB";
    private const string Ink = "#14242B";
    private const string Soft = "#4A5A61";
    private const string Edge = "#8A8577";
    private const string Wave = "#B4BFC2";

    // A letter of 14 px in a hall's wide sans is this wide at most.
    private const double Letter = 8.6;

    /// <summary>The picture as the text of an SVG file.</summary>
    public static string Draw(HeardTrack track)
    {
        TrackMap map = track.Map!;
        int rows = Math.Max(1, (int)Math.Ceiling(map.Seconds / SecondsInRow));
        double height = Head + (rows * RowHeight) + 8;
        string title = map.Title.Length > 0 ? map.Title : track.Stem;
        string artist = map.Artist.Length > 0 ? " by " + map.Artist : "";
        StringBuilder svg = new();
        Add(svg, $"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {Left + Width + Right:0} {height:0}" role="img" aria-labelledby="t d" """);
        svg.Append("font-family=\"'Atkinson Hyperlegible Next', 'Atkinson Hyperlegible', sans-serif\" font-size=\"14\">\n");
        Add(svg, $"<title id=\"t\">{Safe(title + artist)}</title>\n<desc id=\"d\">{Safe(Told(map))}</desc>\n");
        Add(svg, $"""
            <defs><pattern id="stop" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect width="8" height="8" fill="{Paper}"/><rect width="2" height="8" fill="{Edge}"/></pattern></defs>
            <rect width="100%" height="100%" fill="{Paper}"/>
            <text x="{Left}" y="40" font-size="25" font-weight="bold" fill="{Ink}">{Safe(title + artist)}</text>
            <text x="{Left}" y="66" font-size="16" fill="{Soft}">{Safe(Told(map))}</text>

            """);
        float loudest = map.Loudness.Decibels.Count == 0 ? 0 : map.Loudness.Decibels.Max();
        for (int row = 0; row < rows; row++)
        {
            double from = row * SecondsInRow;
            double to = Math.Min(from + SecondsInRow, map.Seconds);
            Add(svg, $"<g transform=\"translate({Left} {Head + (row * RowHeight):0})\">\n");
            Add(svg, $"<text x=\"-10\" y=\"{WaveTop + (WaveHeight / 2) + 5:0}\" text-anchor=\"end\" fill=\"{Soft}\">{TrackWords.Length(from)}</text>\n");
            Loudness(svg, map.Loudness, loudest, from, to);
            Stops(svg, map, from, to);
            Blocks(svg, map, from, to);
            Ticks(svg, map, from, to);
            svg.Append("</g>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static string Told(TrackMap map) => map.Beats.Count == 0
        ? string.Create(CultureInfo.InvariantCulture, $"{TrackWords.Length(map.Seconds)}. {map.Remark}").TrimEnd()
        : string.Create(
            CultureInfo.InvariantCulture,
            $"{TrackWords.Length(map.Seconds)}, {TrackWords.Tempo(map.Tempo.Value)} beats a minute, {TrackWords.Meter(map.Meter.Value)}, {TrackWords.Swing(map.Swing.Value)}")
            + (map.FirstCount.Value >= 0 && TrackWords.IntroOf(map) > 0 ? $", intro {TrackWords.Counts(TrackWords.IntroOf(map))}" : "");

    private static double X(double seconds, double from) => Math.Clamp((seconds - from) / SecondsInRow, 0, 1) * Width;

    private static void Loudness(StringBuilder svg, LoudnessCurve loudness, float loudest, double from, double to)
    {
        int first = (int)Math.Floor(from * loudness.PerSecond);
        int last = Math.Min((int)Math.Ceiling(to * loudness.PerSecond), loudness.Decibels.Count) - 1;
        double middle = WaveTop + (WaveHeight / 2);
        Add(svg, $"<line x1=\"0\" y1=\"{middle:0}\" x2=\"{X(to, from):0.#}\" y2=\"{middle:0}\" stroke=\"{Wave}\"/>\n");
        if (last <= first)
        {
            return;
        }

        StringBuilder above = new();
        StringBuilder below = new();
        for (int i = first; i <= last; i++)
        {
            double x = X((i + 0.5) / loudness.PerSecond, from);
            double half = Math.Pow(10, (loudness.Decibels[i] - loudest) / 20) * WaveHeight / 2;
            Add(above, $"{(i == first ? "M" : "L")}{x:0.#} {middle - half:0.#}");
            below.Insert(0, string.Create(CultureInfo.InvariantCulture, $"L{x:0.#} {middle + half:0.#}"));
        }

        Add(svg, $"<path d=\"{above}{below}Z\" fill=\"{Wave}\"/>\n");
    }

    private static void Stops(StringBuilder svg, TrackMap map, double from, double to)
    {
        foreach (TrackBreak stop in map.Breaks.Where(b => b.Start < to && b.End > from))
        {
            double x = X(stop.Start, from);
            double width = Math.Max(X(stop.End, from) - x, 2);
            string word = stop.IsStop ? "stop" : "thin";
            Add(svg, $"<rect x=\"{x:0.#}\" y=\"{WaveTop}\" width=\"{width:0.#}\" height=\"{WaveHeight}\" fill=\"url(#stop)\" stroke=\"{Ink}\"/>\n");
            if (width > 34)
            {
                double middle = x + (width / 2);
                Add(svg, $"<rect x=\"{middle - 16:0.#}\" y=\"{WaveTop + 26}\" width=\"32\" height=\"20\" fill=\"{Paper}\"/>");
                Add(svg, $"<text x=\"{middle:0.#}\" y=\"{WaveTop + 41}\" text-anchor=\"middle\" fill=\"{Ink}\">{word}</text>\n");
            }
        }
    }

    private static void Blocks(StringBuilder svg, TrackMap map, double from, double to)
    {
        List<string> letters = [.. map.Sections.Select(s => s.Label).Distinct()];
        foreach (TrackSection section in map.Sections)
        {
            double start = map.Beats[section.FirstBeat].Seconds;
            int next = section.FirstBeat + section.Beats;
            double end = next < map.Beats.Count ? map.Beats[next].Seconds : map.Seconds;
            if (start >= to || end <= from)
            {
                continue;
            }

            double x = X(start, from);
            double width = X(end, from) - x;
            string fill = letters.IndexOf(section.Label) % 2 == 0 ? Floor : Paper;
            Add(svg, $"<rect x=\"{x:0.#}\" y=\"0\" width=\"{width:0.#}\" height=\"{BlockHeight}\" fill=\"{fill}\" stroke=\"{Ink}\"/>\n");
            string counts = string.Create(CultureInfo.InvariantCulture, $"{section.Beats}");
            string[] tries = start < from
                ? [$"({TrackWords.Section(section)})", $"({section.Label})"]
                : [$"{TrackWords.Section(section)}, {counts} counts", $"{TrackWords.Section(section)}, {counts}", section.Label];
            if (tries.FirstOrDefault(t => (t.Length * Letter) + 10 < width) is { } words)
            {
                string weight = start < from ? "normal" : "bold";
                Add(svg, $"<text x=\"{x + 6:0.#}\" y=\"17\" font-weight=\"{weight}\" fill=\"{Ink}\">{Safe(words)}</text>\n");
            }
        }
    }

    private static void Ticks(StringBuilder svg, TrackMap map, double from, double to)
    {
        StringBuilder small = new();
        StringBuilder ones = new();
        Dictionary<int, OddEight> odd = OddEight.In(map).ToDictionary(o => o.FirstBeat);
        TrackSection? last = null;
        int eight = 0;
        int section = 0;
        double free = 0;
        for (int i = 0; i < map.Beats.Count; i++)
        {
            TrackBeat beat = map.Beats[i];
            while (section < map.Sections.Count && map.Sections[section].FirstBeat <= i)
            {
                last = map.Sections[section++];
                eight = 0;
            }

            eight += beat.Count == 1 ? 1 : 0;
            if (beat.Seconds < from || beat.Seconds >= to)
            {
                continue;
            }

            double x = X(beat.Seconds, from);
            if (beat.Count != 1)
            {
                Add(small, $"M{x:0.#} {TicksTop}v{(beat.BarPosition == 1 ? 10 : 6)}");
                continue;
            }

            Add(ones, $"M{x:0.#} {WaveTop}V{TicksTop + 16}");
            bool isOdd = odd.TryGetValue(i, out OddEight? short8);
            string words = isOdd ? TrackWords.Counts(short8!.Beats) : last is null ? "" : string.Create(CultureInfo.InvariantCulture, $"{eight}");
            if (words.Length > 0 && x + 4 >= free)
            {
                // near the end of a row there is room on the left only
                bool goesLeft = x + 4 + (words.Length * 7) > Width + Right;
                Add(svg, $"<text x=\"{(goesLeft ? x - 4 : x + 4):0.#}\" y=\"{TicksTop + 22}\" font-size=\"12\" fill=\"{(isOdd ? Ink : Soft)}\"");
                svg.Append(goesLeft ? " text-anchor=\"end\"" : "");
                svg.Append(isOdd ? " font-weight=\"bold\" text-decoration=\"underline\">" : ">").Append(words).Append("</text>\n");
                free = x + 8 + (words.Length * 7);
            }
        }

        Add(svg, $"<path d=\"{small}\" stroke=\"{Edge}\" fill=\"none\"/>\n<path d=\"{ones}\" stroke=\"{Ink}\" stroke-width=\"1.6\" fill=\"none\"/>\n");
        if (map.FirstCount.Value >= 0 && map.Beats[map.FirstCount.Value].Seconds is double start && start >= from && start < to)
        {
            double x = X(start, from);
            Add(svg, $"<path d=\"M{x:0.#} {TicksTop + 18}l6 11h-12z\" fill=\"{Ink}\"/>");
            bool goesLeft = x > Width - 90;
            Add(svg, $"<text x=\"{(goesLeft ? x - 10 : x + 10):0.#}\" y=\"{TicksTop + 36}\" font-size=\"12\" font-weight=\"bold\" fill=\"{Ink}\"");
            svg.Append(goesLeft ? " text-anchor=\"end\"" : "").Append(">the dance starts</text>\n");
        }
    }

    private static void Add(StringBuilder svg, FormattableString words) => svg.Append(words.ToString(CultureInfo.InvariantCulture));

    // what XML forbids in a text is not in it, whatever a file says of itself
    private static string Safe(string words) => WebUtility.HtmlEncode(Plain.Line(new string([.. words.Where(c => !char.IsSurrogate(c) && c is not ('\uFFFE' or '\uFFFF'))])));
}
