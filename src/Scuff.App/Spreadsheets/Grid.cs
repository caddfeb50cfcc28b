namespace Scuff.App.Spreadsheets;

/// <summary>A table with a heading to each column, ready to be written. Equal by value.</summary>
/// <param name="Name">Its name, one word or two.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, each with a cell to each column.</param>
internal sealed record Grid(string Name, ValueList<GridColumn> Columns, ValueList<ValueList<GridCell>> Rows);
