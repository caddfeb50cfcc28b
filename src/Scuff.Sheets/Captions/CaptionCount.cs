namespace Scuff.Sheets.Captions;

/// <summary>A whole count of the danced dance, ready to be laid over a film.</summary>
/// <param name="Start">When it begins, in seconds.</param>
/// <param name="End">When the next begins.</param>
/// <param name="Count">The number the floor counts: 1 to 8 within the section, in the count-in 5 to 8.</param>
/// <param name="Wall">The wall, from 1; 0 in the count-in.</param>
/// <param name="Section">The section, from 1; 0 in a tag, a wait, the ending and the count-in.</param>
/// <param name="Facing">Where the dance faces when the count begins (<c>3:00</c>); empty when not known.</param>
/// <param name="Place">What it belongs to, in words: the section's heading, the tag, the ending.</param>
/// <param name="Danced">What is danced on it, in words; empty when nothing begins on it.</param>
public sealed record CaptionCount(double Start, double End, int Count, int Wall, int Section, string Facing, string Place, string Danced);
