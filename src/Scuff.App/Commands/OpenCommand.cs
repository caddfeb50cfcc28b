using System.CommandLine;
using Scuff.Analysis;
using Scuff.App.Complaints;
using Scuff.App.Files;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats;

namespace Scuff.App.Commands;

/// <summary><c>scuff open</c>: the demo club, checked and printed.</summary>
internal sealed class OpenCommand : IProgramCommand
{
    public string Name => "open";

    public IReadOnlyList<Example> Examples =>
    [
        new("open", "check the dances of the demo club and print their sheets"),
        new("open --output ~/sheets", "the same, into a folder of your own"),
    ];

    public Command Create(Terminal terminal)
    {
        Option<string?> output = new("--output", "-o") { Description = "Where the sheets go; artifacts/sheets beside the demo when not said.", HelpName = "folder" };
        Command command = new(Name, "Check the demo club, write its sheets and say where they are.") { output };
        command.SetAction(parsed => Run(parsed.GetValue(output), terminal));
        return command;
    }

    private static int Run(string? output, Terminal terminal)
    {
        if (FindDemo(terminal) is not { } root)
        {
            terminal.Tell("The demo club was not found: there is no folder demo/dances here, above here, or above the program.");
            return ExitCode.Trouble;
        }

        string dances = Path.GetRelativePath(terminal.Folder, Path.Combine(root, "demo", "dances"));
        string target = output ?? Path.GetRelativePath(terminal.Folder, Path.Combine(root, "artifacts", "sheets"));

        // Every sheet is told in one line at the end; each file on its own would hide the dances.
        Terminal quiet = new()
        {
            Out = TextWriter.Null,
            Error = terminal.Error,
            ErrorPaint = terminal.ErrorPaint,
            OpenInput = terminal.OpenInput,
            OpenOutput = terminal.OpenOutput,
            OutputIsPiped = terminal.OutputIsPiped,
            InputIsPiped = terminal.InputIsPiped,
            Folder = terminal.Folder,
        };
        SheetFolder folder = new(target, quiet);
        ComplaintPrinter printer = new(terminal.Out, terminal.Paint, terminal.Width);
        int code = ExitCode.Clean;
        int sheets = 0;
        foreach (DanceInput input in InputReader.Read([dances], terminal))
        {
            if (!DanceFiles.IsReadable(input, terminal))
            {
                code = ExitCode.Trouble;
                continue;
            }

            DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(input.Text));
            printer.Print(input.Spoken, input.Text, analysis.Report);
            terminal.Out.WriteLine(terminal.Paint.Of(analysis.Report.IsClean ? Tone.Good : Tone.Open, Plain.Line(Summary.Of(input.Spoken, analysis))));
            code = analysis.Report.IsClean ? code : Math.Max(code, ExitCode.Complaints);
            SheetModel sheet = SheetBuilder.Build(analysis);
            foreach (ISheetFormat format in SheetFormats.All)
            {
                if (folder.Write(input, sheet, format))
                {
                    sheets++;
                }
                else
                {
                    code = ExitCode.Trouble;
                }
            }
        }

        terminal.Out.WriteLine();
        terminal.Out.WriteLine(Plain.Line($"{Summary.Number(sheets, "sheet")} in {terminal.FullPath(target)}"));
        terminal.Out.WriteLine("Open one of its .html pages in a browser; it prints as it stands. The studio comes later.");
        return code;
    }

    // Started from anywhere: the folders above the working folder come first, then those above the program.
    private static string? FindDemo(Terminal terminal)
    {
        foreach (string start in (string[])[terminal.Folder, AppContext.BaseDirectory])
        {
            for (DirectoryInfo? folder = new(start); folder is not null; folder = folder.Parent)
            {
                if (Directory.Exists(Path.Combine(folder.FullName, "demo", "dances")))
                {
                    return folder.FullName;
                }
            }
        }

        return null;
    }
}
