namespace Scuff.App.Spreadsheets;

/// <summary>What stands in a cell of a table, by what it is, so that a spreadsheet can sort and reckon with it. Equal by value.</summary>
internal abstract record GridCell
{
    private GridCell()
    {
    }

    /// <summary>An empty cell.</summary>
    public static GridCell None { get; } = new Text("");

    /// <summary>A number, or an empty cell.</summary>
    public static GridCell Of(double? value) => value is { } number ? new Number(number) : None;

    /// <summary>A day, or an empty cell.</summary>
    public static GridCell Of(DateOnly? date) => date is { } day ? new Day(day) : None;

    /// <summary>Words, which may be hers and hold anything.</summary>
    public sealed record Text(string Words) : GridCell;

    /// <summary>A number.</summary>
    public sealed record Number(double Value) : GridCell;

    /// <summary>A day.</summary>
    public sealed record Day(DateOnly Date) : GridCell;

    /// <summary>A time of the day.</summary>
    public sealed record Clock(TimeOnly Time) : GridCell;

    /// <summary>How long something is, in seconds.</summary>
    public sealed record Length(int Seconds) : GridCell;
}
