using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>A place where the pattern breaks, as it is taught: on its own wall.</summary>
/// <param name="Kind">What is done there.</param>
/// <param name="Name">Name of the tag, or empty.</param>
/// <param name="Walls">The walls it falls in, from 1; the first is the one on which it is walked.</param>
/// <param name="After">After how many counts of the wall.</param>
/// <param name="Facing">Where the first of these walls starts; null when words that could not be read leave it open.</param>
/// <param name="Here">Where the floor faces when it comes; null when unknown.</param>
/// <param name="Length">Counts that are added.</param>
/// <param name="ThenRestarts">Whether the dance begins again after it.</param>
/// <param name="IsChanged">Whether the counts before it are danced differently there.</param>
public sealed record LessonBreak(
    LessonBreakKind Kind,
    string Name,
    ValueList<int> Walls,
    Counts After,
    Facing? Facing,
    Facing? Here,
    Counts Length,
    bool ThenRestarts,
    bool IsChanged)
{
    /// <summary>What she wrote of it; null where it stands in the order of the parts.</summary>
    public Interruption? Written { get; init; }

    /// <summary>The counts that are added, to be learned; null where nothing new is danced.</summary>
    public Section? Body { get; init; }
}
