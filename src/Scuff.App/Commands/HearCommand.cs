using System.CommandLine;
using Scuff.App.Tracks;
using Scuff.App.Json;
using Scuff.Music.Labels;

namespace Scuff.App.Commands;

/// <summary><c>scuff hear</c>: what a dancer needs to know of a track.</summary>
internal sealed class HearCommand : IProgramCommand
{
    public string Name => "hear";

    public IReadOnlyList<Example> Examples =>
    [
        new("hear song.mp3", "say its tempo, meter, intro, sections, stops and odd bars"),
        new("hear --picture pictures music", "hear every track of a folder and draw each"),
        new("hear --labels labels song.mp3", "write its beats and sections for an editor of sound"),
        new("hear --corrections song.corrections.json song.mp3", "let what a person said be stronger than what was heard"),
        new("hear --json song.mp3", "the same for a script, with every beat"),
    ];

    public string Closing =>
        """
        Besides sound it reads maps written by hand (.track) and label files of beats
        (.beats.txt, with the sections in .sections.txt beside it). What was heard is
        kept by the content of the file, in your cache folder or the one that
        SCUFF_CACHE names.

        Ends with 0 when all is well, 1 when you should look at a track (something is a
        guess, or the file is damaged), 2 when a file could not be heard or written.
        """;

    public Command Create(Terminal terminal)
    {
        Argument<string[]> tracks = new("tracks") { Description = "Tracks, or folders of them.", Arity = ArgumentArity.OneOrMore };
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per track." };
        Option<string?> labels = new("--labels") { Description = "Write the beats and sections of each track as label files into this folder.", HelpName = "folder" };
        Option<string?> picture = new("--picture") { Description = "Draw each track as SVG into this folder.", HelpName = "folder" };
        TrackOptions reading = new();
        Command command = new(Name, "Say what a dancer needs to know of a track.") { tracks, json, labels, picture };
        reading.AddTo(command);
        command.SetAction(parsed =>
        {
            string[] names = parsed.GetValue(tracks) ?? [];
            return Options.AreKnown(names, terminal) && reading.Read(parsed, names, terminal) is { } heard
                ? Run(
                    heard,
                    parsed.GetValue(json),
                    parsed.GetValue(labels) is { } l ? new TrackFolder(l, terminal) : null,
                    parsed.GetValue(picture) is { } p ? new TrackFolder(p, terminal) : null,
                    terminal)
                : ExitCode.Trouble;
        });
        return command;
    }

    private static int Run(IEnumerable<HeardTrack> heard, bool asJson, TrackFolder? labels, TrackFolder? pictures, Terminal terminal)
    {
        int code = ExitCode.Clean;
        bool isFirst = true;
        List<HeardTrackRow> rows = [];
        foreach (HeardTrack track in heard)
        {
            code = Math.Max(code, track.Map is null ? ExitCode.Trouble : track.NeedsALook ? ExitCode.Complaints : ExitCode.Clean);
            if (asJson)
            {
                rows.Add(HeardTrackRow.Of(track));
            }
            else if (track.Map is not null)
            {
                if (!isFirst)
                {
                    terminal.Out.WriteLine();
                }

                isFirst = false;
                TrackReport.Write(track, terminal);
                terminal.Out.Flush();
            }

            code = Written(track, labels, pictures) ? code : ExitCode.Trouble;
        }

        if (asJson)
        {
            ScuffJson.Write(terminal.Out, rows);
        }

        return code;
    }

    private static bool Written(HeardTrack track, TrackFolder? labels, TrackFolder? pictures)
    {
        bool isWritten = true;
        if (track.Map is not { } map)
        {
            return isWritten;
        }

        if (labels is not null)
        {
            isWritten &= labels.Write(track, TrackFiles.BeatsEnding, LabelFile.Write(TrackLabels.BeatsOf(map)));
            isWritten &= labels.Write(track, TrackFiles.SectionsEnding, LabelFile.Write(TrackLabels.SectionsOf(map)));
        }

        if (pictures is not null)
        {
            isWritten &= pictures.Write(track, ".svg", TrackPicture.Draw(track));
        }

        return isWritten;
    }
}
