using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Levels;

/// <summary>One thing that makes a dance as hard as it is.</summary>
/// <param name="Level">The easiest level that allows it.</param>
/// <param name="Measure">What is measured.</param>
/// <param name="Value">How much of it the dance has.</param>
/// <param name="Most">How much the level below allows.</param>
/// <param name="Place">Where, or null when it is about the whole dance.</param>
/// <param name="Source">Where the limit comes from.</param>
public sealed record LevelReason(Level Level, LevelMeasure Measure, Ratio Value, Ratio Most, DancePlace? Place, string Source)
{
    /// <summary>Names of the figures it is about, or empty.</summary>
    public string Figures { get; init; } = "";

    /// <summary>The reason in English: what the dance has and what the level below allows.</summary>
    public string Words => LevelPhrases.Reason(this);

    /// <summary>What would bring it down to the level below, as a verb phrase.</summary>
    public string Remedy => LevelPhrases.Remedy(this);
}
