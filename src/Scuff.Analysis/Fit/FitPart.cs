namespace Scuff.Analysis.Fit;

/// <summary>A part of a dance, as the search sees it. An ordinary dance has one.</summary>
/// <param name="IsBoundary">For each count from 0 to its length: whether a section of the dance begins there (or the part ends).</param>
/// <param name="Acts">For each count from 0 to its length: what may happen before it. Nothing happens at 0.</param>
/// <param name="CanFollow">For each part: whether it may come after this one.</param>
public sealed record FitPart(ValueList<bool> IsBoundary, ValueList<ValueList<FitAct>> Acts, ValueList<bool> CanFollow)
{
    /// <summary>Counts of the part.</summary>
    public int Length => IsBoundary.Count - 1;
}
