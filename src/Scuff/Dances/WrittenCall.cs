using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>What she wants called, in her own words.</summary>
/// <param name="Counts">The counts, within the section, of the moves that it is called for; null for the section as a whole (a tag's name when it is announced).</param>
/// <param name="Words">What is said; empty when nothing is to be said.</param>
/// <param name="Span">Where it is written.</param>
/// <param name="Line">One-based line of the text.</param>
public sealed record WrittenCall(CountSpan? Counts, string Words, TextSpan Span, int Line)
{
    /// <summary>The counts as printed (<c>7&amp;8</c>); empty for the whole of a line or section.</summary>
    public string Label { get; init; } = "";
}
