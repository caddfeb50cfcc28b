using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>Counts danced differently just before a restart or tag.</summary>
/// <param name="Replaces">The counts in the part that are replaced.</param>
/// <param name="Moves">What is danced instead.</param>
public sealed record ChangedCounts(CountSpan Replaces, ValueList<WrittenMove> Moves)
{
    /// <summary>The actions in order; their counts are places in the part's section in which they stand.</summary>
    public IEnumerable<WrittenStep> Steps => Moves.SelectMany(m => m.Steps);
}
