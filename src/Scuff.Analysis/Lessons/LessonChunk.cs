using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>Counts that are taught in one go. No figure is cut by its ends.</summary>
/// <param name="Number">Its number in the order of the dance, from 1.</param>
/// <param name="Span">Its counts within one repetition (of a phrased dance: with the parts in the order written), from zero.</param>
/// <param name="Pieces">The same by sections.</param>
/// <param name="Moves">Its moves in order.</param>
/// <param name="Reasons">What makes it hard, the weightiest first.</param>
public sealed record LessonChunk(int Number, CountSpan Span, ValueList<LessonPiece> Pieces, ValueList<WrittenMove> Moves, ValueList<LessonReason> Reasons)
{
    /// <summary>Points of difficulty for the class, all reasons together.</summary>
    public int Points => Reasons.Sum(r => r.Points);
}
