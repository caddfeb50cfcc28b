using System.CommandLine;
using Scuff.Analysis;
using Scuff.Analysis.Compare;
using Scuff.App.Complaints;
using Scuff.App.Files;
using Scuff.App.Json;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Languages;

namespace Scuff.App.Commands;

/// <summary><c>scuff compare</c>: what changed between two versions of a dance.</summary>
internal sealed class CompareCommand : IProgramCommand
{
    public string Name => "compare";

    public IReadOnlyList<Example> Examples =>
    [
        new("compare old.dance new.dance", "say what changed, in dance terms: steps, facing, weight, tags, restarts, music"),
        new("compare --json old.dance new.dance", "the same for a script"),
        new("compare old.dance - < new.dance", "compare with a text on its way"),
    ];

    public string Closing =>
        """
        Ends with 0 when both dance and print the same (words may differ), 1 when something changed,
        2 after wrong usage or trouble with a file.
        """;

    public Command Create(Terminal terminal)
    {
        // A folder or standard input may be named as for other commands, so the number of texts is judged when they are known.
        Argument<string[]> files = new("files") { Description = "The earlier and the later version; - for standard input.", Arity = ArgumentArity.ZeroOrMore };
        Option<bool> json = new("--json") { Description = "Answer in JSON: one object with the changes." };
        Command command = new(Name, "Compare two versions of a dance: 0 when they are the same, 1 when they differ.") { files, json };
        command.SetAction(parsed => Run(parsed.GetValue(files) ?? [], parsed.GetValue(json), terminal));
        return command;
    }

    private static int Run(string[] names, bool asJson, Terminal terminal)
    {
        if (!Options.AreKnown(names, terminal))
        {
            return ExitCode.Trouble;
        }

        if (names.Length != 2 || names.All(n => n == DanceInput.StandardInput))
        {
            terminal.Tell("Name two dances: the earlier version, then the later one.");
            return ExitCode.Trouble;
        }

        DanceInput[] inputs = [.. names.Select(n => InputReader.Read([n], terminal).First())];
        bool[] areReadable = [.. inputs.Select(i => DanceFiles.IsReadable(i, terminal))];
        if (areReadable.Contains(false))
        {
            if (asJson)
            {
                ScuffJson.Write(terminal.Out, ComparedFiles.Unreadable(inputs[0], inputs[1]));
            }

            return ExitCode.Trouble;
        }

        DanceAnalysis before = DanceAnalysis.Of(DanceReader.Read(inputs[0].Text));
        DanceAnalysis after = DanceAnalysis.Of(DanceReader.Read(inputs[1].Text));
        DanceComparison comparison = DanceComparison.Of(before, after);
        if (asJson)
        {
            ScuffJson.Write(terminal.Out, ComparedFiles.Of(inputs[0], inputs[1], comparison));
        }
        else
        {
            Show(inputs[1], comparison, terminal);
        }

        return comparison.IsSame ? ExitCode.Clean : ExitCode.Complaints;
    }

    private static void Show(DanceInput later, DanceComparison comparison, Terminal terminal)
    {
        foreach (string sentence in ChangeWords.Of(comparison, SheetLanguage.English))
        {
            string indent = "";
            foreach (string line in Wrapping.Wrap(Plain.Line(sentence), terminal.Width - 2))
            {
                terminal.Out.WriteLine(indent + line);
                indent = "  ";
            }
        }

        if (comparison.Changes.Count == 0)
        {
            terminal.Out.WriteLine(terminal.Paint.Of(Tone.Good, Plain.Line($"{later.Spoken}: nothing changed")));
        }
        else if (!comparison.IsSame)
        {
            terminal.Out.WriteLine();
            int changes = comparison.Changes.Count(c => c is not DanceChange.WordsOnly);
            terminal.Out.WriteLine(terminal.Paint.Of(Tone.Open, Plain.Line($"{later.Spoken}: {Summary.Number(changes, "change")}")));
        }
    }
}
