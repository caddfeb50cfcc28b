using System.CommandLine;
using Scuff.App.Nights;

namespace Scuff.App.Commands;

/// <summary><c>scuff night</c>: programmes of evenings and classes.</summary>
internal sealed class NightCommand : IProgramCommand
{
    private static readonly INightAct[] Acts =
    [
        .. typeof(NightCommand).Assembly.GetTypes()
            .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(INightAct)))
            .Select(t => (INightAct)Activator.CreateInstance(t)!)
            .OrderBy(a => a.Name, StringComparer.Ordinal),
    ];

    public string Name => "night";

    public IReadOnlyList<Example> Examples =>
    [
        new("night", "the evenings of the club in a table"),
        new("night make \"Harbour social\" 2026-12-05 --class monday:24 tuesday:18 --level improver:20 --rest 80:15", "begin an evening with who is there"),
        new("night plan harbour --request tin:3 --lesson 60:20:box --closing lantern", "make its programme, and keep it"),
        new("night plan harbour --never box --why", "forbid a dance, plan anew, and say why each line stands there"),
        new("night show harbour", "the programme as it was planned"),
        new("night write harbour programme.pdf", "the programme to print; notes.pdf are the caller's, playlist.zip is to be played"),
        new("night playlist harbour", "a folder that plays: the songs under numbered names, with silence between them"),
        new("night remove harbour", "remove it for good"),
    ];

    public string Closing => "Ends with 0 when all was done, 2 after wrong usage or trouble with the club or a file.";

    public Command Create(Terminal terminal)
    {
        Argument<string> act = new("act") { Description = "What to do; the evenings are told when not said.", DefaultValueFactory = _ => ListAct.Word };
        act.AcceptOnlyFromAmong([.. Acts.Select(a => a.Name)]);
        Argument<string[]> words = new("words") { Description = "An evening, a day, a form: as the examples show.", Arity = ArgumentArity.ZeroOrMore };
        Option<string?> folder = new("--club") { Description = "The folder of the club; the demo club when not said.", HelpName = "folder" };
        Command command = new(Name, "Plan an evening or a class: what is danced when, proven or with how far it may be from the best.") { act, words, folder };
        NightOptions options = new();
        options.AddTo(command);
        command.SetAction((parsed, cancel) => RunAsync(
            Acts.Single(a => a.Name == parsed.GetValue(act)), parsed, options, parsed.GetValue(words) ?? [], parsed.GetValue(folder), terminal, cancel));
        return command;
    }

    private static Task<int> RunAsync(
        INightAct act, ParseResult parsed, NightOptions options, string[] words, string? folder, Terminal terminal, CancellationToken cancel)
        => ClubActRun.RunAsync("night", act, options.Misplaced(parsed, act), words, folder, terminal, (club, now) => act.RunAsync(words, options, parsed, club, terminal, now, cancel));
}
