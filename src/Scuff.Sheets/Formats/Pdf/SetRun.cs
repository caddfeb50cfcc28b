namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Characters of one face in a row, as they stand from left to right.</summary>
/// <param name="Face">The face.</param>
/// <param name="Words">The characters, all of which the face has.</param>
/// <param name="X">Where it begins, in points from the beginning of its line.</param>
internal sealed record SetRun(FontFace Face, string Words, double X);
