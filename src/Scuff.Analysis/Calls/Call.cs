using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Calls;

/// <summary>Words that a caller says ahead of what they name. Counts are danced counts from the first count 1; the count-in lies below zero.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Words">What is said.</param>
/// <param name="At">When the words begin, in counts.</param>
/// <param name="For">The count on which begins what they name; never before they end.</param>
/// <param name="Wall">The wall it is said for, from 1.</param>
/// <param name="Seconds">When the words begin, in seconds of the clock the calls were written for.</param>
/// <param name="Until">When they end, in the same seconds.</param>
/// <param name="Due">When that begins which they name, in the same seconds.</param>
public sealed record Call(CallKind Kind, string Words, double At, Counts For, int Wall, double Seconds, double Until, double Due)
{
    /// <summary>The words of the text that are called; empty where nothing is written (a new wall).</summary>
    public TextSpan Span { get; init; }

    /// <summary>Whether she wrote the words herself.</summary>
    public bool IsHers { get; init; }
}
