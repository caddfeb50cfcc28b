using System.CommandLine;
using Scuff.App.Book;

namespace Scuff.App.Commands;

/// <summary><c>scuff book</c>: classes, what they did and will do, and how well they know their dances.</summary>
internal sealed class BookCommand : IProgramCommand
{
    private static readonly IBookAct[] Acts =
    [
        .. typeof(BookCommand).Assembly.GetTypes()
            .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(IBookAct)))
            .Select(t => (IBookAct)Activator.CreateInstance(t)!)
            .OrderBy(a => a.Name, StringComparer.Ordinal),
    ];

    public string Name => "book";

    public IReadOnlyList<Example> Examples =>
    [
        new("book", "the classes of the club in a table"),
        new("book class Monday --day monday --starts 19:30 --minutes 90", "begin a class, or change one"),
        new("book plan Monday 2026-03-09 --revised Tin-Lantern --taught Harbour-Box", "plan a session"),
        new("book record Monday 2026-03-09 --people 12 --note laughing", "it went as planned; or name the dances as in a plan"),
        new("book record Monday today --taught Harbour --danced Tin +Somebody-elses", "the beginning of a title will do; + for a dance that is not in the club"),
        new("book known Monday Harbour cues", $"how well a class knows a dance: {BookWords.MarksTaken}"),
        new("book revise Monday", "what it is about to forget: dance these next week"),
        new("book alike Harbour", "which dances are like it by what the feet do, and which sections they share"),
        new("book show Monday", "its dances, how well it knows them, and what changed since it was taught"),
        new("book sessions Monday", "its last sessions"),
        new("book write book.xlsx", $"dances, sessions and who knows what as a file: {string.Join(", ", Handouts.BookHandouts.All.Select(h => h.Name))}"),
        new("book people export people.csv", "the people you keep, if any; erase --all erases them for good"),
    ];

    public string Closing => "Ends with 0 when all was done, 2 after wrong usage or trouble with the club.";

    public Command Create(Terminal terminal)
    {
        Argument<string> act = new("act") { Description = "What to do; the classes are told when not said.", DefaultValueFactory = _ => ClassesAct.Word };
        act.AcceptOnlyFromAmong([.. Acts.Select(a => a.Name)]);
        Argument<string[]> words = new("words") { Description = "A class, a day, a dance: as the examples show.", Arity = ArgumentArity.ZeroOrMore };
        Option<string?> folder = new("--club") { Description = "The folder of the club; the demo club when not said.", HelpName = "folder" };
        Command command = new(Name, "Keep classes: what they did and will do, and how well they know their dances.") { act, words, folder };
        BookOptions options = new();
        options.AddTo(command);
        command.SetAction((parsed, cancel) => RunAsync(
            Acts.Single(a => a.Name == parsed.GetValue(act)), parsed, options, parsed.GetValue(words) ?? [], parsed.GetValue(folder), terminal, cancel));
        return command;
    }

    private static Task<int> RunAsync(
        IBookAct act, ParseResult parsed, BookOptions options, string[] words, string? folder, Terminal terminal, CancellationToken cancel)
        => ClubActRun.RunAsync("book", act, options.Misplaced(parsed, act), words, folder, terminal, (club, now) => act.RunAsync(options.Read(parsed, words, now), club, terminal, cancel));
}
