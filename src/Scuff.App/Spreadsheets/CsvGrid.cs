using System.Globalization;
using System.Text;

namespace Scuff.App.Spreadsheets;

/// <summary>
/// A table as CSV. Source: RFC 4180 (commas, quotes doubled, lines end in CR LF); the mark before UTF-8 is for spreadsheets, which otherwise read another encoding.
/// Words stand in quotes, so that they stay in one cell where a spreadsheet parts at semicolons. Words that a spreadsheet would take for a formula get an
/// apostrophe before them (source: OWASP, CSV Injection).
/// </summary>
internal static class CsvGrid
{
    /// <summary>Its media type.</summary>
    public const string MediaType = "text/csv; charset=utf-8; header=present";

    private const string BeginsFormula = "=+-@\t\r\n＝＋－＠";

    /// <summary>The table as text, without the mark.</summary>
    public static string Write(Grid grid)
    {
        StringBuilder text = new();
        Row(grid.Columns.Select(c => Quoted(c.Heading)));
        foreach (ValueList<GridCell> row in grid.Rows)
        {
            Row(row.Select(Written));
        }

        return text.ToString();

        void Row(IEnumerable<string> cells) => text.AppendJoin(',', cells).Append("\r\n");
    }

    private static string Written(GridCell cell) => cell switch
    {
        GridCell.Text { Words.Length: 0 } => "",
        GridCell.Text text => Quoted(text.Words),
        GridCell.Number number => number.Value.ToString("0.##", CultureInfo.InvariantCulture),
        GridCell.Day day => day.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        GridCell.Clock clock => clock.Time.ToString("HH:mm", CultureInfo.InvariantCulture),
        GridCell.Length length => string.Create(CultureInfo.InvariantCulture, $"{length.Seconds / 60}:{length.Seconds % 60:00}"),
        _ => throw new ArgumentOutOfRangeException(nameof(cell)),
    };

    private static string Quoted(string words)
    {
        // blanks before the sign do not keep every spreadsheet from it
        bool isFormula = words.AsSpan().TrimStart(' ') is [var first, ..] && BeginsFormula.Contains(first, StringComparison.Ordinal);
        return $"\"{(isFormula ? "'" : "")}{words.Replace("\0", "", StringComparison.Ordinal).Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
