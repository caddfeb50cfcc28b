using System.CommandLine;
using System.Globalization;
using Scuff.App.Complaints;
using Scuff.App.Files;
using Scuff.App.Fitting;
using Scuff.App.Json;
using Scuff.App.Tracks;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Prose;

namespace Scuff.App.Commands;

/// <summary><c>scuff match</c>: which tracks suit a dance, which dances a track.</summary>
internal sealed class MatchCommand : IProgramCommand
{
    private const string DanceEnding = ".dance";
    private const int UsualMost = 20;

    public string Name => "match";

    public IReadOnlyList<Example> Examples =>
    [
        new("match my-dance.dance music", "rank the tracks of a folder for a dance, and say why"),
        new("match --no-tags my-dance.dance music", "only the tracks that need no tag or restart"),
        new("match my-dances song.mp3", "rank the dances of a folder for a track"),
        new("match --json my-dance.dance music", "the same for a script"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = new("files") { Description = "Dances and tracks, or folders of them: one dance and many tracks, or many dances and one track.", Arity = ArgumentArity.OneOrMore };
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per track or dance." };
        Option<bool> noTags = new("--no-tags") { Description = "Only those that need no interruption." };
        Option<int> most = new("--most") { Description = "How many to name.", HelpName = "number", DefaultValueFactory = _ => UsualMost };
        TrackOptions tracks = new();
        Command command = new(Name, "Rank tracks for a dance, or dances for a track.") { files, json, noTags, most };
        tracks.AddTo(command);
        command.SetAction(parsed => Run(
            parsed, tracks, parsed.GetValue(files) ?? [], parsed.GetValue(json), parsed.GetValue(noTags), parsed.GetValue(most), terminal));
        return command;
    }

    private static int Run(ParseResult parsed, TrackOptions options, string[] names, bool asJson, bool noTags, int most, Terminal terminal)
    {
        if (!Options.AreKnown(names, terminal))
        {
            return ExitCode.Trouble;
        }

        if (most < 1)
        {
            terminal.Tell("--most is 1 or more.");
            return ExitCode.Trouble;
        }

        string[] danceNames = [.. names.Where(n => IsOfDances(n, terminal))];
        string[] trackNames = [.. names.Except(danceNames)];
        if (danceNames.Length == 0 || trackNames.Length == 0)
        {
            terminal.Tell("Name a dance and tracks, or a track and dances: scuff match my-dance.dance music");
            return ExitCode.Trouble;
        }

        int code = ExitCode.Clean;
        List<(string Name, Dance Dance)> dances = [];
        foreach (DanceInput input in InputReader.Read(danceNames, terminal))
        {
            if (DanceFiles.IsReadable(input, terminal))
            {
                dances.Add((input.Name, DanceReader.Read(input.Text).Dance));
            }
            else
            {
                code = ExitCode.Trouble;
            }
        }

        if (options.Read(parsed, trackNames, terminal)?.ToArray() is not { } heard)
        {
            return ExitCode.Trouble;
        }

        (string Name, TrackMap Map)[] tracks = [.. heard.Where(t => t.Map is not null).Select(t => (t.Name, t.Titled!))];
        code = tracks.Length < heard.Length ? ExitCode.Trouble : code;
        if (dances.Count == 0 || tracks.Length == 0)
        {
            return ExitCode.Trouble;
        }

        IReadOnlyList<MatchRow> rows = dances.Count == 1
            ? Matching.Tracks(dances[0], tracks, noTags, most, Environment.ProcessorCount)
            : Matching.Dances(dances, tracks, noTags, most);
        if (asJson)
        {
            ScuffJson.Write(terminal.Out, rows);
        }
        else
        {
            Show(rows, dances.Count == 1 ? (Func<MatchRow, string>)(r => r.Title) : r => r.Dance, terminal);
        }

        return code;
    }

    // A folder is one of dances when it holds any.
    private static bool IsOfDances(string name, Terminal terminal)
    {
        string path = terminal.FullPath(name);
        return name == DanceInput.StandardInput
            || name.EndsWith(DanceEnding, StringComparison.OrdinalIgnoreCase)
            || (Directory.Exists(path) && Directory.EnumerateFiles(path, "*" + DanceEnding, SearchOption.AllDirectories).Any());
    }

    private static void Show(IReadOnlyList<MatchRow> rows, Func<MatchRow, string> name, Terminal terminal)
    {
        if (rows.Count == 0)
        {
            terminal.Out.WriteLine("None.");
        }

        foreach (MatchRow row in rows)
        {
            string points = row.Points is { } p ? string.Create(CultureInfo.InvariantCulture, $"{p} points") : "no fit";
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{row.Rank,3}. ")
                + terminal.Paint.Of(Tone.Name, Plain.Line(name(row)))
                + terminal.Paint.Of(Tone.Soft, Plain.Line($"  ({points})")));
            foreach (string line in Wrapping.Wrap(Plain.Line(row.Why), terminal.Width - 5))
            {
                terminal.Out.WriteLine("     " + line);
            }
        }
    }
}
