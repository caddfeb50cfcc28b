using System.Text.Json;
using Scuff.Analysis.Fit;
using Scuff.App.Fitting;
using Scuff.Prose;

namespace Scuff.App.Json;

/// <summary>A plan: what it pays and for what, where it begins, its walls, interruptions and ending, and the lines for the sheet.</summary>
internal sealed record FittedPlanRow(
    int Interruptions,
    int Points,
    bool IsProven,
    int Intro,
    double BeginsSeconds,
    IReadOnlyList<FittedWallRow> Walls,
    IReadOnlyList<FittedBreakRow> Breaks,
    FittedEndingRow? Ending,
    IReadOnlyList<FittedItemRow> Items,
    string Sheet)
{
    /// <summary>A plan in rows.</summary>
    public static FittedPlanRow Of(FitPlan plan, FitAnswer answer) => new(
        plan.Interruptions,
        plan.Price,
        plan.IsProven,
        plan.Intro,
        plan.BeginsSeconds,
        [.. plan.Walls.Select(w => new FittedWallRow(w.Number, w.Part, w.Begins, w.Seconds, w.Facing?.ToString(), w.Danced, FitWords.Strength(w, answer.Music.Map)))],
        [
            .. plan.Breaks.Select(b => new FittedBreakRow(
                b.Wall, b.Part, b.After, b.Begins, b.Seconds, b.Facing?.ToString(), b.Length, FitWords.Done(b, plan.Dance), TrackWriter.Sentence(b.Written))),
        ],
        plan.Ending is { } e ? new FittedEndingRow(e.Wall, e.After, e.Begins, e.Seconds, e.Facing?.ToString(), TrackWriter.EndingLine(e.Written)) : null,
        [.. plan.Items.Select(i => new FittedItemRow(JsonNamingPolicy.CamelCase.ConvertName(i.Reason.ToString()), i.Price, i.Wall, i.Count, i.At))],
        string.Concat(plan.MadeTags.Select(t => TrackWriter.TagLines(t) + "\n")) + TrackWriter.Block(plan.Track));
}
