namespace Scuff.App.Spreadsheets;

/// <summary>A column of a table.</summary>
/// <param name="Heading">What stands over it.</param>
/// <param name="Letters">How broad it is, in letters.</param>
internal sealed record GridColumn(string Heading, int Letters);
