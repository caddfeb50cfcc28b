using System.CommandLine;
using Scuff.Analysis;
using Scuff.App.Files;
using Scuff.Dances;
using Scuff.Prose;

namespace Scuff.App.Commands;

/// <summary><c>scuff mirror</c>: the same dance in the other foot.</summary>
internal sealed class MirrorCommand : IProgramCommand
{
    public string Name => "mirror";

    public IReadOnlyList<Example> Examples =>
    [
        new("mirror my-dance.dance", "show the dance in the other foot"),
        new("mirror --output other-foot.dance my-dance.dance", "write it into a file of its own"),
        new("mirror < my-dance.dance > other-foot.dance", "mirror a text on its way"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = DanceFiles.CreateArgument();
        Option<string?> output = new("--output", "-o") { Description = "Write it into this file instead of showing it.", HelpName = "file" };
        Command command = new(Name, "Turn a dance round: left and right exchanged in steps, turns and facings; notes stay.") { files, output };
        command.SetAction(parsed => Run(parsed.GetValue(files), parsed.GetValue(output), terminal));
        return command;
    }

    private static int Run(string[]? names, string? output, Terminal terminal)
    {
        IEnumerable<DanceInput>? inputs = DanceFiles.Read(names, terminal);
        if (inputs is null)
        {
            return ExitCode.Trouble;
        }

        if (output is not null)
        {
            inputs = inputs.Take(2).ToArray();
            if (inputs.Count() > 1)
            {
                terminal.Tell("Several dances do not go into one file. Name one dance with --output.");
                return ExitCode.Trouble;
            }
        }

        int code = ExitCode.Clean;
        foreach (DanceInput input in inputs)
        {
            if (!DanceFiles.IsReadable(input, terminal))
            {
                code = ExitCode.Trouble;
                continue;
            }

            Draft draft = DanceReader.Read(input.Text);
            MirroredText mirrored = MirrorWriter.Write(draft);
            if (output is null)
            {
                terminal.Out.Write(mirrored.Text);
            }
            else if (!Write(output, mirrored.Text, terminal))
            {
                return ExitCode.Trouble;
            }

            foreach (Note note in mirrored.Notes)
            {
                terminal.Tell(Plain.Line($"A note names a side and stands as it was: {note.Words}"));
            }

            foreach (int line in mirrored.Open)
            {
                terminal.Tell(Plain.Line($"Line {line} could not be turned round for certain; look at it."));
            }

            code = Math.Max(code, mirrored.Open.Count > 0 ? ExitCode.Complaints : ExitCode.Clean);
            code = Math.Max(code, Complained.Tell(input, DanceAnalysis.Of(draft).Report, terminal));
        }

        return code;
    }

    private static bool Write(string output, string text, Terminal terminal)
    {
        if (File.Exists(terminal.FullPath(output)))
        {
            terminal.Tell($"{output} is there already, and nothing is written over it. Name another file.");
            return false;
        }

        try
        {
            WholeFile.Write(terminal.FullPath(output), text, withMark: false);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(output, trouble));
            return false;
        }

        terminal.Out.WriteLine(Plain.Line($"Wrote {output}."));
        return true;
    }
}
