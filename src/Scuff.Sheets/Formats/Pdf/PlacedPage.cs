namespace Scuff.Sheets.Formats.Pdf;

/// <summary>A page with everything on it, in the order of reading.</summary>
/// <param name="Boxes">What is on it.</param>
internal sealed record PlacedPage(IReadOnlyList<PageBox> Boxes);
