using System.CommandLine;
using Scuff.Analysis;
using Scuff.Analysis.Levels;
using Scuff.App.Complaints;
using Scuff.App.Files;
using Scuff.App.Json;
using Scuff.Prose;

namespace Scuff.App.Commands;

/// <summary><c>scuff level</c>: the level of a dance by the published definitions, with every reason.</summary>
internal sealed class LevelCommand : IProgramCommand
{
    private const int LeastWidth = 20;

    public string Name => "level";

    public IReadOnlyList<Example> Examples =>
    [
        new("level my-dance.dance", "name the level, why it is that, and what would make it easier"),
        new("level --sources my-dance.dance", "with the source of every limit"),
        new("level --json my-dance.dance", "the same for a script"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = DanceFiles.CreateArgument();
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per file." };
        Option<bool> sources = new("--sources") { Description = "Tell where each limit comes from." };
        Command command = new(Name, "Name the level by the published definitions, with every reason.") { files, json, sources };
        command.SetAction(parsed => Run(parsed.GetValue(files), parsed.GetValue(json), parsed.GetValue(sources), terminal));
        return command;
    }

    private static int Run(string[]? names, bool asJson, bool withSources, Terminal terminal)
    {
        IEnumerable<DanceInput>? inputs = DanceFiles.Read(names, terminal);
        if (inputs is null)
        {
            return ExitCode.Trouble;
        }

        int code = ExitCode.Clean;
        bool isFirst = true;
        List<LevelledFile> answers = [];
        foreach (DanceInput input in inputs)
        {
            if (!DanceFiles.IsReadable(input, terminal))
            {
                code = ExitCode.Trouble;
                answers.Add(LevelledFile.Unreadable(input));
                continue;
            }

            DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(input.Text));
            code = Math.Max(code, Complained.Tell(input, analysis.Report, terminal));
            if (asJson)
            {
                answers.Add(LevelledFile.Of(input, analysis));
                continue;
            }

            if (!isFirst)
            {
                terminal.Out.WriteLine();
            }

            isFirst = false;
            Show(input, analysis, withSources, terminal);
        }

        if (asJson)
        {
            ScuffJson.Write(terminal.Out, answers);
        }

        return code;
    }

    private static void Show(DanceInput input, DanceAnalysis analysis, bool withSources, Terminal terminal)
    {
        ComputedLevel level = analysis.Level;
        string title = analysis.Dance.Title.Length > 0 ? analysis.Dance.Title : input.Spoken;
        string stated = LevelWords.Of(analysis.Dance) is { } words ? $" (the heading says {words})" : "";
        Line($"{title}: {LevelPhrases.Name(level.Level)}{stated}", "", Tone.Name);
        if (!level.IsComplete)
        {
            Line("Some words could not be read, so it may be harder.", "  ", Tone.Open);
        }

        foreach (LevelReason reason in level.Reasons)
        {
            string place = reason.Place is { } at ? $" ({at.Words})" : "";
            Line($"{LevelPhrases.Name(reason.Level)}: {reason.Words}{place}", "  ");
            if (withSources)
            {
                Line(reason.Source, "    ", Tone.Soft);
            }
        }

        if (level.OneLevelDown.Length > 0)
        {
            Line($"One level down: {level.OneLevelDown}.", "  ");
        }

        void Line(string text, string indent, Tone? tone = null)
        {
            foreach (string row in Wrapping.Wrap(Plain.Line(text), Math.Max(LeastWidth, terminal.Width - indent.Length)))
            {
                terminal.Out.WriteLine(indent + (tone is { } colour ? terminal.Paint.Of(colour, row) : row));
            }
        }
    }
}
