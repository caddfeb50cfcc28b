using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>One thing that makes a chunk harder, or easier.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Number">How much of it; its unit follows from the kind.</param>
/// <param name="Points">Points of difficulty; below zero where it makes the chunk easier.</param>
public sealed record LessonReason(LessonReasonKind Kind, Ratio Number, int Points);
