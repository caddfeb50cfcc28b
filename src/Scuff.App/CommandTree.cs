using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Scuff.App.Commands;

namespace Scuff.App;

/// <summary>The program: its commands, and what happens whatever the command.</summary>
internal static class CommandTree
{
    /// <summary>The name of the program.</summary>
    public const string Name = "scuff";

    /// <summary>Runs what the arguments say.</summary>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        try
        {
            int code = Invoke(args, terminal);
            terminal.Out.Flush();
            return code;
        }
        catch (IOException trouble)
        {
            // Files are read and written under guards of their own; what comes here is standard output.
            terminal.Error.WriteLine($"{Name}: {FileWords.OutputFailed(trouble)}");
            return ExitCode.Trouble;
        }
    }

    /// <summary>The commands there are, in order of their names.</summary>
    public static IReadOnlyList<IProgramCommand> FindCommands() =>
    [
        .. typeof(CommandTree).Assembly.GetTypes()
            .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(IProgramCommand)))
            .Select(t => (IProgramCommand)Activator.CreateInstance(t)!)
            .OrderBy(c => c.Name, StringComparer.Ordinal),
    ];

    /// <summary>The whole tree.</summary>
    public static Command Create(Terminal terminal)
    {
        // A plain Command rather than a RootCommand: the latter takes its name from the assembly file.
        Command scuff = new(Name, "The workshop of a line dance choreographer and teacher: she types a dance in the words she would print; Scuff proves it and prints it.");
        HelpOption help = new() { Description = "Say what a command does, with examples." };
        IReadOnlyList<IProgramCommand> commands = FindCommands();
        help.Action = new HelpPages(commands, terminal);
        scuff.Options.Add(help);
        scuff.Options.Add(new VersionOption { Description = "Say which version this is." });
        foreach (IProgramCommand command in commands)
        {
            scuff.Subcommands.Add(command.Create(terminal));
        }

        scuff.SetAction(_ => ShowHelp(scuff, null, terminal));
        return scuff;
    }

    /// <summary>Shows the help of a command, or of the whole program.</summary>
    public static int ShowHelp(Command scuff, string? command, Terminal terminal)
    {
        string[] args = command is null ? ["--help"] : [command, "--help"];
        return scuff.Parse(args).Invoke(Configure(terminal));
    }

    private static InvocationConfiguration Configure(Terminal terminal) => new()
    {
        Output = terminal.Out,
        Error = terminal.Error,
        EnableDefaultExceptionHandler = false,
    };

    private static int Invoke(IReadOnlyList<string> args, Terminal terminal)
    {
        Command scuff = Create(terminal);

        // A file may be called @something; nothing is to be read in place of an argument.
        ParseResult parsed = scuff.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Action is ParseErrorAction)
        {
            TellWrongUsage(scuff, parsed, terminal);
            return ExitCode.Trouble;
        }

        return parsed.Invoke(Configure(terminal));
    }

    private static void TellWrongUsage(Command scuff, ParseResult parsed, Terminal terminal)
    {
        Command command = parsed.CommandResult.Command;
        if (command == scuff && parsed.UnmatchedTokens.Count > 0)
        {
            string names = string.Join(", ", scuff.Subcommands.Select(c => c.Name));
            terminal.Tell($"There is no command {parsed.UnmatchedTokens[0]}. The commands are {names}.");
            return;
        }

        foreach (string message in parsed.Errors.Select(e => e.Message).Distinct(StringComparer.Ordinal))
        {
            terminal.Tell(message);
        }

        terminal.Error.WriteLine($"See: {Name} help {(command == scuff ? "" : command.Name)}".TrimEnd());
    }
}
