using System.CommandLine;
using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Fit;
using Scuff.App.Files;
using Scuff.App.Fitting;
using Scuff.App.Json;
using Scuff.App.Tracks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;

namespace Scuff.App.Commands;

/// <summary><c>scuff fit</c>: a dance laid over a track, and the kindest way through where the music breaks its pattern.</summary>
internal sealed class FitCommand : IProgramCommand
{
    public string Name => "fit";

    public IReadOnlyList<Example> Examples =>
    [
        new("fit my-dance.dance song.mp3", "say where walls begin in the music and what to do where it breaks the pattern"),
        new("fit --write my-dance.dance song.mp3", "put the kindest plan into the text of the dance"),
        new("fit --interruptions 1 --write my-dance.dance song.mp3", "the best plan with one interruption at most"),
        new("fit --accents --write my-dance.dance song.mp3", "also dance what meets the stops of the music, in every wall"),
        new("fit --picture pictures my-dance.dance music", "draw the walls over every track of a folder"),
        new("fit --price newKind=300 my-dance.dance song.mp3", "let a second kind of interruption cost more"),
        new("fit --json my-dance.dance song.mp3", "the same for a script, with every point and what to draw"),
    ];

    public string Closing =>
        $"""
        A plan pays for what dancers would notice; prices are points, and --price sets them:
        {string.Join(Environment.NewLine, Priced(new FitPrices()))}

        Ends with 0 when all is well, 1 when you should look at something (the map is a
        guess, the dance has errors), 2 after wrong usage or trouble with a file.
        """;

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = new("files") { Description = "The dance, then tracks or folders of them.", Arity = ArgumentArity.OneOrMore };
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per track." };
        Option<bool> write = new("--write") { Description = "Put the plan into the text of the dance, in place of what it says of that track." };
        Option<bool> accents = new("--accents") { Description = "With --write: put in what would meet the stops of the music, where it changes nothing else." };
        Option<string?> picture = new("--picture") { Description = "Draw the plan over each track as SVG into this folder.", HelpName = "folder" };
        Option<int?> interruptions = new("--interruptions") { Description = "Take the best plan with so many interruptions at most.", HelpName = "number" };
        Option<int?> intro = new("--intro") { Description = "Begin after so many counts.", HelpName = "counts" };
        Option<string[]> price = new("--price") { Description = "Set a price, for example interruption=500.", HelpName = "name=points", Arity = ArgumentArity.ZeroOrMore };
        TrackOptions tracks = new();
        Command command = new(Name, "Fit a dance to a track: intro, walls, tags and restarts, ending.") { files, json, write, accents, picture, interruptions, intro, price };
        tracks.AddTo(command);
        command.SetAction(parsed => Run(
            parsed,
            tracks,
            parsed.GetValue(files) ?? [],
            new Asked(
                parsed.GetValue(json),
                parsed.GetValue(write),
                parsed.GetValue(accents),
                parsed.GetValue(picture) is { } p ? new TrackFolder(p, terminal) : null,
                parsed.GetValue(interruptions),
                parsed.GetValue(intro),
                parsed.GetValue(price) ?? []),
            terminal));
        return command;
    }

    private static int Run(ParseResult parsed, TrackOptions options, string[] names, Asked asked, Terminal terminal)
    {
        if (!Options.AreKnown(names, terminal))
        {
            return ExitCode.Trouble;
        }

        if (names.Length < 2)
        {
            terminal.Tell("Name a dance, then a track: scuff fit my-dance.dance song.mp3");
            return ExitCode.Trouble;
        }

        if (asked.Interruptions is < 0 or > 12 || asked.Intro is < 0)
        {
            terminal.Tell(asked.Intro is < 0 ? "--intro is a number of counts, 0 or more." : "--interruptions is a number from 0 to 12.");
            return ExitCode.Trouble;
        }

        if (asked is { TakesAccents: true, IsWriting: false })
        {
            terminal.Tell("--accents changes the text of the dance: say --write as well.");
            return ExitCode.Trouble;
        }

        DanceInput input = InputReader.Read([names[0]], terminal).First();
        if (!DanceFiles.IsReadable(input, terminal))
        {
            return ExitCode.Trouble;
        }

        Draft draft = DanceReader.Read(input.Text);
        FitPrices? prices = PricesOf(draft.Dance, asked.Prices, terminal);
        if (prices is null || options.Read(parsed, names[1..], terminal)?.ToArray() is not { } tracks)
        {
            return ExitCode.Trouble;
        }

        DanceFitter fitter = new(draft.Dance, new FitOptions
        {
            Prices = prices,
            Intro = asked.Intro,
            MostInterruptions = Math.Max(asked.Interruptions ?? 0, new FitOptions().MostInterruptions),
        });
        return Told(input, draft, fitter, tracks, asked, terminal);
    }

    private static int Told(DanceInput input, Draft draft, DanceFitter fitter, IReadOnlyList<HeardTrack> tracks, Asked asked, Terminal terminal)
    {
        int code = tracks.Count == 0 ? ExitCode.Trouble : ExitCode.Clean;
        List<FittedTrackRow> rows = [];
        string text = input.Text;
        bool isFirst = true;
        foreach (HeardTrack track in tracks)
        {
            if (track.Titled is not { } map)
            {
                code = ExitCode.Trouble;
                continue;
            }

            FitAnswer answer = fitter.Fit(map);
            FitPlan? chosen = asked.Interruptions is { } most ? answer.Plans.LastOrDefault(p => p.Interruptions <= most) : answer.Kindest;
            code = Math.Max(code, answer.Remarks.Count > 0 || track.NeedsALook ? ExitCode.Complaints : ExitCode.Clean);
            if (asked.AsJson)
            {
                rows.Add(FittedTrackRow.Of(input.Name, track.Name, answer, chosen));
            }
            else
            {
                if (!isFirst)
                {
                    terminal.Out.WriteLine();
                }

                FitReport.Write(answer, chosen, terminal);
                isFirst = false;
            }

            if (chosen is null)
            {
                continue;
            }

            if (asked.Pictures is { } pictures && !pictures.Write(track, ".fit.svg", FitPicture.Draw(answer, chosen)))
            {
                code = ExitCode.Trouble;
            }

            if (asked is { IsWriting: true, TakesAccents: true } && text == input.Text)
            {
                text = Accented(draft, AccentFinder.Find(answer.Music, chosen), terminal);
            }

            if (asked.IsWriting)
            {
                text = PlanWriting.Put(text, answer, chosen, out string? trouble) ?? text;
                if (trouble is not null)
                {
                    terminal.Tell(trouble);
                }
            }
        }

        if (asked.AsJson)
        {
            ScuffJson.Write(terminal.Out, rows);
        }

        return text == input.Text || Write(input, draft, text, terminal) ? code : ExitCode.Trouble;
    }

    // The text with what meets the stops; left as it is, after telling so, where that would bring new complaints.
    private static string Accented(Draft draft, ValueList<FitAccent> accents, Terminal terminal)
    {
        string text = draft.Text;
        foreach (FitAccent accent in accents.Where(a => a.Suggested is not null).DistinctBy(a => a.Step!.Written.Span).OrderByDescending(a => a.Step!.Written.Span.Start))
        {
            // from the end of the text to its start, so that places before stay where they are
            string made = EditWriter.Apply(text, EditWriter.ToTextEdits(draft, new DanceEdit.ReplaceStep(accent.Step!.Written, accent.Suggested!)));
            string place = $"section {accent.Section}, count {accent.Count}";
            if (Complaints(made) > Complaints(text))
            {
                terminal.Tell($"What would meet the stop in {place} was not put in: it would bring a new complaint.");
                continue;
            }

            terminal.Error.WriteLine(Plain.Line($"In {place}: {Phrasing.Describe(accent.Suggested!)}"));
            text = made;
        }

        return text;

        static int Complaints(string text) => DanceAnalysis.Of(DanceReader.Read(text)).Report.Complaints.Count(c => c.Severity > Severity.Hint);
    }

    private static bool Write(DanceInput input, Draft draft, string text, Terminal terminal)
    {
        if (input.IsStandardInput)
        {
            terminal.Tell("--write needs a file: standard input cannot be written.");
            return false;
        }

        string ends = draft.Text.Contains("\r\n", StringComparison.Ordinal) ? text.ReplaceLineEndings("\r\n") : text;
        try
        {
            WholeFile.Write(terminal.FullPath(input.Name), ends, input.Form == TextForm.Utf8WithMark);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(input.Name, trouble));
            return false;
        }

        terminal.Error.WriteLine(Plain.Line($"Wrote the plan into {input.Name}"));
        return true;
    }

    private static FitPrices? PricesOf(Dance dance, string[] said, Terminal terminal)
    {
        FitPrices prices = new DanceFitter(dance).Prices;
        foreach (string one in said)
        {
            if (PriceList.With(prices, one, out string? trouble) is not { } changed)
            {
                terminal.Tell(trouble!);
                return null;
            }

            prices = changed;
        }

        return prices;
    }

    private static IEnumerable<string> Priced(FitPrices prices) => PriceList.Names
        .Select(n => string.Create(CultureInfo.InvariantCulture, $"{n}={PriceList.Of(prices, n)}"))
        .Chunk(4)
        .Select(row => "  " + string.Join("  ", row));

    private sealed record Asked(bool AsJson, bool IsWriting, bool TakesAccents, TrackFolder? Pictures, int? Interruptions, int? Intro, string[] Prices);
}
