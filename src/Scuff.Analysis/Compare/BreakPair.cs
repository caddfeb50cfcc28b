namespace Scuff.Analysis.Compare;

/// <summary>What became of a break of the pattern from one version to the other.</summary>
/// <param name="Before">It before; null when it came.</param>
/// <param name="After">It after; null when it went.</param>
internal sealed record BreakPair(WallBreak? Before, WallBreak? After)
{
    /// <summary>Whether something else is done, or elsewhere.</summary>
    public bool IsChanged => Before?.Bare != After?.Bare;
}
