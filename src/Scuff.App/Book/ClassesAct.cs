using System.Globalization;
using Scuff.App.Classes;
using Scuff.App.Json;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book classes</c>, or nothing but <c>scuff book</c>: the classes in a table.</summary>
internal sealed class ClassesAct : IBookActAtOnce
{
    /// <summary>The word, which need not be said.</summary>
    public const string Word = "classes";

    private static readonly string[] Head = ["class", "meets", "minutes", "level", "place", "people", "last met", "planned"];

    public string Name => Word;

    public string Usage => "";

    public int Fewest => 0;

    public int Most => 0;

    public IReadOnlyList<string> Takes => [BookOptions.Json, BookOptions.All];

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        ValueList<ClubClass> classes = club.Book.Classes(includeEnded: question.IsAll);
        if (question.AsJson)
        {
            ScuffJson.Write(terminal.Out, [.. classes.Select(BookClassRow.Of)]);
        }
        else if (classes.Count == 0)
        {
            terminal.Out.WriteLine($"There are no classes yet. Begin one: {CommandTree.Name} book class \"Monday beginners\" --day monday --starts 19:30");
        }
        else
        {
            Table.Write(terminal.Out, terminal.Paint, Head, [.. classes.Select(c => Row(c, question, club))]);
        }

        return ExitCode.Clean;
    }

    private static IReadOnlyList<string> Row(ClubClass held, BookQuestion question, Club club)
    {
        ValueList<ClassSession> met = club.Book.Sessions(new SessionQuery { ClassId = held.Id, IsHeld = true, Take = 1 }).Sessions;
        ValueList<ClassSession> planned = club.Book.Sessions(new SessionQuery { ClassId = held.Id, IsHeld = false, From = question.Today }).Sessions;
        string meets = held.EndedOn is { } end ? $"ended {DayWords.Plain(end)}" : $"{held.Weekday} {(held.Starts is { } at ? DayWords.Clock(at) : "")}".Trim();
        return
        [
            .. new[]
            {
                held.Title, meets, held.Minutes.ToString(CultureInfo.InvariantCulture), held.Level, held.Place,
                held.People?.ToString(CultureInfo.InvariantCulture) ?? "", met is [var last] ? DayWords.Plain(last.Date) : "",
                planned is [.., var next] ? DayWords.Plain(next.Date) : "",
            }.Select(Plain.Line),
        ];
    }
}
