using Scuff.Analysis.Levels;

namespace Scuff.App.Json;

/// <summary>One reason of a level in JSON.</summary>
/// <param name="Level">The easiest level that allows it.</param>
/// <param name="Measure">What is measured, in one word.</param>
/// <param name="Value">How much of it the dance has.</param>
/// <param name="Most">How much the level below allows.</param>
/// <param name="Words">The reason as a sentence.</param>
/// <param name="Place">Where, in words, or null when it is about the whole dance.</param>
/// <param name="Line">One-based line of the text, or null.</param>
/// <param name="Remedy">What would bring it down to the level below.</param>
/// <param name="Source">Where the limit comes from.</param>
internal sealed record LevelReasonRow(
    string Level,
    string Measure,
    double Value,
    double Most,
    string Words,
    string? Place,
    int? Line,
    string Remedy,
    string Source)
{
    /// <summary>The reason for JSON.</summary>
    public static LevelReasonRow Of(LevelReason reason) => new(
        LevelPhrases.Name(reason.Level),
        reason.Measure.ToString(),
        reason.Value.ToDouble(),
        reason.Most.ToDouble(),
        reason.Words,
        reason.Place?.Words,
        reason.Place?.Line,
        reason.Remedy,
        reason.Source);
}
