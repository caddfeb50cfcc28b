using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Levels;

/// <summary>How much of something each level allows; null for as much as you like. Advanced allows everything.</summary>
/// <param name="Measure">What is limited.</param>
/// <param name="AbsoluteBeginner">Most for absolute beginners.</param>
/// <param name="Beginner">Most for beginners.</param>
/// <param name="Improver">Most for improvers.</param>
/// <param name="Intermediate">Most for an intermediate floor.</param>
/// <param name="Source">Where the limits come from.</param>
public sealed record LevelLimit(
    LevelMeasure Measure,
    Ratio? AbsoluteBeginner,
    Ratio? Beginner,
    Ratio? Improver,
    Ratio? Intermediate,
    string Source)
{
    /// <summary>The most that a level allows, or null.</summary>
    public Ratio? Of(Level level) => level switch
    {
        Level.AbsoluteBeginner => AbsoluteBeginner,
        Level.Beginner => Beginner,
        Level.Improver => Improver,
        Level.Intermediate => Intermediate,
        _ => null,
    };

    /// <summary>The easiest level that allows so much.</summary>
    public Level LevelOf(Ratio value)
    {
        Level level = Level.AbsoluteBeginner;
        while (level < Level.Advanced && Of(level) is { } most && value > most)
        {
            level++;
        }

        return level;
    }
}
