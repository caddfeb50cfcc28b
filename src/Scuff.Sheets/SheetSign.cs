using Scuff.Sheets.Drawings;

namespace Scuff.Sheets;

/// <summary>A sign of the foot diagrams and what it means.</summary>
/// <param name="Picture">The sign.</param>
/// <param name="Words">Its meaning in a few words.</param>
public sealed record SheetSign(Drawing Picture, string Words);
