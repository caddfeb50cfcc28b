using Scuff.Analysis;
using Scuff.Sheets.Languages;

namespace Scuff.Sheets;

/// <summary>
/// The caller's notes of an evening as a sheet, which every sheet format can draw: for each line what to say first, how the dance starts, where its pattern
/// breaks, the song and the time, and why it stands there; what to take care of stands there once.
/// </summary>
public static class CallerNotesSheet
{
    /// <summary>Makes the sheet; never throws for what is in the texts.</summary>
    /// <param name="paper">The evening.</param>
    /// <param name="dances">Its dances by their ids; a line whose dance is not among them says that there is no sheet of it.</param>
    /// <param name="choices">Paper, print and language.</param>
    /// <exception cref="ArgumentException">There is no such language.</exception>
    public static SheetModel Of(EveningPaper paper, IReadOnlyDictionary<string, DanceAnalysis> dances, SheetChoices choices)
    {
        SheetLanguage language = SheetLanguage.Find(choices.Language)
            ?? throw new ArgumentException($"There is no language {choices.Language}.", nameof(choices));
        Wording wording = new(language);
        EveningSheetWords words = new(paper, wording);
        ValueList<SheetSection> sections = EveningSections.Of(paper, wording["evening.programme"], line => new SheetLine
        {
            Counts = paper.ClockAt(line.StartSeconds),
            Title = words.Line(line, withLevels: false),
            Words = "",
            HasBox = true,
            Facing = words.Right(line),
            Notes = words.Notes(line, Find(dances, line.DanceId), Find(dances, line.OtherId)),
        });
        (string Title, DanceAnalysis Analysis)[] danced =
        [
            .. paper.Lines.SelectMany(l => ((string Title, string Id)[])[(l.Title, l.DanceId), (l.OtherTitle, l.OtherId)])
                .Where(d => dances.ContainsKey(d.Id))
                .Select(d => (d.Title, dances[d.Id])),
        ];
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
            Title = wording.Say("evening.notes.title", ("title", paper.Title)),
            ByLine = words.ByLine,
            Facts = words.Facts.ToValueList(),
            Key = wording["evening.notes.key"],
            Cautions = words.Cautions(danced),
            Parts = sections.Count > 0 ? [new SheetPart("", sections)] : default,
            Notes = [.. paper.Remarks.Select(r => new SheetNote(wording["evening.lead.also"], r))],
        };
    }

    private static DanceAnalysis? Find(IReadOnlyDictionary<string, DanceAnalysis> dances, string id) => dances.GetValueOrDefault(id);
}
