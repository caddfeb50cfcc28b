using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>Whole counts of a section that hold whole moves: what an option can replace.</summary>
/// <param name="Section">The section, or the body of a tag.</param>
/// <param name="Counts">From its first count; before count 1 where a pick-up leads in.</param>
/// <param name="Moves">The moves in them.</param>
/// <param name="First">Place of its first action in the timeline in which everything is danced once.</param>
/// <param name="Before">Weight before.</param>
/// <param name="After">Weight after.</param>
internal sealed record EasierWindow(Section Section, CountSpan Counts, ValueList<WrittenMove> Moves, int First, Weight Before, Weight After)
{
    /// <summary>Its first whole count, within the section.</summary>
    public int Start => Counts.Start.Value.Floor < 0 ? 0 : Counts.Start.Value.Floor;

    /// <summary>Whole counts.</summary>
    public int Length => Counts.End.Value.Floor - Start;
}
