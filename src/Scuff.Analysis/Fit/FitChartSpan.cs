using Scuff.Stance;

namespace Scuff.Analysis.Fit;

/// <summary>What is danced over some counts of the music.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="From">Its first count.</param>
/// <param name="To">The count after its last.</param>
/// <param name="Wall">The wall; 0 for the intro.</param>
/// <param name="Part">The part of a phrased dance, or empty.</param>
/// <param name="Name">The tag's name, or empty.</param>
/// <param name="Facing">Where the floor faces at its start; null when unknown.</param>
/// <param name="IsCut">Whether a restart cuts it short.</param>
public sealed record FitChartSpan(FitChartKind Kind, int From, int To, int Wall, string Part, string Name, Facing? Facing, bool IsCut)
{
    /// <summary>Whether a wall begins with it; false for what is danced of a wall after a bridge.</summary>
    public bool Starts { get; init; }
}
