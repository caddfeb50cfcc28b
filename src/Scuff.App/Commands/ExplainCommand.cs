using System.CommandLine;
using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Floor;
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
    private const double LeastHeight = 0.5;
    private const double MostHeight = 2.5;

    public string Name => "explain";

    public IReadOnlyList<Example> Examples =>
    [
        new("explain my-dance.dance", "show foot, weight, facing and place at every count"),
        new("explain --wall 3 my-dance.dance", "only the third wall"),
        new("explain --height 1.55 my-dance.dance", "with the steps of a smaller dancer"),
        new("explain --json my-dance.dance", "the same for a script"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = DanceFiles.CreateArgument();
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per file." };
        // Read as words and parsed here: the parser's own sentence would name a type, and its numbers cost every start.
        Option<string?> wall = new("--wall") { Description = "Only this wall (repetition), from 1.", HelpName = "number" };
        Option<string?> height = new("--height") { Description = "Height of the dancer in metres; 1.68 when not said.", HelpName = "metres" };
        Option<string?> track = new("--track") { Description = "As danced on this track (its number, or words of its title); none for plain walls.", HelpName = "track" };
        Option<bool> all = new("--all") { Description = "Show every wall in full, also what was shown before." };
        Command command = new(Name, "Dance the text count by count: foot, weight, facing and place.") { files, json, wall, height, track, all };
        command.SetAction(parsed =>
        {
            Wish wish = new(parsed.GetValue(json), parsed.GetValue(track), parsed.GetValue(all));
            return Add(ref wish, parsed.GetValue(wall), parsed.GetValue(height), terminal)
                ? Run(parsed.GetValue(files), wish, terminal)
                : ExitCode.Trouble;
        });
        return command;
    }

    private static bool Add(ref Wish wish, string? wallWord, string? heightWord, Terminal terminal)
    {
        if (wallWord is not null)
        {
            if (!int.TryParse(wallWord, NumberStyles.None, CultureInfo.InvariantCulture, out int wall) || wall < 1)
            {
                terminal.Tell($"--wall takes the number of a wall, from 1, and not {wallWord}.");
                return false;
            }

            wish = wish with { Wall = wall };
        }

        if (heightWord is not null)
        {
            if (!double.TryParse(heightWord, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double height)
                || height is < LeastHeight or > MostHeight)
            {
                terminal.Tell(string.Create(CultureInfo.InvariantCulture, $"--height takes metres between {LeastHeight} and {MostHeight}, and not {heightWord}."));
                return false;
            }

            wish = wish with { Size = new DancerSize(height) };
        }

        return true;
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
        ExplainedTables tables = new(terminal.Out, terminal.Paint, wish.Size);
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
    private sealed record Wish(bool AsJson, string? Track, bool All)
    {
        public int? Wall { get; init; }

        public DancerSize Size { get; init; } = DancerSize.Default;
    }
}
