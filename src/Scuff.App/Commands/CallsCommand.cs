using System.CommandLine;
using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.App.Calling;
using Scuff.App.Files;
using Scuff.App.Json;
using Scuff.App.Tracks;
using Scuff.Prose;
using Scuff.Sheets.Captions;

namespace Scuff.App.Commands;

/// <summary><c>scuff calls</c>: what a caller says ahead of the beat, as a list, as captions and as chapter marks.</summary>
internal sealed class CallsCommand : IProgramCommand
{
    public string Name => "calls";

    public IReadOnlyList<Example> Examples =>
    [
        new("calls my-dance.dance", "what to say, and when, through the whole dance"),
        new("calls --bpm 96 --speed 80 my-dance.dance", "at a tempo, slowed to 80 per cent"),
        new("calls my-dance.dance song.mp3", "in the seconds of a track, with its tags and restarts"),
        new("calls --help-level headings,warnings my-dance.dance", "headings in the first wall, then only what breaks the pattern"),
        new("calls --format vtt --output film.vtt my-dance.dance song.mp3", "captions for the teaching film"),
        new("calls --format chapters my-dance.dance", "a mark for each section"),
    ];

    public string Closing =>
        $"""
        Formats: text, json, {string.Join(", ", CaptionFormats.All.Select(f => f.Name))}.
        How much is said, wall by wall: {string.Join(", ", HelpWords.All)}.
        Under a line of counts, "call: hips and home" puts your own words in place of
        ours, "call 3&4: shuffle" for those counts, "call: nothing" keeps still.

        Ends with 0 when all is clean (hints allowed), 1 after an error, question or warning,
        2 after wrong usage or trouble with a file.
        """;

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = new("files") { Description = "The dance, and the track it is danced to where there is one.", Arity = ArgumentArity.OneOrMore };
        Option<string?> bpm = new("--bpm") { Description = "Counts a minute; as the dance says when not given.", HelpName = "number" };
        Option<string?> speed = new("--speed") { Description = "Practice speed in per cent of that; 100 when not given.", HelpName = "per cent" };
        Option<string?> on = new("--on") { Description = "With the tags and restarts of this track (its number, or words of its title); none for plain walls.", HelpName = "track" };
        Option<string?> help = new("--help-level") { Description = "How much is said in each wall, the last goes on.", HelpName = "words" };
        Option<string> format = new("--format") { Description = "What to write.", DefaultValueFactory = _ => "text", HelpName = "name" };
        Option<string?> output = new("--output") { Description = "Write it into this file.", HelpName = "file" };
        TrackOptions tracks = new();
        Command command = new(Name, "Call a dance: the words to say ahead of the beat, captions, chapter marks.") { files, bpm, speed, on, help, format, output };
        tracks.AddTo(command);
        command.SetAction(parsed => Run(
            parsed,
            tracks,
            parsed.GetValue(files) ?? [],
            new Asked(parsed.GetValue(bpm), parsed.GetValue(speed), parsed.GetValue(on), parsed.GetValue(help), parsed.GetValue(format)!, parsed.GetValue(output)),
            terminal));
        return command;
    }

    private static int Run(ParseResult parsed, TrackOptions options, string[] names, Asked asked, Terminal terminal)
    {
        if (!Options.AreKnown(names, terminal))
        {
            return ExitCode.Trouble;
        }

        ICaptionFormat? captions = CaptionFormats.Find(asked.Format);
        if (captions is null && asked.Format is not ("text" or "json"))
        {
            terminal.Tell($"There is no format {asked.Format}. The formats are text, json, {string.Join(", ", CaptionFormats.All.Select(f => f.Name))}.");
            return ExitCode.Trouble;
        }

        if (names.Length > 2)
        {
            terminal.Tell("Name one dance, and one track at most: scuff calls my-dance.dance song.mp3");
            return ExitCode.Trouble;
        }

        string? unknown = null;
        ValueList<CallHelp>? help = asked.Help is null ? new CallOptions().HelpByWall : HelpWords.Read(asked.Help.Split(','), out unknown);
        if (help is null)
        {
            terminal.Tell($"There is no help named {unknown}. It is {string.Join(", ", HelpWords.All)}, with commas between walls.");
            return ExitCode.Trouble;
        }

        DanceInput input = InputReader.Read([names[0]], terminal).First();
        if (!DanceFiles.IsReadable(input, terminal))
        {
            return ExitCode.Trouble;
        }

        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(input.Text));
        int code = Complained.Tell(input, analysis.Report, terminal);
        if (CalledBy.Read(parsed, options, analysis, input, names.Length > 1 ? names[1] : null, asked.Bpm, asked.Speed, asked.On, terminal) is not { } called)
        {
            return ExitCode.Trouble;
        }

        CallScript script = called.Called(new CallOptions { HelpByWall = help.Value });
        foreach (Call unsaid in script.Unsaid)
        {
            terminal.Tell($"There is no room for \"{unsaid.Words}\" before it is danced at this tempo; it is not called.");
        }

        string written = captions is not null
            ? captions.Write(CaptionBuilder.Build(called.Dance, called.Timeline, called.Clock, script))
            : asked.Format == "json" ? ScuffJson.Text(CallsRow.Of(input.Name, called, script)) : CallReport.Of(called, script);
        return Put(written, asked.Output, terminal) ? code : ExitCode.Trouble;
    }

    private static bool Put(string written, string? output, Terminal terminal)
    {
        if (output is null)
        {
            terminal.Out.Write(written);
            return true;
        }

        try
        {
            WholeFile.Write(terminal.FullPath(output), written);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(output, trouble));
            return false;
        }

        terminal.Error.WriteLine(Plain.Line($"Wrote {output}"));
        return true;
    }

    private sealed record Asked(string? Bpm, string? Speed, string? On, string? Help, string Format, string? Output);
}
