using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>Counts of one section.</summary>
/// <param name="Part">The part of a phrased dance, or empty.</param>
/// <param name="Section">Number of the section in its part, from 1.</param>
/// <param name="Counts">The counts within the section, from zero.</param>
/// <param name="IsWhole">Whether it is the whole section.</param>
public sealed record LessonPiece(string Part, int Section, CountSpan Counts, bool IsWhole);
