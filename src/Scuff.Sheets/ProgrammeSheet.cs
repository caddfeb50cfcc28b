using Scuff.Sheets.Languages;

namespace Scuff.Sheets;

/// <summary>
/// The programme of an evening as a sheet for the wall, which every sheet format can draw: a line for each dance with its time, song and level, and for each
/// lesson and rest. Printed as large as its pages allow.
/// </summary>
public static class ProgrammeSheet
{
    /// <summary>Makes the sheet.</summary>
    /// <param name="paper">The evening.</param>
    /// <param name="choices">Paper, print and language.</param>
    /// <exception cref="ArgumentException">There is no such language.</exception>
    public static SheetModel Of(EveningPaper paper, SheetChoices choices)
    {
        SheetLanguage language = SheetLanguage.Find(choices.Language)
            ?? throw new ArgumentException($"There is no language {choices.Language}.", nameof(choices));
        Wording wording = new(language);
        EveningSheetWords words = new(paper, wording);
        ValueList<SheetSection> sections = EveningSections.Of(paper, wording["evening.programme"], line => new SheetLine
        {
            Counts = paper.ClockAt(line.StartSeconds),
            Title = words.Line(line, withLevels: true),
            Words = words.Song(line),
            Facing = words.Right(line),
        });
        return new SheetModel
        {
            Language = choices.Language,
            Labels = language.Labels with
            {
                Counts = wording["evening.label.time"],
                Steps = wording["evening.label.line"],
                FacingAfter = wording["evening.label.level"],
            },
            Paper = choices.Paper,
            IsLarge = choices.IsLarge,
            IsNotice = true,
            Title = paper.Title,
            ByLine = words.ByLine,
            Facts = [words.Hours],
            Key = paper.Lines.Any(l => l.IsSplit) ? wording["evening.key"] : "",
            Parts = sections.Count > 0 ? [new SheetPart("", sections)] : default,
        };
    }
}
