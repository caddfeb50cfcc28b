using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Scuff.Analysis;
using Scuff.App.Complaints;
using Scuff.App.Explaining;
using Scuff.App.Files;
using Scuff.App.Json;
using Scuff.Prose;
using Scuff.Timelines;

namespace Scuff.App.Commands;

/// <summary><c>scuff explain</c>: the dance danced, count by count.</summary>
internal sealed class ExplainCommand : IProgramCommand
{
    public string Name => "explain";

    public IReadOnlyList<Example> Examples =>
    [
        new("explain my-dance.dance", "show foot, weight, facing and place at every count"),
        new("explain --wall 3 my-dance.dance", "only the third wall"),
        new("explain --json my-dance.dance", "the same for a script"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = DanceFiles.CreateArgument();
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per file." };
        Option<int?> wall = new("--wall")
        {
            Description = "Only this wall (repetition), from 1.",
            HelpName = "number",
            CustomParser = ReadWall,
        };
        Option<string?> track = new("--track") { Description = "As danced on this track (its number, or words of its title); none for plain walls.", HelpName = "track" };
        Option<bool> all = new("--all") { Description = "Show every wall in full, also what was shown before." };
        Command command = new(Name, "Dance the text count by count: foot, weight, facing and place.") { files, json, wall, track, all };
        command.SetAction(parsed => Run(
            parsed.GetValue(files),
            new Wish(parsed.GetValue(json), parsed.GetValue(wall), parsed.GetValue(track), parsed.GetValue(all)),
            terminal));
        return command;
    }

    // In words of our own: the parser's name the type it wanted.
    private static int? ReadWall(ArgumentResult result)
    {
        string word = result.Tokens[0].Value;
        if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int wall) && wall >= 1)
        {
            return wall;
        }

        result.AddError($"--wall takes the number of a wall, from 1, and not {word}.");
        return null;
    }

    private static int Run(string[]? names, Wish wish, Terminal terminal)
    {
        IEnumerable<DanceInput>? inputs = DanceFiles.Read(names, terminal);
        if (inputs is null)
        {
            return ExitCode.Trouble;
        }

        int code = ExitCode.Clean;
        List<ExplainedFile> answers = [];
        ExplainedTables tables = new(terminal.Out, terminal.Paint);
        foreach (DanceInput input in inputs)
        {
            if (!DanceFiles.IsReadable(input, terminal))
            {
                code = ExitCode.Trouble;
                answers.Add(ExplainedFile.Unreadable(input, input.Trouble!));
                continue;
            }

            DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(input.Text));
            TimelineChoice? choice = TimelineChoice.Of(analysis, wish.Track);
            Timeline? timeline = choice?.Timeline;
            string? trouble = timeline is null
                ? $"{input.Spoken} names no track {wish.Track}."
                : wish.Wall > timeline.Walls ? $"{input.Spoken} is danced for {Summary.Number(timeline.Walls, "wall")} here; there is no wall {wish.Wall}." : null;
            if (timeline is null || trouble is not null)
            {
                terminal.Tell(trouble!);
                code = ExitCode.Trouble;
                answers.Add(ExplainedFile.Unreadable(input, trouble!));
                continue;
            }

            code = Math.Max(code, Complained.Tell(input, analysis.Report, terminal));
            if (wish.AsJson)
            {
                answers.Add(ExplainedFile.Of(input, timeline, wish.Wall));
            }
            else
            {
                string title = analysis.Dance.Title.Length > 0 ? analysis.Dance.Title : input.Spoken;
                string to = choice!.TrackTitle.Length > 0 ? $", danced to “{choice.TrackTitle}”" : "";
                tables.Show(title + to, timeline, wish.Wall, wish.All);
            }
        }

        if (wish.AsJson)
        {
            ScuffJson.Write(terminal.Out, answers);
        }

        return code;
    }

    /// <summary>What is wanted of every dance.</summary>
    private sealed record Wish(bool AsJson, int? Wall, string? Track, bool All);
}
