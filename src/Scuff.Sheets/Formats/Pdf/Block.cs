namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Strips that follow each other: a section, the notes, the heading of the sheet.</summary>
/// <param name="Slices">The strips from top to bottom.</param>
/// <param name="Head">Makes the head of the columns of its table, as part of the table or as a repetition; null when it has none.</param>
internal sealed record Block(IReadOnlyList<Slice> Slices, Func<bool, Slice>? Head = null);
