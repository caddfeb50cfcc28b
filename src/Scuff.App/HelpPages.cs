using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Scuff.App.Commands;

namespace Scuff.App;

/// <summary>Help: what a command does and takes, with examples to copy.</summary>
internal sealed class HelpPages(IReadOnlyList<IProgramCommand> commands, Terminal terminal) : SynchronousCommandLineAction
{
    private readonly HelpAction _usual = new() { MaxWidth = terminal.Width };

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        _usual.Invoke(parseResult);
        TextWriter output = terminal.Out;
        string name = parseResult.CommandResult.Command.Name;
        IProgramCommand? command = commands.FirstOrDefault(c => c.Name == name);
        IEnumerable<Example> examples = command?.Examples ?? commands.Select(c => c.Examples[0]);
        output.WriteLine("Examples:");
        foreach (Example example in examples)
        {
            output.WriteLine($"  {CommandTree.Name} {example.Line}");
            output.WriteLine(terminal.Paint.Of(Tone.Soft, $"      {example.Meaning}"));
        }

        output.WriteLine();
        output.WriteLine((command ?? commands[0]).Closing.ReplaceLineEndings(output.NewLine));
        return ExitCode.Clean;
    }
}
