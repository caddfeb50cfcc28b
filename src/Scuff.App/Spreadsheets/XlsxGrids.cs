using System.Text;
using SpreadCheetah;
using SpreadCheetah.Metadata;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace Scuff.App.Spreadsheets;

/// <summary>Tables as the sheets of one workbook: days, times and numbers as such, the headings standing still, each column as broad as what is in it.</summary>
internal static class XlsxGrids
{
    /// <summary>Its media type.</summary>
    public const string MediaType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    // what a cell may hold: Microsoft, Excel specifications and limits
    private const int LongestText = 32_767;

    /// <summary>Writes the workbook.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="grids">At least one table; their names differ and have at most 31 letters.</param>
    /// <param name="stream">Where it goes; not closed.</param>
    /// <param name="cancel">Ends it early.</param>
    public static async Task WriteAsync(string title, IReadOnlyList<Grid> grids, Stream stream, CancellationToken cancel)
    {
        using MemoryStream made = new();
        SpreadCheetahOptions options = new() { DocumentProperties = new DocumentProperties { Title = Clean(title) } };
        await using (Spreadsheet book = await Spreadsheet.CreateNewAsync(made, options, cancel))
        {
            Styles styles = new(book);
            foreach (Grid grid in grids)
            {
                WorksheetOptions sheet = new() { FrozenRows = 1, FrozenColumns = 1 };
                for (int i = 0; i < grid.Columns.Count; i++)
                {
                    sheet.Column(i + 1).Width = grid.Columns[i].Letters;
                }

                if (grid.Rows.Count > 0)
                {
                    sheet.AutoFilter = new AutoFilterOptions($"A1:{ColumnName(grid.Columns.Count)}{grid.Rows.Count + 1}");
                }

                await book.StartWorksheetAsync(grid.Name, sheet, cancel);
                await book.AddHeaderRowAsync([.. grid.Columns.Select(c => Clean(c.Heading))], styles.Heading, cancel);
                foreach (ValueList<GridCell> row in grid.Rows)
                {
                    await book.AddRowAsync([.. row.Select(styles.Of)], cancel);
                }
            }

            await book.FinishAsync(cancel);
        }

        await stream.WriteAsync(made.GetBuffer().AsMemory(0, (int)made.Length), cancel);
    }

    /// <summary>The name of a column: <c>A</c> for 1, <c>AA</c> for 27.</summary>
    public static string ColumnName(int number) => number <= 26 ? ((char)('A' + number - 1)).ToString() : ColumnName((number - 1) / 26) + ColumnName(((number - 1) % 26) + 1);

    // XML 1.0 has no control characters but ends of lines and tabs, and no halves of characters.
    private static string Clean(string words)
    {
        StringBuilder clean = new(words.Length);
        foreach (Rune rune in words.ReplaceLineEndings("\n").EnumerateRunes())
        {
            if ((!Rune.IsControl(rune) || rune.Value is '\n' or '\t') && rune.Value is not (0xFFFE or 0xFFFF) && clean.Length + rune.Utf16SequenceLength <= LongestText)
            {
                clean.Append(rune.ToString());
            }
        }

        return clean.ToString();
    }

    private sealed class Styles
    {
        private readonly StyleId _words;
        private readonly StyleId _day;
        private readonly StyleId _clock;
        private readonly StyleId _length;

        public Styles(Spreadsheet book)
        {
            Alignment top = new() { Vertical = VerticalAlignment.Top, WrapText = true };
            Heading = book.AddStyle(new Style { Font = { Bold = true }, Alignment = top });
            _words = book.AddStyle(new Style { Alignment = top });
            _day = book.AddStyle(new Style { Alignment = top, Format = NumberFormat.Custom("yyyy\\-mm\\-dd") });
            _clock = book.AddStyle(new Style { Alignment = top, Format = NumberFormat.Custom("hh:mm") });
            _length = book.AddStyle(new Style { Alignment = top, Format = NumberFormat.Custom("[m]:ss") });
        }

        public StyleId Heading { get; }

        public StyledCell Of(GridCell cell) => cell switch
        {
            GridCell.Text { Words.Length: 0 } => new StyledCell((string?)null, null),
            GridCell.Text text => new StyledCell(Clean(text.Words), _words),
            GridCell.Number number => new StyledCell(number.Value, _words),
            GridCell.Day day => new StyledCell(day.Date.ToDateTime(TimeOnly.MinValue), _day),
            GridCell.Clock clock => new StyledCell(clock.Time.ToTimeSpan().TotalDays, _clock),
            GridCell.Length length => new StyledCell(TimeSpan.FromSeconds(length.Seconds).TotalDays, _length),
            _ => throw new ArgumentOutOfRangeException(nameof(cell)),
        };
    }
}
