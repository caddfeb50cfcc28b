using System.Globalization;
using System.Net;
using System.Text;
using Scuff.Analysis.Fit;
using Scuff.App.Tracks;
using Scuff.Music;

namespace Scuff.App.Fitting;

/// <summary>
/// Draws a plan over its track as SVG: the music as rows of eights that begin with its sections, the walls as bands over them with number and facing, and
/// every interruption hatched with its name. Everything is said by shape and word, so that it prints in black.
/// </summary>
internal static class FitPicture
{
    private const double Left = 150;
    private const double Right = 24;
    private const double Head = 92;
    private const double CountWidth = 30;
    private const double BandTop = 20;
    private const double BandHeight = 34;
    private const double RowHeight = 74;

    private const string Paper = "#FBF8F1";
    private const string Floor = "#EADFCB";
    private const string Ink = "#14242B";
    private const string Soft = "#4A5A61";
    private const string Edge = "#8A8577";

    // A letter of 13 px in a hall's wide sans is this wide at most.
    private const double Letter = 8;

    /// <summary>The picture as the text of an SVG file.</summary>
    public static string Draw(FitAnswer answer, FitPlan plan)
    {
        FitChart chart = FitChart.Of(answer.Music, plan);
        TrackMap map = answer.Music.Map;
        double width = Left + (4 * chart.Eight * CountWidth) + Right;
        double height = Head + (chart.Rows.Count * RowHeight) + 12;
        string title = $"{(answer.Dance.Title.Length > 0 ? answer.Dance.Title : "The dance")} to “{map.Title}”";
        string told = $"{TrackWords.Length(map.Seconds)}, {TrackWords.Tempo(answer.Music.CountsPerMinute)} counts a minute, intro {TrackWords.Counts(plan.Intro)}, {FitWords.Interruptions(plan.Interruptions)}";
        StringBuilder svg = new();
        Add(svg, $"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:0} {height:0}" role="img" aria-labelledby="t d" """);
        svg.Append("font-family=\"'Atkinson Hyperlegible Next', 'Atkinson Hyperlegible', sans-serif\" font-size=\"13\">\n");
        Add(svg, $"<title id=\"t\">{Safe(title)}</title>\n<desc id=\"d\">{Safe(told + ". " + string.Join(". ", plan.Breaks.Select(b => Break(b, plan))))}</desc>\n");
        Add(svg, $"""
            <defs><pattern id="odd" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect width="8" height="8" fill="{Paper}"/><rect width="2" height="8" fill="{Edge}"/></pattern></defs>
            <rect width="100%" height="100%" fill="{Paper}"/>
            <text x="24" y="40" font-size="25" font-weight="bold" fill="{Ink}">{Safe(title)}</text>
            <text x="24" y="66" font-size="16" fill="{Soft}">{Safe(told)}</text>

            """);
        for (int i = 0; i < chart.Rows.Count; i++)
        {
            Add(svg, $"<g transform=\"translate({Left} {Head + (i * RowHeight):0})\">\n");
            Row(svg, chart, chart.Rows[i], map);
            svg.Append("</g>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static void Row(StringBuilder svg, FitChart chart, FitChartRow row, TrackMap map)
    {
        string section = row.Section < 0 ? "before" : TrackWords.Section(map.Sections[row.Section]);
        string weight = row.BeginsSection ? "bold" : "normal";
        string words = row.BeginsSection || row.Section < 0 ? Short(section, 14) : $"({Short(section, 12)})";
        Add(svg, $"<text x=\"-126\" y=\"{BandTop + 16}\" font-weight=\"{weight}\" fill=\"{Ink}\">{Safe(words)}</text>");
        Add(svg, $"<text x=\"-126\" y=\"{BandTop + 33}\" font-size=\"12\" fill=\"{Soft}\">{TrackWords.Time(row.Seconds)}</text>\n");
        foreach (FitChartSpan span in chart.Spans.Where(s => s.From < row.From + row.Counts && s.To > row.From))
        {
            Band(svg, span, row);
        }

        if (chart.Ending is { } ending && ending >= row.From && ending < row.From + row.Counts)
        {
            double x = (ending - row.From) * CountWidth;
            Add(svg, $"<path d=\"M{x:0.#} {BandTop - 3}v{BandHeight + 6}\" stroke=\"{Ink}\" stroke-width=\"4\" stroke-dasharray=\"4 3\"/>");
            Add(svg, $"<text x=\"{x:0.#}\" y=\"{BandTop - 5}\" font-size=\"12\" font-weight=\"bold\" fill=\"{Ink}\">ending</text>\n");
        }

        // counts below, the ones taller
        StringBuilder ones = new();
        StringBuilder small = new();
        for (int i = 0; i < row.Counts; i++)
        {
            double x = i * CountWidth;
            if (i % chart.Eight == 0)
            {
                Add(ones, $"M{x:0.#} {BandTop + BandHeight}v14");
                Add(svg, $"<text x=\"{x + 4:0.#}\" y=\"{BandTop + BandHeight + 15}\" font-size=\"11\" fill=\"{Soft}\">{(i / chart.Eight) + 1}</text>");
            }
            else
            {
                Add(small, $"M{x:0.#} {BandTop + BandHeight}v5");
            }
        }

        Add(svg, $"<path d=\"{small}\" stroke=\"{Edge}\"/><path d=\"{ones}\" stroke=\"{Ink}\"/>\n");
    }

    private static void Band(StringBuilder svg, FitChartSpan span, FitChartRow row)
    {
        int from = Math.Max(span.From, row.From);
        int to = Math.Min(span.To, row.From + row.Counts);
        double x = (from - row.From) * CountWidth;
        double width = (to - from) * CountWidth;
        bool begins = span.From >= row.From;
        string fill = span.Kind switch
        {
            FitChartKind.Wall => span.Wall % 2 == 1 ? Floor : Paper,
            FitChartKind.Intro => Paper,
            _ => "url(#odd)",
        };
        string dash = span.Kind == FitChartKind.Intro ? " stroke-dasharray=\"3 4\"" : "";
        Add(svg, $"<rect x=\"{x:0.#}\" y=\"{BandTop}\" width=\"{width:0.#}\" height=\"{BandHeight}\" fill=\"{fill}\" stroke=\"{Ink}\"{dash}/>");
        string facing = span.Facing is { } f ? $" faces {f}" : "";
        string part = span.Part.Length > 0 ? $" {span.Part}" : "";
        string name = string.Create(CultureInfo.InvariantCulture, $"wall {span.Wall}{part}");
        string[] tries = span.Kind switch
        {
            FitChartKind.Intro => begins ? ["intro"] : ["(intro)"],
            FitChartKind.Hold => [$"hold {span.To - span.From}", "hold"],
            FitChartKind.Tag => [Name(span), "tag"],
            _ when begins && span.Starts => [name + facing, name, string.Create(CultureInfo.InvariantCulture, $"{span.Wall}")],
            _ => [$"({name})", string.Create(CultureInfo.InvariantCulture, $"({span.Wall})")],
        };
        string? words = tries.FirstOrDefault(t => (t.Length * Letter) + 8 < width);
        double above = BandTop - 5;
        if (words is null && span.Kind is FitChartKind.Tag or FitChartKind.Hold)
        {
            // too narrow to hold its name: it stands above
            Add(svg, $"<text x=\"{x:0.#}\" y=\"{above}\" font-size=\"12\" font-weight=\"bold\" fill=\"{Ink}\">{Safe(tries[0])}</text>");
        }
        else if (words is not null)
        {
            if (span.Kind is FitChartKind.Tag or FitChartKind.Hold)
            {
                Add(svg, $"<rect x=\"{x + 3:0.#}\" y=\"{BandTop + 7}\" width=\"{(words.Length * Letter) + 2:0.#}\" height=\"20\" fill=\"{Paper}\"/>");
            }

            string bold = begins && (span.Starts || span.Kind is FitChartKind.Tag or FitChartKind.Hold) ? "bold" : "normal";
            Add(svg, $"<text x=\"{x + 5:0.#}\" y=\"{BandTop + 22}\" font-weight=\"{bold}\" fill=\"{Ink}\">{Safe(words)}</text>");
        }

        if (span.IsCut && span.To <= row.From + row.Counts)
        {
            Add(svg, $"<text x=\"{x + width:0.#}\" y=\"{above}\" font-size=\"12\" font-weight=\"bold\" text-anchor=\"middle\" fill=\"{Ink}\">restart</text>");
            Add(svg, $"<path d=\"M{x + width:0.#} {BandTop - 3}v{BandHeight + 6}\" stroke=\"{Ink}\" stroke-width=\"4\"/>");
        }

        svg.Append('\n');
    }

    private static string Name(FitChartSpan span) => span.Name.Length > 0 ? span.Name : $"{span.To - span.From} more";

    private static string Break(FitBreak at, FitPlan plan)
        => $"{FitWords.Wall(at.Wall, at.Part)}, after {TrackWords.Counts(at.After)}: {FitWords.Done(at, plan.Dance)}, facing {FitWords.Facing(at.Facing)}";

    private static string Short(string words, int most) => words.Length <= most ? words : words[..(most - 1)] + "…";

    private static void Add(StringBuilder svg, FormattableString words) => svg.Append(words.ToString(CultureInfo.InvariantCulture));

    private static string Safe(string words)
        => WebUtility.HtmlEncode(Plain.Line(new string([.. words.Where(c => !char.IsSurrogate(c) && c is not ('\uFFFE' or '\uFFFF'))])));
}
