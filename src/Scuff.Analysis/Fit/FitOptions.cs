using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>What can be asked of a fit.</summary>
public sealed record FitOptions
{
    /// <summary>Prices; null for the usual ones of the dance's level.</summary>
    public FitPrices? Prices { get; init; }

    /// <summary>How many interruptions a plan may have.</summary>
    public int MostInterruptions { get; init; } = 6;

    /// <summary>Beats that a count takes; null for what the dance says, or its tempo asks for.</summary>
    public Ratio? BeatsPerCount { get; init; }

    /// <summary>Counts of intro that she wants; null for what is likely.</summary>
    public int? Intro { get; init; }

    /// <summary>
    /// What she has decided about the plan. Where no plan keeps to all of it, there is none (<see cref="FitRemark.NoPlanKeepsTo"/>).
    /// </summary>
    public ValueList<FitPin> Pins { get; init; } = [];
}
