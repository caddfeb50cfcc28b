using System.Globalization;
using Scuff.App.Classes;
using Scuff.App.Json;
using Scuff.App.Memory;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book revise CLASS [DAY]</c>: what a class is about to forget, and what to dance again.</summary>
internal sealed class ReviseAct : IBookActAtOnce
{
    private const int Week = 7;

    // "dance these three next week"
    private const int Offered = 3;

    public string Name => "revise";

    public string Usage => "CLASS [DAY]";

    public int Fewest => 1;

    public int Most => 2;

    public IReadOnlyList<string> Takes => [BookOptions.All, BookOptions.Json];

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        ClubClass held = BookNames.Class(club, question.Words[0]);
        DateOnly day = question.Words.Count > 1 ? BookWords.DayOf(question.Words[1], question.Today) : question.Today.AddDays(Week);
        Dictionary<string, string> titles = club.Dances.Every().ToDictionary(d => d.Id, d => d.Facts.Title, StringComparer.Ordinal);
        RememberedDance[] dances = [.. new RevisionDesk().Of(club, held.Id, day).Where(d => titles.ContainsKey(d.DanceId) && (question.IsAll || d.Due > 0))];
        RememberedDance[] shown = question.IsAll ? dances : [.. dances.Take(Offered)];
        if (question.AsJson)
        {
            ScuffJson.Write(terminal.Out, [.. shown.Select(d => new BookDueRow(
                d.DanceId,
                titles[d.DanceId],
                d.Knowing is { } known ? BookWords.Of(known) : "",
                d.LastDanced is { } last ? DayWords.Plain(last) : null,
                d.LeftPercent,
                d.Due,
                d.Reason))]);
            return ExitCode.Clean;
        }

        if (shown.Length == 0)
        {
            terminal.Out.WriteLine(dances.Length == 0 && question.IsAll
                ? $"{held.Title} has danced nothing yet, as far as the book says."
                : $"{held.Title} is about to forget nothing by {DayWords.Plain(day)}.");
            return ExitCode.Clean;
        }

        terminal.Out.WriteLine(question.IsAll ? $"What {held.Title} is likely to have left on {DayWords.Plain(day)}:" : $"Dance these with {held.Title} on {DayWords.Plain(day)}:");
        Table.Write(
            terminal.Out,
            terminal.Paint,
            ["dance", "left", "why"],
            [.. shown.Select(d => (string[])[titles[d.DanceId], d.LeftPercent.ToString(CultureInfo.InvariantCulture) + " %", d.Reason])]);
        return ExitCode.Clean;
    }
}
