namespace Scuff.Repertoire;

/// <summary>A page of what was found.</summary>
/// <param name="Rows">The dances of the page.</param>
/// <param name="Total">How many were found in all.</param>
public sealed record DancePage(ValueList<DanceRow> Rows, int Total);
