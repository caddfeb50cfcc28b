namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Words of one weight; a paragraph is made of them.</summary>
/// <param name="Words">The words.</param>
/// <param name="IsBold">Whether they are bold.</param>
internal sealed record Wording(string Words, bool IsBold = false);
