using Scuff.App.Classes;
using Scuff.App.Json;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book class TITLE</c>: begins a class, changes one, ends or removes one.</summary>
internal sealed class ClassAct : IBookActAtOnce
{
    public string Name => "class";

    public string Usage => "CLASS";

    public int Fewest => 1;

    public int Most => 1;

    public IReadOnlyList<string> Takes =>
    [
        BookOptions.Day, BookOptions.Starts, BookOptions.Minutes, BookOptions.Level, BookOptions.Place, BookOptions.People, BookOptions.Note,
        BookOptions.Title, BookOptions.Ended, BookOptions.Remove, BookOptions.ForGood, BookOptions.Json,
    ];

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        if (question.IsForGood && !question.IsRemoving)
        {
            throw BookWords.Cannot("--for-good goes with --remove.");
        }

        if (question.IsRemoving)
        {
            return Remove(question, club, terminal);
        }

        // a name that begins like that of another class is a new one all the same, unless it is asked to be called otherwise
        string typed = question.Words[0];
        ClubClass? there = club.Book.Named(typed).FirstOrDefault(c => c.Id == typed || IsCalled(c, typed));
        if (there is null && question.Title is not null)
        {
            there = BookNames.Class(club, typed);
        }

        ClubClass before = there ?? new ClubClass { Title = typed };
        ClubClass kept = club.Book.SaveClass(before with
        {
            Title = question.Title ?? before.Title,
            Level = question.Level ?? before.Level,
            Weekday = question.Day is { } day ? BookWords.WeekdayOf(day) : before.Weekday,
            Starts = question.Starts is { } starts ? BookWords.TimeOf(starts) : before.Starts,
            Minutes = question.Minutes ?? before.Minutes,
            Place = question.Place ?? before.Place,
            People = question.People ?? before.People,
            Notes = question.Note ?? before.Notes,
            EndedOn = question.Ended is { } ended ? BookWords.DayOf(ended, question.Today) : before.EndedOn,
        });
        if (question.AsJson)
        {
            ScuffJson.Write(terminal.Out, [BookClassRow.Of(kept)]);
        }
        else
        {
            terminal.Out.WriteLine(Plain.Line($"{(there is null ? "Began" : "Changed")} {kept.Title}: {ClassWords.Of(kept)}"));
        }

        return ExitCode.Clean;
    }

    private static bool IsCalled(ClubClass held, string typed)
        => string.Equals(held.Title, string.Join(' ', typed.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.OrdinalIgnoreCase);

    private static int Remove(BookQuestion question, Club club, Terminal terminal)
    {
        ClubClass held = BookNames.Class(club, question.Words[0]);
        string sentence = club.Book.RemoveClass(held.Id, question.IsForGood) == ClassRemoval.Ended
            ? $"Ended {held.Title}; what it did stays in the book. To remove that too: --remove --for-good"
            : $"Removed {held.Title}";
        terminal.Out.WriteLine(Plain.Line(sentence));
        return ExitCode.Clean;
    }
}
