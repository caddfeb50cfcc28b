using Scuff.App.Complaints;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book people</c>: the people she keeps, if any: told, added, written into a file, erased for good.</summary>
internal sealed class PeopleAct : IBookActAtOnce
{
    private const string Add = "add";
    private const string Export = "export";
    private const string Erase = "erase";

    private static readonly string[] Head = ["person", "level", "classes", "needs"];

    public string Name => "people";

    public string Usage => "[add NAME | export FILE | erase NAME | erase --all]";

    public int Fewest => 0;

    public int Most => 2;

    public IReadOnlyList<string> Takes => [BookOptions.Level, BookOptions.Class, BookOptions.Needs, BookOptions.Note, BookOptions.All];

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        switch (question.Words)
        {
            case []:
                List(club, terminal);
                break;
            case [Add, var name]:
                Keep(name, question, club, terminal);
                break;
            case [Export, var file]:
                int written = club.People.Export(terminal.FullPath(file));
                terminal.Out.WriteLine(Plain.Line($"Wrote {Count(written)} into {file}"));
                break;
            case [Erase] when question.IsAll:
                Tell(club.People.EraseAll(), terminal);
                break;
            case [Erase, var name] when !question.IsAll:
                Tell(club.People.Erase(Find(name, club).Id), terminal);
                break;
            default:
                throw BookWords.Cannot($"Say what to do with the people: {CommandTree.Name} book people {Usage}");
        }

        return ExitCode.Clean;
    }

    private static void List(Club club, Terminal terminal)
    {
        ValueList<ClubPerson> people = club.People.List();
        if (people.Count == 0)
        {
            terminal.Out.WriteLine("No people are kept, and nothing needs any.");
            return;
        }

        Dictionary<string, string> titles = club.Book.Classes(includeEnded: true).ToDictionary(c => c.Id, c => c.Title);
        Table.Write(terminal.Out, terminal.Paint, Head, [.. people.Select(p => (IReadOnlyList<string>)
            [Plain.Line(p.Name), Plain.Line(p.Level), Plain.Line(string.Join("; ", p.ClassIds.Select(c => titles[c]))), Plain.Line(p.Needs)])]);
    }

    private static void Keep(string name, BookQuestion question, Club club, Terminal terminal)
    {
        ClubPerson before = club.People.List().FirstOrDefault(p => p.Name == name) ?? new ClubPerson { Name = name };
        ClubPerson kept = club.People.Save(before with
        {
            Level = question.Level ?? before.Level,
            ClassIds = question.Classes.Count == 0 ? before.ClassIds : question.Classes.Select(c => BookNames.Class(club, c).Id).ToValueList(),
            Needs = question.Needs ?? before.Needs,
            Notes = question.Note ?? before.Notes,
        });
        terminal.Out.WriteLine(Plain.Line($"Kept {kept.Name}, on this machine only"));
    }

    private static ClubPerson Find(string name, Club club)
    {
        ClubPerson[] found = [.. club.People.List().Where(p => p.Id == name || string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase))];
        return found switch
        {
            [var person] => person,
            [] => throw new ClubTrouble(ClubTroubleKind.NotFound, $"Nobody called {name} is kept, so nobody was erased. Write the whole name."),
            _ => throw new ClubTrouble(
                ClubTroubleKind.NotFound, $"{found.Length} people are called {name}. Erase one by id: {string.Join(", ", found.Select(p => p.Id))}"),
        };
    }

    private static void Tell(ErasedPeople erased, Terminal terminal)
    {
        terminal.Out.WriteLine($"Erased {Count(erased.Count)} for good. Backups that you made with people hold them still: delete those files.");
        if (erased.Cleaned.Count > 0)
        {
            terminal.Out.WriteLine(Plain.Line($"Taken out of what Scuff had kept by itself: {string.Join(", ", erased.Cleaned)}"));
        }

        if (erased.Untouched.Count > 0)
        {
            terminal.Out.WriteLine(Plain.Line($"These in the folder kept could not be read and may hold people: {string.Join(", ", erased.Untouched)}"));
        }
    }

    private static string Count(int people) => people == 1 ? Summary.Number(people, "person") : $"{people} people";
}
