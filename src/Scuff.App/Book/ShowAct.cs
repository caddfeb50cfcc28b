using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Compare;
using Scuff.App.Classes;
using Scuff.App.Complaints;
using Scuff.App.Json;
using Scuff.Prose;
using Scuff.Repertoire;
using Scuff.Sheets;
using Scuff.Sheets.Languages;

namespace Scuff.App.Book;

/// <summary><c>scuff book show CLASS</c>: the dances of a class, how well it knows them, and which sheets are newer than what was taught.</summary>
internal sealed class ShowAct : IBookActAtOnce
{
    private static readonly string[] Head = ["dance", "known", "since", "last danced", "times", "sheet"];

    public string Name => "show";

    public string Usage => "CLASS";

    public int Fewest => 1;

    public int Most => 1;

    public IReadOnlyList<string> Takes => [BookOptions.Json];

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        ClubClass held = BookNames.Class(club, question.Words[0]);
        List<Shown> dances = Dances(club, held, question.Today);
        if (question.AsJson)
        {
            ScuffJson.Write(terminal.Out, new BookShown(BookClassRow.Of(held), [.. dances.Select(d => Row(d, club))]));
            return ExitCode.Clean;
        }

        terminal.Out.WriteLine(terminal.Paint.Of(Tone.Name, Plain.Line(held.Title)) + Plain.Line($": {ClassWords.Of(held)}"));
        if (dances.Count == 0)
        {
            terminal.Out.WriteLine("No dances yet.");
            return ExitCode.Clean;
        }

        terminal.Out.WriteLine();
        Table.Write(terminal.Out, terminal.Paint, Head, [.. dances.Select(Cells)]);
        foreach (Shown dance in dances.Where(d => d.Sheet is { IsNewer: true }))
        {
            WriteChanges(dance, club, terminal);
        }

        return ExitCode.Clean;
    }

    // Those outside the bin that it ever danced or has a mark for, the one danced last first.
    private static List<Shown> Dances(Club club, ClubClass held, DateOnly today)
    {
        Dictionary<string, DancedDates> danced = club.Book.LastDanced(held.Id).ToDictionary(d => d.DanceId);
        Dictionary<string, KnownMark> marks = club.Book.Marks(held.Id, today).ToDictionary(m => m.DanceId);
        Dictionary<string, TaughtSheet> sheets = club.Book.TaughtBefore(held.Id).ToDictionary(s => s.DanceId);
        return
        [
            .. club.Dances.Every().Where(d => danced.ContainsKey(d.Id) || marks.ContainsKey(d.Id))
                .Select(d => new Shown(d, danced.GetValueOrDefault(d.Id), marks.GetValueOrDefault(d.Id), sheets.GetValueOrDefault(d.Id)))
                .OrderByDescending(d => d.Last),
        ];
    }

    private static IReadOnlyList<string> Cells(Shown dance) =>
    [
        Plain.Line(dance.Row.Facts.Title),
        dance.Mark is { Knowing: { } known } ? BookWords.Shown(known) : "",
        dance.Mark is { } mark ? DayWords.Plain(mark.Date) : "",
        dance.Last is { } last ? DayWords.Plain(last) : "",
        (dance.Danced?.Dates.Count ?? 0).ToString(CultureInfo.InvariantCulture),
        dance.Sheet switch
        {
            { IsNewer: true, FeetChanged: true } => "newer than taught",
            { IsNewer: true, FeetChanged: false } => "newer than taught, in words only",
            { IsNewer: true } => "newer than taught; nobody compared the steps yet",
            _ => "",
        },
    ];

    private static void WriteChanges(Shown dance, Club club, Terminal terminal)
    {
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(Plain.Line($"{dance.Row.Facts.Title}, since it was taught on {DayWords.Plain(dance.Sheet!.TaughtOn)}:"));
        foreach (string sentence in Changes(dance, club))
        {
            string indent = "  ";
            foreach (string line in Wrapping.Wrap(Plain.Line(sentence), terminal.Width - 4))
            {
                terminal.Out.WriteLine(indent + line);
                indent = "    ";
            }
        }
    }

    private static IReadOnlyList<string> Changes(Shown dance, Club club)
    {
        if (dance.Sheet is not { IsNewer: true } sheet)
        {
            return [];
        }

        return club.Dances.TextOf(sheet.DanceId, sheet.Revision) is { } before && club.Dances.Get(sheet.DanceId) is { } now
            ? ChangeWords.ForSheet(DanceComparison.Of(Read(before), Read(now.Text)), SheetLanguage.English)
            : ["The sheet of that day is not kept any more."];
    }

    private static DanceAnalysis Read(string text) => DanceAnalysis.Of(DanceReader.Read(text));

    private static BookDanceRow Row(Shown dance, Club club) => new()
    {
        Dance = dance.Row.Id,
        Title = dance.Row.Facts.Title,
        Known = dance.Mark is { Knowing: { } known } ? BookWords.Of(known) : null,
        Since = dance.Mark is { } mark ? DayWords.Plain(mark.Date) : null,
        Danced = [.. (dance.Danced?.Dates ?? []).Select(DayWords.Plain)],
        TaughtOn = dance.Sheet is { } taught ? DayWords.Plain(taught.TaughtOn) : null,
        Newer = dance.Sheet is { IsNewer: true },
        FeetChanged = dance.Sheet?.FeetChanged,
        Changes = Changes(dance, club),
    };

    private sealed record Shown(DanceRow Row, DancedDates? Danced, KnownMark? Mark, TaughtSheet? Sheet)
    {
        public DateOnly? Last => Danced is { Dates: { Count: > 0 } dates } ? dates[^1] : null;
    }
}
