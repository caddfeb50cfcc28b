using System.Globalization;
using System.Text;

namespace Scuff.Music.Labels;

/// <summary>
/// The label files that editors of sound read and write: a line each, start, end and label with tabs between, times in seconds. Read with what editors
/// in other countries make of it: decimal commas, a head, point labels without an end, empty lines, any line ends.
/// </summary>
public static class LabelFile
{
    private const double Longest = 360_000;

    /// <summary>The lines as text, times to the millisecond's tenth, ending with a line end; tabs and line ends in labels become spaces.</summary>
    public static string Write(IEnumerable<LabelLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        StringBuilder text = new();
        foreach (LabelLine line in lines)
        {
            string label = new([.. line.Label.Select(c => char.IsControl(c) ? ' ' : c)]);
            text.Append(CultureInfo.InvariantCulture, $"{line.Start:F4}\t{line.End:F4}\t{label}\n");
        }

        return text.ToString();
    }

    /// <summary>Reads a label file. Never throws: a line that is none is told and left out.</summary>
    public static LabelReading Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        List<(int Number, string[] Cells)> rows = [];
        int number = 0;
        foreach (string raw in text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n'))
        {
            number++;

            // a line that begins with a backslash tells the pitches of the one before
            if (raw.AsSpan().Trim().Length > 0 && !raw.StartsWith('\\'))
            {
                rows.Add((number, [.. raw.Split('\t', 3).Select(c => c.Trim())]));
            }
        }

        // two columns are a time and a label where the second cannot be an end
        bool arePoints = rows.Any(r => r.Cells.Length == 2 && IsTime(r.Cells[0], out double a) && !(IsTime(r.Cells[1], out double b) && b >= a));
        List<LabelLine> lines = [];
        List<TextTrouble> troubles = [];
        foreach ((int at, string[] cells) in rows)
        {
            if (!IsTime(cells[0], out double start))
            {
                // words above the first line are a head
                if (lines.Count > 0 || troubles.Count > 0 || cells[0].AsSpan().ContainsAnyInRange('0', '9'))
                {
                    troubles.Add(new TextTrouble(at, $"\"{Short(cells[0])}\" is no time in seconds."));
                }

                continue;
            }

            double end = start;
            if (cells.Length > 1 && !(arePoints && cells.Length == 2) && !IsTime(cells[1], out end))
            {
                troubles.Add(new TextTrouble(at, $"\"{Short(cells[1])}\" is no time in seconds; start, end and label stand with tabs between."));
                continue;
            }

            if (end < start)
            {
                troubles.Add(new TextTrouble(at, $"the label ends at {cells[1]}, before it begins at {cells[0]}."));
                continue;
            }

            lines.Add(new LabelLine(start, end, cells.Length > 2 ? cells[2] : arePoints && cells.Length == 2 ? cells[1] : ""));
        }

        if (lines.Count == 0 && troubles.Count == 0)
        {
            troubles.Add(new TextTrouble(0, "There is no label in it: a line is start, end and label with tabs between."));
        }

        return new LabelReading([.. lines.OrderBy(l => l.Start)], [.. troubles]);
    }

    private static bool IsTime(string cell, out double seconds)
        => double.TryParse(cell.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out seconds)
            && seconds is >= 0 and <= Longest;

    private static string Short(string words) => words.Length <= 40 ? words : words[..40] + "...";
}
