using Scuff.App.Classes;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book known CLASS DANCE LEVEL</c>: says how well a class knows a dance.</summary>
internal sealed class KnownAct : IBookActAtOnce
{
    public string Name => "known";

    public string Usage => "CLASS DANCE HOW";

    public int Fewest => 3;

    public int Most => 3;

    public IReadOnlyList<string> Takes => [BookOptions.Date];

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        ClubClass held = BookNames.Class(club, question.Words[0]);
        DanceRow dance = BookNames.Dance(club, question.Words[1]);
        Knowing? knowing = BookWords.MarkOf(question.Words[2]);
        DateOnly day = question.Date is { } said ? BookWords.DayOf(said, question.Today) : question.Today;
        club.Book.SetMark(new KnownMark(held.Id, dance.Id, day, knowing));
        string how = knowing is { } known ? BookWords.Shown(known) : "does not know it";
        terminal.Out.WriteLine(Plain.Line($"{held.Title}, {dance.Facts.Title}: {how}, from {DayWords.Plain(day)}"));
        return ExitCode.Clean;
    }
}
