using CsvHelper;
using Scuff;
using Scuff.App.Spreadsheets;
using Tests.App.Handouts;

namespace Tests.App.Spreadsheets;

public sealed class CsvGridTests
{
    [Fact]
    public void Another_reader_reads_every_cell_as_it_was()
    {
        Grid grid = BookGrids.Sessions(HandoutSamples.Book);
        List<string[]> read = Read(CsvGrid.Write(grid));

        Assert.Equal(grid.Columns.Select(c => c.Heading), read[0]);
        Assert.Equal(grid.Rows.Count, read.Count - 1);
        Assert.Equal(["2026-11-10", "Tuesday Beginners", "held", "", "Taught", "Tin Lantern", "5", "40", "Marta got lost in the tag", ""], read.Single(r => r[4] == "Taught"));
        Assert.Contains(read, r => r[5] == "A visitor's dance; new, and long");
    }

    [Fact]
    public void Words_of_every_kind_come_back()
    {
        string[] words = [.. HandoutSamples.Hostile.Where(h => h.Trim().Length > 0 && h[0] != '=' && !h.Contains('\ud83d', StringComparison.Ordinal) && h.Length < 100)];

        List<string[]> read = Read(CsvGrid.Write(Of(words)));

        Assert.Equal(words, read.Skip(1).Select(r => r[0]));
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+44 123")]
    [InlineData("-5")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("\r=1")]
    [InlineData("  =1")]
    [InlineData("＝1")]
    public void What_a_spreadsheet_takes_for_a_formula_becomes_words(string words) => Assert.Equal("'" + words, Read(CsvGrid.Write(Of([words])))[1][0]);

    [Fact]
    public void A_semicolon_cannot_part_a_cell_where_spreadsheets_part_at_semicolons()
        => Assert.Contains("\r\n\"a;=1+1\"\r\n", CsvGrid.Write(Of(["a;=1+1"])), StringComparison.Ordinal);

    [Fact]
    public void Every_line_ends_as_the_standard_wants_it()
        => Assert.Equal("\"Words\"\r\n\"a\"\r\n\r\n", CsvGrid.Write(Of(["a", ""])));

    private static Grid Of(IEnumerable<string> words) => new("Words", [new GridColumn("Words", 10)], [.. words.Select(w => (ValueList<GridCell>)[new GridCell.Text(w)])]);

    private static List<string[]> Read(string text)
    {
        using CsvReader reader = CsvReader.FromText(text, new CsvReaderOptions { HasHeader = false, Mode = CsvMode.Rfc4180, SkipEmptyLines = false, TrimWhitespace = false });
        List<string[]> rows = [];
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        }

        return rows;
    }
}
