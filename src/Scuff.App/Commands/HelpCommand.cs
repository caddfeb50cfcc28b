using System.CommandLine;

namespace Scuff.App.Commands;

/// <summary><c>scuff help check</c>: the same as <c>scuff check --help</c>.</summary>
internal sealed class HelpCommand : IProgramCommand
{
    public string Name => "help";

    public IReadOnlyList<Example> Examples =>
    [
        new("help", "name all commands"),
        new("help sheet", "say what sheet does and takes"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string?> about = new("command") { Description = "The command to tell about.", Arity = ArgumentArity.ZeroOrOne };
        Command command = new(Name, "Say what a command does, with examples.") { about };
        command.SetAction(parsed =>
        {
            Command scuff = (Command)parsed.RootCommandResult.Command;
            string? name = parsed.GetValue(about);
            if (name is not null && !scuff.Subcommands.Any(c => c.Name == name))
            {
                terminal.Tell($"There is no command {name}. The commands are {string.Join(", ", scuff.Subcommands.Select(c => c.Name))}.");
                return ExitCode.Trouble;
            }

            return CommandTree.ShowHelp(scuff, name, terminal);
        });
        return command;
    }
}
