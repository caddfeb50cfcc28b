using Scuff.Sheets.Drawings;

namespace Scuff.Sheets;

/// <summary>A section, a tag or a move of her own: a heading and its lines.</summary>
/// <param name="Heading">For example <c>Section 1: box with shuffles</c>.</param>
/// <param name="Lines">Its lines.</param>
/// <param name="Notes">Notes on the whole of it.</param>
public sealed record SheetSection(string Heading, ValueList<SheetLine> Lines, ValueList<SheetNote> Notes)
{
    /// <summary>The feet of its lines, seen from above; or null.</summary>
    public Drawing? Diagram { get; init; }
}
