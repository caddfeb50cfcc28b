using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Analysis.Levels;
using Scuff.App.Files;
using Scuff.Sheets;
using Scuff.Sheets.Languages;

namespace Scuff.App.Json;

/// <summary>What <c>lesson --format json</c> says. The names are fixed: scripts depend on them.</summary>
/// <param name="File">The dance as named.</param>
/// <param name="Title">Its title.</param>
/// <param name="Class">Level of the class.</param>
/// <param name="Seconds">How long the lesson is; the steps add up to it.</param>
/// <param name="UsualSeconds">What teaching the dance usually takes, without warm-up and cool-down.</param>
/// <param name="LeastSeconds">The least in which the whole dance can be taught.</param>
/// <param name="IsWhole">Whether the whole dance is taught.</param>
/// <param name="Order">forward or backward.</param>
/// <param name="Notes">Sentences on the plan as a whole.</param>
/// <param name="Cautions">What to take care of.</param>
/// <param name="NewFigures">Ids of the figures that are new to the class.</param>
/// <param name="Chunks">The chunks in the order of the dance.</param>
/// <param name="Steps">The steps in order.</param>
/// <param name="LeftOut">Ids of what there was no time for.</param>
internal sealed record LessonFile(
    string File,
    string Title,
    string Class,
    int Seconds,
    int UsualSeconds,
    int LeastSeconds,
    bool IsWhole,
    string Order,
    IReadOnlyList<string> Notes,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<string> NewFigures,
    IReadOnlyList<LessonChunkRow> Chunks,
    IReadOnlyList<LessonStepRow> Steps,
    IReadOnlyList<string> LeftOut)
{
    /// <summary>A plan for JSON.</summary>
    public static LessonFile Of(DanceInput input, DanceAnalysis analysis, LessonPlan plan)
    {
        LessonWords words = new(plan, analysis.Dance, SheetLanguage.English);
        return new LessonFile(
            input.Name,
            analysis.Dance.Title,
            LevelPhrases.Name(plan.Class),
            plan.Seconds,
            plan.UsualSeconds,
            plan.LeastSeconds,
            plan.IsWhole,
            SheetLanguage.KeyOf(plan.Order.ToString()),
            [.. words.Notes],
            [.. words.Cautions],
            [.. plan.NewFigures.Select(f => f.Definition.Id)],
            [.. plan.Chunks.Select(LessonChunkRow.Of)],
            [.. plan.Steps.Select(s => LessonStepRow.Of(s, words))],
            [.. plan.LeftOut.Select(s => s.Id)]);
    }
}
