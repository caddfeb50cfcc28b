using Scuff.App.Classes;
using Scuff.App.Complaints;
using Scuff.App.Json;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary>What planning a session and recording one share: a class, a day, dances.</summary>
internal abstract class SessionAct : IBookActAtOnce
{
    public abstract string Name { get; }

    public string Usage => "CLASS DAY";

    public int Fewest => 2;

    public int Most => 2;

    public IReadOnlyList<string> Takes => [.. BookOptions.OfDances, BookOptions.Starts, BookOptions.Minutes, BookOptions.People, BookOptions.Note, BookOptions.Json];

    /// <summary>Whether the session was held.</summary>
    protected abstract bool IsHeld { get; }

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        ClubClass held = BookNames.Class(club, question.Words[0]);
        DateOnly day = BookWords.DayOf(question.Words[1], question.Today);
        ClassSession? there = club.Book.Sessions(new SessionQuery { ClassId = held.Id, From = day, To = day }).Sessions is [var latest, ..] ? latest : null;
        if (there is { IsHeld: true } && !IsHeld)
        {
            throw BookWords.Cannot($"{held.Title} met on {DayWords.Plain(day)} already, so there is nothing to plan. To change what stands in the book: {CommandTree.Name} book record");
        }

        ClassSession before = there ?? new ClassSession { ClassId = held.Id, Date = day };
        ClassSession kept = club.Book.SaveSession(before with
        {
            IsHeld = IsHeld,
            Starts = question.Starts is { } starts ? BookWords.TimeOf(starts) : before.Starts,
            Minutes = question.Minutes ?? before.Minutes,
            People = question.People ?? before.People,
            HowItWent = question.Note ?? before.HowItWent,
            Items = question.Dances.Count == 0 ? before.Items : question.Dances.Select(d => BookNames.Item(club, d.Role, d.Dance)).ToValueList(),
        });
        if (question.AsJson)
        {
            ScuffJson.Write(terminal.Out, [BookSessionRow.Of(kept)]);
            return ExitCode.Clean;
        }

        string done = Done(there, question.Dances.Count > 0);
        terminal.Out.WriteLine(Plain.Line($"{done} {held.Title} on {DayWords.Plain(day)}: {Summary.Number(kept.Items.Count, "dance")}"));
        SessionTable.Write([kept], club, terminal);
        return ExitCode.Clean;
    }

    /// <summary>What was done, as the beginning of a sentence.</summary>
    /// <param name="there">The session that was there; null for a new one.</param>
    /// <param name="hasDances">Whether dances were named.</param>
    protected abstract string Done(ClassSession? there, bool hasDances);
}
