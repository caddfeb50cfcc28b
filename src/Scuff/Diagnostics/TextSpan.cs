namespace Scuff.Diagnostics;

/// <summary>A stretch of the text: zero-based UTF-16 offset and length, end not included.</summary>
/// <param name="Start">Offset of the first character.</param>
/// <param name="Length">Number of characters; zero for a place between two.</param>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>Offset of the first character after the span.</summary>
    public int End => Start + Length;

    /// <summary>The span from one offset up to another.</summary>
    public static TextSpan FromBounds(int start, int end) => new(start, Math.Max(0, end - start));

    /// <summary>The smallest span that holds both.</summary>
    public static TextSpan Cover(TextSpan a, TextSpan b) => FromBounds(Math.Min(a.Start, b.Start), Math.Max(a.End, b.End));

    /// <summary>Whether the offset lies in the span.</summary>
    public bool Contains(int offset) => offset >= Start && offset < End;
}
