using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Sheets.Languages;

namespace Scuff.Sheets;

/// <summary>
/// A lesson plan as a sheet, which every sheet format can draw: its sections are the phases of the lesson, its lines the steps with a box to tick and the minute
/// at which each begins.
/// </summary>
public static class LessonSheet
{
    /// <summary>Makes the sheet; never throws for what is in the text.</summary>
    /// <param name="analysis">The dance.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="isAsked">Whether the length of the lesson was asked for.</param>
    /// <param name="choices">Paper, print and language.</param>
    /// <exception cref="ArgumentException">There is no such language.</exception>
    public static SheetModel Of(DanceAnalysis analysis, LessonPlan plan, bool isAsked, SheetChoices choices)
    {
        SheetLanguage language = SheetLanguage.Find(choices.Language)
            ?? throw new ArgumentException($"There is no language {choices.Language}.", nameof(choices));
        Wording wording = new(language);
        LessonWords words = new(plan, analysis.Dance, language);
        List<SheetSection> sections = [];
        foreach (LessonStep step in plan.Steps)
        {
            string phase = words.Phase(step.Kind);
            SheetLine line = new()
            {
                Counts = LessonWords.Mark(step.Start),
                Words = words.Step(step),
                HasBox = true,
                Facing = words.Minutes(step.Seconds),
                Notes = words.Details(step),
            };
            if (sections.Count > 0 && sections[^1].Heading == phase)
            {
                sections[^1] = sections[^1] with { Lines = [.. sections[^1].Lines, line] };
            }
            else
            {
                sections.Add(new SheetSection(phase, [line], default));
            }
        }

        return new SheetModel
        {
            Language = choices.Language,
            Labels = language.Labels with
            {
                Counts = wording["lesson.label.minute"],
                Steps = wording["lesson.label.step"],
                FacingAfter = wording["lesson.label.takes"],
                Breaks = wording["lesson.label.late"],
                Notes = wording["lesson.label.more"],
            },
            Paper = choices.Paper,
            IsLarge = choices.IsLarge,
            Title = words.Title,
            Author = SheetFacts.AuthorOf(analysis.Dance),
            ByLine = new SheetFacts(wording).ByLineOf(analysis.Dance),
            Facts = [.. words.Facts(isAsked), .. words.Notes],
            Edition = new SheetFacts(wording).EditionOf(analysis.Dance),
            Key = wording["lesson.key"],
            Cautions = words.Cautions,
            Parts = [new SheetPart("", sections.ToValueList())],
            Breaks = words.WhenLate,
            Notes = words.More,
        };
    }
}
