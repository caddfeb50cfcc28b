using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Timelines;

/// <summary>One stretch of a plan: counts of something, danced in a wall.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Wall">The wall (repetition) it belongs to, from 1.</param>
/// <param name="Sections">The sections it runs over, in order (one for a tag).</param>
/// <param name="Name">Part name, tag name, or empty.</param>
/// <param name="Counts">The counts of those sections that are danced, from zero.</param>
/// <param name="Changes">Counts danced differently, in the same counting.</param>
/// <param name="StartsWall">Whether a wall begins with it.</param>
public sealed record PlanStretch(
    StretchKind Kind,
    int Wall,
    ValueList<Section> Sections,
    string Name,
    CountSpan Counts,
    ValueList<ChangedCounts> Changes,
    bool StartsWall)
{
    /// <summary>The interruption that caused or cut it, or null.</summary>
    public Interruption? Cause { get; init; }

    /// <summary>Whether a restart cuts it short.</summary>
    public bool IsCutByRestart { get; init; }
}
