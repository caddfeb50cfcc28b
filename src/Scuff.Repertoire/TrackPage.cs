namespace Scuff.Repertoire;

/// <summary>A page of what was found.</summary>
/// <param name="Rows">The tracks of the page.</param>
/// <param name="Total">How many were found in all.</param>
public sealed record TrackPage(ValueList<TrackRow> Rows, int Total);
