namespace Scuff.Sheets.Formats.Pdf;

/// <summary>A line of type, set but not placed.</summary>
/// <param name="Runs">Its runs from left to right.</param>
/// <param name="Size">Size of the type in points.</param>
/// <param name="Width">Its width in points.</param>
/// <param name="Spoken">Its words in the order of reading, where what is drawn differs from them; or null.</param>
internal sealed record SetLine(IReadOnlyList<SetRun> Runs, double Size, double Width, string? Spoken);
