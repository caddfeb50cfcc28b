using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;
using Scuff;
using Scuff.App.Spreadsheets;
using Tests.App.Handouts;
using Tests.Sheets;

namespace Tests.App.Spreadsheets;

public sealed class XlsxGridsTests
{
    [Fact]
    public async Task The_workbook_is_what_its_standard_describes()
    {
        using SpreadsheetDocument book = await OpenAsync([.. BookGrids.Of(HandoutSamples.Book), EveningGrid.Of(EveningSamples.Social)]);

        Assert.Empty(new OpenXmlValidator(FileFormatVersions.Office2019).Validate(book, TestContext.Current.CancellationToken).Select(e => $"{e.Path?.XPath}: {e.Description}"));
        Assert.Equal(["Dances", "Sessions", "Known", "Classes", "Programme"], book.WorkbookPart!.Workbook!.Descendants<Sheet>().Select(s => s.Name!.Value));
    }

    [Fact]
    public async Task Every_cell_comes_back_as_what_it_is()
    {
        Grid grid = BookGrids.Sessions(HandoutSamples.Book);
        using SpreadsheetDocument book = await OpenAsync([grid]);

        Row[] rows = [.. Only(book).Descendants<Row>()];

        Assert.Equal(grid.Columns.Select(c => c.Heading), rows[0].Elements<Cell>().Select(Words));
        Assert.Equal(grid.Rows.Count, rows.Length - 1);
        for (int i = 0; i < grid.Rows.Count; i++)
        {
            Cell[] cells = [.. rows[i + 1].Elements<Cell>()];
            for (int j = 0; j < grid.Columns.Count; j++)
            {
                AssertSame(grid.Rows[i][j], cells.SingleOrDefault(c => c.CellReference == $"{XlsxGrids.ColumnName(j + 1)}{i + 2}") ?? cells[j], book);
            }
        }
    }

    [Fact]
    public async Task Times_and_lengths_are_parts_of_a_day_with_a_format()
    {
        using SpreadsheetDocument book = await OpenAsync([EveningGrid.Of(EveningSamples.Small)]);
        Cell[] cells = [.. Only(book).Descendants<Row>().ElementAt(1).Elements<Cell>()];

        Assert.Equal(19.5 / 24, double.Parse(cells[0].CellValue!.Text, CultureInfo.InvariantCulture), 9);
        Assert.Equal("hh:mm", FormatOf(cells[0], book));
        Assert.Equal("[m]:ss", FormatOf(cells[8], book));
    }

    [Fact]
    public async Task The_headings_stand_still_and_columns_are_as_broad_as_asked()
    {
        Grid grid = BookGrids.Known(HandoutSamples.Book);
        using SpreadsheetDocument book = await OpenAsync([grid]);
        Worksheet sheet = Only(book);

        Pane pane = sheet.Descendants<Pane>().Single();
        Assert.Equal((1.0, 1.0, PaneStateValues.Frozen), (pane.VerticalSplit!.Value, pane.HorizontalSplit!.Value, pane.State!.Value));
        Assert.Equal(grid.Columns.Select(c => (double)c.Letters), sheet.Descendants<Column>().Select(c => c.Width!.Value));
        Assert.Equal("A1:D3", sheet.Descendants<AutoFilter>().Single().Reference!.Value);
    }

    [Fact]
    public async Task Hostile_words_are_words_and_never_a_formula()
    {
        Grid grid = new("Words", [new GridColumn("Words", 10)], [.. HandoutSamples.Hostile.Append(new string('x', 40_000)).Select(h => (ValueList<GridCell>)[new GridCell.Text(h)])]);
        using SpreadsheetDocument book = await OpenAsync([grid]);

        Assert.Empty(new OpenXmlValidator(FileFormatVersions.Office2019).Validate(book, TestContext.Current.CancellationToken).Select(e => e.Description));
        Assert.Empty(Only(book).Descendants<CellFormula>());
        string[] read = [.. Only(book).Descendants<Row>().Skip(1).SelectMany(r => r.Elements<Cell>()).Select(Words)];
        Assert.Equal(HandoutSamples.Hostile[0], read[0]);
        Assert.Equal("Line one\nline two\nand a tab\there", read[1]);
        Assert.Equal("=HYPERLINK(\"http://example.org\")", read[5]);
        Assert.Equal("bell and half a character \ufffd", read[6]);
        Assert.Equal(32_767, read[^1].Length);
    }

    private static void AssertSame(GridCell cell, Cell read, SpreadsheetDocument book)
    {
        switch (cell)
        {
            case GridCell.Text text:
                Assert.Equal(text.Words, Words(read));
                break;
            case GridCell.Number number:
                Assert.Equal(number.Value, double.Parse(read.CellValue!.Text, CultureInfo.InvariantCulture));
                break;
            case GridCell.Day day:
                Assert.Equal(day.Date, DateOnly.FromDateTime(DateTime.FromOADate(double.Parse(read.CellValue!.Text, CultureInfo.InvariantCulture))));
                Assert.Equal("yyyy\\-mm\\-dd", FormatOf(read, book));
                break;
            default:
                Assert.Fail($"No {cell} is expected here.");
                break;
        }
    }

    private static string Words(Cell cell) => cell.InlineString?.InnerText ?? cell.CellValue?.Text ?? "";

    private static string FormatOf(Cell cell, SpreadsheetDocument book)
    {
        Stylesheet styles = book.WorkbookPart!.WorkbookStylesPart!.Stylesheet!;
        uint format = styles.CellFormats!.Elements<CellFormat>().ElementAt((int)cell.StyleIndex!.Value).NumberFormatId!.Value;
        return styles.NumberingFormats!.Elements<NumberingFormat>().Single(f => f.NumberFormatId!.Value == format).FormatCode!.Value!;
    }

    private static Worksheet Only(SpreadsheetDocument book) => book.WorkbookPart!.WorksheetParts.Single().Worksheet!;

    private static async Task<SpreadsheetDocument> OpenAsync(IReadOnlyList<Grid> grids)
    {
        MemoryStream file = new();
        await XlsxGrids.WriteAsync("Harbour Club", grids, file, TestContext.Current.CancellationToken);
        return SpreadsheetDocument.Open(file, isEditable: false);
    }
}
