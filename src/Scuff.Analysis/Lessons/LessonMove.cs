using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>A move of the dance with its place and what it asks of the class.</summary>
/// <param name="Move">The move.</param>
/// <param name="Line">The line it stands on.</param>
/// <param name="Head">The count it belongs to, within one repetition; a pick-up belongs to the count it leads into.</param>
/// <param name="End">Where its last action ends.</param>
/// <param name="Reasons">What it asks beyond its counts.</param>
/// <param name="Figure">Whether it is a figure that is met here first and new to the class.</param>
internal sealed record LessonMove(WrittenMove Move, WrittenLine Line, Counts Head, Counts End, ValueList<LessonReason> Reasons, bool Figure)
{
    /// <summary>Points beyond its counts.</summary>
    public int Points => Reasons.Sum(r => r.Points);
}
