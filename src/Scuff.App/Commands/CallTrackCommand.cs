using System.CommandLine;
using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.App.Calling;
using Scuff.App.Files;
using Scuff.App.Tracks;
using Scuff.Audio.Decoding;
using Scuff.Audio.Mixing;
using Scuff.Audio.Songs;
using Scuff.Audio.Voices;
using Scuff.Prose;

namespace Scuff.App.Commands;

/// <summary><c>scuff calltrack</c>: the calls of a dance spoken over a click or over its track, as a sound file to practise to.</summary>
internal sealed class CallTrackCommand : IProgramCommand
{
    private const double Whole = 100;

    public string Name => "calltrack";

    public IReadOnlyList<Example> Examples =>
    [
        new("calltrack my-dance.dance", "spoken calls over a click, as my-dance.calls.wav"),
        new("calltrack my-dance.dance song.mp3", "over the track, which gives way to the voice"),
        new("calltrack --speed 80 my-dance.dance song.mp3", "slowed to 80 per cent, the pitch kept"),
        new("calltrack --voice my-words my-dance.dance", "with the recordings of a folder, such as vine right.wav"),
        new("calltrack --output practice.mp3 my-dance.dance song.mp3", "as MP3 (with the help of the program ffmpeg)"),
    ];

    public string Closing =>
        $"""
        Voices: {CallVoices.Shipped} (comes with Scuff), {CallVoices.System} (the voice of this machine), or a
        folder of your own recordings, each named after its words; words that are not
        recorded there are said by the voice that comes with Scuff.
        Files: {string.Join(", ", SoundWriter.Endings.Select(e => e.Ending[1..]))}. How much is said, wall by wall: see scuff calls --help.

        Ends with 0 when all is clean (hints allowed), 1 after an error, question or warning
        or when words could not be said, 2 after wrong usage or trouble with a file.
        """;

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = new("files") { Description = "The dance, and the track it is danced to where there is one.", Arity = ArgumentArity.OneOrMore };
        Option<string?> bpm = new("--bpm") { Description = "Counts a minute; as the dance says when not given.", HelpName = "number" };
        Option<string?> speed = new("--speed") { Description = "Practice speed in per cent of that; 100 when not given.", HelpName = "per cent" };
        Option<string?> on = new("--on") { Description = "With the tags and restarts of this track (its number, or words of its title); none for plain walls.", HelpName = "track" };
        Option<string?> help = new("--help-level") { Description = "How much is said in each wall, the last goes on.", HelpName = "words" };
        Option<string> voice = new("--voice") { Description = "Who calls.", DefaultValueFactory = _ => CallVoices.Shipped, HelpName = "voice or folder" };
        Option<bool> click = new("--click") { Description = "Strike each count over the track as well." };
        Option<string?> output = new("--output", "-o") { Description = "Write this file; its ending says of which kind.", HelpName = "file" };
        TrackOptions tracks = new();
        Command command = new(Name, "Speak the calls of a dance over a click or its track, into a sound file.") { files, bpm, speed, on, help, voice, click, output };
        tracks.AddTo(command);
        command.SetAction(parsed => Run(
            parsed,
            tracks,
            parsed.GetValue(files) ?? [],
            new Asked(
                parsed.GetValue(bpm),
                parsed.GetValue(speed),
                parsed.GetValue(on),
                parsed.GetValue(help),
                parsed.GetValue(voice)!,
                parsed.GetValue(click),
                parsed.GetValue(output)),
            terminal));
        return command;
    }

    private static int Run(ParseResult parsed, TrackOptions options, string[] names, Asked asked, Terminal terminal)
    {
        if (!Options.AreKnown(names, terminal))
        {
            return ExitCode.Trouble;
        }

        if (names.Length > 2)
        {
            terminal.Tell("Name one dance, and one track at most: scuff calltrack my-dance.dance song.mp3");
            return ExitCode.Trouble;
        }

        string output = asked.Output ?? (names[0] == DanceInput.StandardInput ? "dance" : Path.GetFileNameWithoutExtension(names[0])) + ".calls.wav";
        if (SoundWriter.FormatOf(output) is not { } format)
        {
            terminal.Tell($"{output} does not say what kind of file to write: end its name in {string.Join(", ", SoundWriter.Endings.Select(e => e.Ending))}.");
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
        if (!DanceFiles.IsReadable(input, terminal) || CallVoices.Of(asked.Voice, terminal) is not { } voices)
        {
            return ExitCode.Trouble;
        }

        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(input.Text));
        int code = Complained.Tell(input, analysis.Report, terminal);
        string? track = names.Length > 1 ? names[1] : null;
        if (CalledBy.Read(parsed, options, analysis, input, track, asked.Bpm, asked.Speed, asked.On, terminal) is not { } called)
        {
            return ExitCode.Trouble;
        }

        StereoSound? music = null;
        if (track is not null && (music = MusicOf(track, SpeedOf(asked), terminal)) is null)
        {
            return ExitCode.Trouble;
        }

        Speaker speaker = new([.. voices]);
        CallScript script = called.Called(new CallOptions { HelpByWall = help.Value, SecondsToSay = speaker.SecondsToSay });
        CallTrack made = CallTrackMixer.Mix(CallTrackPlanner.Of(called, script, music, music is null || asked.WithClick), speaker);
        bool allSaid = TellWhatIsMissing(script, made, voices, terminal);
        return !Written(made, format, output, TitleOf(called, asked), terminal) ? ExitCode.Trouble : allSaid ? code : ExitCode.Complaints;
    }

    // The speed has been judged by what read the dance.
    private static double SpeedOf(Asked asked)
        => asked.Speed is null ? 1 : double.Parse(asked.Speed.TrimEnd('%'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture) / Whole;

    private static StereoSound? MusicOf(string track, double speed, Terminal terminal)
    {
        if (track.EndsWith(TrackFiles.MapEnding, StringComparison.OrdinalIgnoreCase) || track.EndsWith(TrackFiles.BeatsEnding, StringComparison.OrdinalIgnoreCase))
        {
            terminal.Tell($"{track} says when the beats fall but holds no music; name the sound file, with --corrections where beats have to be set right.");
            return null;
        }

        try
        {
            StereoSound music = CalledMusic.Read(terminal.FullPath(track), speed, out string? warning);
            if (warning is not null)
            {
                terminal.Tell($"{track}: {warning}");
            }

            return music;
        }
        catch (AudioException trouble)
        {
            terminal.Tell($"{track} cannot be used. {trouble.Message}");
            return null;
        }
    }

    private static bool TellWhatIsMissing(CallScript script, CallTrack made, IReadOnlyList<IVoice> voices, Terminal terminal)
    {
        foreach (Call unsaid in script.Unsaid)
        {
            terminal.Tell($"There is no room for \"{unsaid.Words}\" before it is danced at this tempo; it is not called.");
        }

        foreach (string trouble in voices.OfType<RecordedVoice>().SelectMany(v => v.Troubles))
        {
            terminal.Tell(trouble);
        }

        if (made.Unspoken.Count > 0)
        {
            terminal.Tell($"No voice can say: {string.Join(", ", made.Unspoken)}. Record them, one file each named after its word, and name their folder with --voice.");
        }

        foreach (CallTime late in made.Overlong)
        {
            terminal.Tell($"\"{late.Words}\" at {CallReport.Time(late.Seconds)} is too long for its place even when said quickly.");
        }

        return script.Unsaid.Count == 0 && made.Unspoken.Count == 0 && made.Overlong.Count == 0;
    }

    private static string TitleOf(CalledDance called, Asked asked)
    {
        string title = called.Dance.Title.Length > 0 ? called.Dance.Title : "Dance";
        return SpeedOf(asked) == 1 ? $"{title}, called" : string.Create(CultureInfo.InvariantCulture, $"{title}, called at {SpeedOf(asked) * Whole:0.#} %");
    }

    private static bool Written(CallTrack made, SoundFormat format, string output, string title, Terminal terminal)
    {
        try
        {
            WholeFile.Write(terminal.FullPath(output), stream => SoundWriter.Write(made.Sound, format, stream, title));
        }
        catch (AudioException trouble)
        {
            terminal.Tell($"{output} was not written. {trouble.Message}");
            return false;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(output, trouble));
            return false;
        }

        terminal.Out.WriteLine(Plain.Line($"Wrote {output} ({CallReport.Time(made.Sound.Seconds)} minutes)"));
        return true;
    }

    private sealed record Asked(string? Bpm, string? Speed, string? On, string? Help, string Voice, bool WithClick, string? Output);
}
