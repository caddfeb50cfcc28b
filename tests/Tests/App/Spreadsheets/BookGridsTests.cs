using Scuff;
using Scuff.App.Spreadsheets;
using Tests.App.Handouts;

namespace Tests.App.Spreadsheets;

public sealed class BookGridsTests
{
    [Fact]
    public void A_dance_tells_when_it_was_taught_and_last_danced_and_who_knows_it()
    {
        Grid grid = BookGrids.Dances(HandoutSamples.Book);

        Assert.Equal(["=1+1", "First Tide", "Tin Lantern"], grid.Rows.Select(r => Words(r[0])));
        ValueList<GridCell> lantern = grid.Rows[2];
        Assert.Equal(new GridCell.Day(new DateOnly(2026, 11, 10)), Cell(grid, lantern, "First taught"));
        Assert.Equal(new GridCell.Day(new DateOnly(2026, 11, 10)), Cell(grid, lantern, "Last danced"));
        Assert.Equal("Net Loft Improvers: with cues; Tuesday Beginners: knows the start", Words(Cell(grid, lantern, "Known by")));
        Assert.Equal(new GridCell.Number(112.5), Cell(grid, lantern, "Fastest bpm"));
    }

    [Fact]
    public void What_is_only_planned_is_not_danced_yet()
    {
        Grid grid = BookGrids.Dances(HandoutSamples.Book with { Sessions = [.. HandoutSamples.Book.Sessions.Where(s => !s.IsHeld)] });

        Assert.All(grid.Rows, r => Assert.Equal(GridCell.None, Cell(grid, r, "Last danced")));
    }

    [Fact]
    public void The_last_mark_holds_and_one_taken_back_is_none()
    {
        Grid grid = BookGrids.Known(HandoutSamples.Book);

        // ended classes stand to the right
        Assert.Equal(["Dance", "By appointment", "Tuesday Beginners", "Net Loft Improvers"], grid.Columns.Select(c => c.Heading));
        Assert.Equal(["First Tide", "", "alone", ""], grid.Rows[0].Select(Words));
        Assert.Equal(["Tin Lantern", "", "knows the start", "with cues"], grid.Rows[1].Select(Words));
        Assert.Equal(2, grid.Rows.Count);
    }

    [Fact]
    public void A_mark_of_a_day_to_come_does_not_hold_yet()
    {
        Grid grid = BookGrids.Known(HandoutSamples.Book with { Today = new DateOnly(2026, 11, 9) });

        Assert.Equal("follows", Words(grid.Rows[0][2]));
    }

    [Fact]
    public void Sessions_come_latest_first_and_one_without_dances_has_a_row()
    {
        Grid grid = BookGrids.Sessions(HandoutSamples.Book);

        Assert.Equal(new GridCell.Day(new DateOnly(2026, 12, 2)), grid.Rows[0][0]);
        Assert.Equal(3 + 2 + 1 + 1 + 1, grid.Rows.Count);
        Assert.Single(grid.Rows, r => Words(Cell(grid, r, "How it went")) == "Old Marta fell asleep");
    }

    [Fact]
    public void Every_row_of_every_table_has_a_cell_to_each_column()
        => Assert.All(BookGrids.Of(HandoutSamples.Book), g => Assert.All(g.Rows, r => Assert.Equal(g.Columns.Count, r.Count)));

    private static GridCell Cell(Grid grid, ValueList<GridCell> row, string column) => row[grid.Columns.Select(c => c.Heading).ToList().IndexOf(column)];

    private static string Words(GridCell cell) => Assert.IsType<GridCell.Text>(cell).Words;
}
