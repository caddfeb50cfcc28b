using Scuff.Analysis.Fit;
using Scuff.App.Fitting;

namespace Scuff.App.Json;

/// <summary>How a dance fits a track: plans by number of interruptions, the kindest of them, and the plan as the text has it.</summary>
internal sealed record FittedTrackRow(
    string Dance,
    string Track,
    string Title,
    string BeatsPerCount,
    double CountsPerMinute,
    IReadOnlyList<string> Remarks,
    int? Kindest,
    IReadOnlyList<FittedPlanRow> Plans,
    FittedPlanRow? AsWritten,
    IReadOnlyList<FittedAccentRow> Accents,
    FitChartRows? Chart)
{
    /// <summary>An answer in rows.</summary>
    /// <param name="dance">The dance's file.</param>
    /// <param name="track">The track's file.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="chosen">The plan to draw; null for the kindest.</param>
    public static FittedTrackRow Of(string dance, string track, FitAnswer answer, FitPlan? chosen)
    {
        FitPlan? plan = chosen ?? answer.Kindest;
        return new FittedTrackRow(
            dance,
            track,
            answer.Music.Map.Title,
            answer.BeatsPerCount.ToString(),
            answer.Music.CountsPerMinute,
            [.. answer.Remarks.Select(r => FitWords.Of(r, answer))],
            answer.Plans.Count == 0 ? null : answer.Plans.Count - 1,
            [.. answer.Plans.Select(p => FittedPlanRow.Of(p, answer))],
            answer.AsWritten is { } written ? FittedPlanRow.Of(written, answer) : null,
            plan is null ? [] : [.. AccentFinder.Find(answer.Music, plan).Select(FittedAccentRow.Of)],
            plan is null ? null : FitChartRows.Of(FitChart.Of(answer.Music, plan)));
    }
}
