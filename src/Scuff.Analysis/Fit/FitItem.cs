namespace Scuff.Analysis.Fit;

/// <summary>One thing that a plan pays for.</summary>
/// <param name="Reason">What it is.</param>
/// <param name="Price">How much.</param>
/// <param name="Wall">The wall, from 1; 0 for the whole plan.</param>
/// <param name="Count">The count of the dance before which it happens, from 0.</param>
/// <param name="At">The count of the music.</param>
public sealed record FitItem(FitReason Reason, int Price, int Wall, int Count, int At);
