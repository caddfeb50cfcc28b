using Scuff.Stance;

namespace Scuff.Analysis.Compare;

/// <summary>How the floor stands after counts that changed, in both versions, the first time they are danced. Equal by value.</summary>
/// <param name="FacingBefore">Facing in the earlier version; null when unknown, or when it has no meaning there.</param>
/// <param name="FacingAfter">Facing in the later version.</param>
/// <param name="TurnsAlike">Whether the counts turn as far as before; then another facing comes from a change further up.</param>
/// <param name="WeightBefore">Weight in the earlier version.</param>
/// <param name="WeightAfter">Weight in the later version.</param>
public sealed record Landing(Facing? FacingBefore, Facing? FacingAfter, bool TurnsAlike, Weight WeightBefore, Weight WeightAfter)
{
    /// <summary>Whether the facing is known and the same in both.</summary>
    public bool FacingIsUnchanged => FacingBefore is { } before && FacingAfter == before;

    /// <summary>Whether the weight is known and the same in both.</summary>
    public bool WeightIsUnchanged => WeightBefore == WeightAfter && WeightAfter != Weight.Unknown;
}
