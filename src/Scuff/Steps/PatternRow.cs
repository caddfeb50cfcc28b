using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Steps;

/// <summary>
/// One position of a catalogue entry, written for the right-named version: the named foot is the right foot,
/// turns to the named side are to the right. The left-named version is its mirror.
/// </summary>
/// <param name="Label">Count label as in the entry: <c>1</c>, <c>&amp;</c>, <c>a</c>.</param>
/// <param name="At">Place relative to the entry's count 1; negative for a pick-up.</param>
/// <param name="Foot">Which foot acts.</param>
/// <param name="Action">The action, in the right-named version.</param>
/// <param name="IsFinish">Only the customary filler of the last count, which an explicitly written next move replaces.</param>
/// <param name="Stretches">Whether this position may last several counts.</param>
public sealed record PatternRow(string Label, Counts At, RelativeFoot Foot, StepAction Action, bool IsFinish, bool Stretches)
{
    /// <summary>The action when the figure is named by <paramref name="named"/>.</summary>
    public StepAction For(Foot named) => named == Stance.Foot.Right ? Action : Action.Mirrored();
}
