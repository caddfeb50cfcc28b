using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Timelines;

/// <summary>The dance as danced: every action in danced order, walls, tags, bridges, restarts and ending unrolled.</summary>
/// <param name="Steps">In danced order.</param>
/// <param name="Stretches">The stretches with their facings.</param>
/// <param name="Length">Danced counts in all.</param>
/// <param name="Walls">How many walls are begun.</param>
public sealed record Timeline(ValueList<TimedStep> Steps, ValueList<TimedStretch> Stretches, Counts Length, int Walls)
{
    /// <summary>Weight at the very end.</summary>
    public Weight WeightAfter => Stretches.Count == 0 ? Weight.Unknown : Stretches[Stretches.Count - 1].WeightAfter;

    /// <summary>Facing at the very end; null when unknown.</summary>
    public Facing? FacingAfter => Stretches.Count == 0 ? null : Stretches[Stretches.Count - 1].FacingAfter;
}
