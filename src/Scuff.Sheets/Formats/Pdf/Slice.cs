namespace Scuff.Sheets.Formats.Pdf;

/// <summary>A strip of a page that is never cut. Its boxes are placed from its upper left corner.</summary>
/// <param name="Gap">Room above it; falls away at the top of a page.</param>
/// <param name="Height">Its height without that room.</param>
/// <param name="KeepsNext">Whether the next one belongs on the same page.</param>
/// <param name="Boxes">What is on it.</param>
internal sealed record Slice(double Gap, double Height, bool KeepsNext, IReadOnlyList<PageBox> Boxes)
{
    /// <summary>Whether it is of a table, over whose first line on a page the head of the columns stands.</summary>
    public bool IsOfTable { get; init; }
}
