using System.CommandLine;
using Scuff.Analysis;
using Scuff.App.Complaints;
using Scuff.App.Files;
using Scuff.App.Json;
using Scuff.App.Tracks;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Prose;

namespace Scuff.App.Commands;

/// <summary><c>scuff check</c>: proves dances and says what is wrong, for people or for scripts.</summary>
internal sealed class CheckCommand : IProgramCommand
{
    // one of them is told of; more only make a folder of copies slow
    private const int MostNamesakes = 8;

    public string Name => "check";

    public IReadOnlyList<Example> Examples =>
    [
        new("check my-dance.dance", "say what cannot be danced as written, and what would mend it"),
        new("check demo/dances", "check every dance of a folder"),
        new("check --fix my-dance.dance", "make the mends that can be made without asking"),
        new("check --track song.mp3 my-dance.dance", "check tempo, intro, walls and ending against the music"),
        new("check --json *.dance", "the same for a script"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = DanceFiles.CreateArgument();
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per file." };
        Option<bool> fix = new("--fix") { Description = "Make the mends that are safe, and write the file." };
        Option<string[]> tracks = new("--track") { Description = "A track of the dance (by title), or a folder of tracks: what the sheet says is checked against the music.", HelpName = "file" };
        TrackOptions reading = new();
        Command command = new(Name, "Prove dances: counts, weight, facing, walls, tags and restarts.") { files, json, fix, tracks };
        reading.AddTo(command);
        command.SetAction(parsed =>
        {
            IReadOnlyList<HeardTrack>? heard = parsed.GetValue(tracks) is { Length: > 0 } named ? reading.Read(parsed, named, terminal)?.ToList() : [];
            return heard is null
                ? ExitCode.Trouble
                : Math.Max(
                    heard.Any(t => t.Map is null) ? ExitCode.Trouble : ExitCode.Clean,
                    Run(parsed.GetValue(files), parsed.GetValue(json), parsed.GetValue(fix), [.. heard.Select(t => t.Titled).OfType<TrackMap>()], terminal));
        });
        return command;
    }

    private static int Run(string[]? names, bool asJson, bool withFixes, ValueList<TrackMap> maps, Terminal terminal)
    {
        IEnumerable<DanceInput>? inputs = DanceFiles.Read(names, terminal);
        if (inputs is null)
        {
            return ExitCode.Trouble;
        }

        int code = ExitCode.Clean;
        int dances = 0;
        int clean = 0;
        List<CheckedFile> answers = [];
        Dictionary<string, List<Namesake>> sheets = new(StringComparer.OrdinalIgnoreCase);
        ComplaintPrinter printer = new(terminal.Out, terminal.Paint, terminal.Width);
        foreach (DanceInput input in inputs)
        {
            if (!DanceFiles.IsReadable(input, terminal))
            {
                code = ExitCode.Trouble;
                answers.Add(CheckedFile.Unreadable(input));
                continue;
            }

            Draft draft = DanceReader.Read(input.Text);
            DanceAnalysis analysis = DanceAnalysis.Of(draft, Namesakes(sheets, draft.Dance, input), maps);
            if (withFixes)
            {
                (analysis, bool isWritten) = Fix(input, analysis, asJson ? terminal.Error : terminal.Out, terminal);
                code = isWritten ? code : ExitCode.Trouble;
            }

            bool isClean = analysis.Report.IsClean;
            code = isClean ? code : Math.Max(code, ExitCode.Complaints);
            dances++;
            clean += isClean ? 1 : 0;
            if (asJson)
            {
                answers.Add(CheckedFile.Of(input, analysis));
                continue;
            }

            printer.Print(input.Spoken, analysis.Draft.Text, analysis.Report);
            string summary = Plain.Line(Summary.Of(input.Spoken, analysis));
            terminal.Out.WriteLine(terminal.Paint.Of(isClean ? Tone.Good : Tone.Open, summary));
        }

        if (asJson)
        {
            ScuffJson.Write(terminal.Out, answers);
        }
        else if (dances > 1)
        {
            string rest = clean == dances ? "all clean" : $"{clean} clean, {dances - clean} with complaints";
            terminal.Out.WriteLine();
            terminal.Out.WriteLine($"{Summary.Number(dances, "dance")}: {rest}");
        }

        return code;
    }

    /// <summary>The sheets with the same title that came before, to which this one is added; a file that is named twice is one sheet.</summary>
    private static ValueList<Namesake> Namesakes(Dictionary<string, List<Namesake>> sheets, Dance dance, DanceInput input)
    {
        if (dance.Title.Length == 0)
        {
            return default;
        }

        if (!sheets.TryGetValue(dance.Title, out List<Namesake>? named))
        {
            sheets[dance.Title] = named = [];
        }

        ValueList<Namesake> earlier = [.. named.Where(other => other.Name != input.Spoken)];
        string edition = Namesake.EditionOf(dance);
        if (named.Count < MostNamesakes || (edition.Length == 0 && named.TrueForAll(other => other.Edition.Length > 0)))
        {
            named.Add(new Namesake(input.Spoken, edition));
        }

        return earlier;
    }

    private static (DanceAnalysis Analysis, bool IsWritten) Fix(DanceInput input, DanceAnalysis before, TextWriter told, Terminal terminal)
    {
        if (input.IsStandardInput)
        {
            terminal.Tell("--fix writes the file it mends, so it needs a named file and not standard input.");
            return (before, false);
        }

        (DanceAnalysis after, IReadOnlyList<string> done) = Mending.Apply(before);
        if (done.Count == 0)
        {
            return (before, true);
        }

        try
        {
            WholeFile.Write(terminal.FullPath(input.Name), after.Draft.Text, input.Form == TextForm.Utf8WithMark);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(input.Name, trouble));
            return (before, false);
        }

        foreach (string mend in done)
        {
            told.WriteLine(Plain.Line($"Mended {input.Name}, {mend}"));
        }

        return (after, true);
    }
}
