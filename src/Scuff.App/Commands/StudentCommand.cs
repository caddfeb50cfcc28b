using System.CommandLine;
using Scuff.Analysis;
using Scuff.App.Files;
using Scuff.App.Students;
using Scuff.Prose;

namespace Scuff.App.Commands;

/// <summary><c>scuff student</c>: the page that students practise with, as one file.</summary>
internal sealed class StudentCommand : IProgramCommand
{
    public string Name => "student";

    public IReadOnlyList<Example> Examples =>
    [
        new("student my-dance.dance", "write my-dance.student.html beside it: one file to mail or to put on a site"),
        new("student --output handouts/lantern.html my-dance.dance", "write it into this file"),
        new("student --address https://club.example/lantern my-dance.dance", "say in it where it is found; page: in the heading prints the same on the sheet"),
    ];

    public string Closing =>
        """
        The page holds no music and asks nobody for anything. It opens from a file, on a
        telephone too: the dance danced and called, slower, in pieces, on any wall.

        Ends with 0 when all is clean (hints allowed), 1 after an error, question or warning,
        2 after wrong usage or trouble with a file.
        """;

    public Command Create(Terminal terminal)
    {
        Argument<string> file = new("dance") { Description = "The dance; - reads standard input." };
        Option<string?> output = new("--output", "-o") { Description = "Write it into this file.", HelpName = "file" };
        Option<string?> address = new("--address") { Description = "Where the page is found; as the heading says when not given.", HelpName = "address" };
        Command command = new(Name, "Make the page that students practise with.") { file, output, address };
        command.SetAction(parsed => Run(parsed.GetValue(file)!, parsed.GetValue(output), parsed.GetValue(address), terminal));
        return command;
    }

    private static int Run(string name, string? output, string? address, Terminal terminal)
    {
        if (!Options.AreKnown([name], terminal))
        {
            return ExitCode.Trouble;
        }

        if (address is not null && !HeadingWords.IsAddress(address))
        {
            terminal.Tell($"{address} is no address of a page: it begins with https:// or http://.");
            return ExitCode.Trouble;
        }

        if (!StudentPageFile.Exists)
        {
            terminal.Tell("This Scuff was built without its pages. Build it with Node.js at hand.");
            return ExitCode.Trouble;
        }

        DanceInput[] inputs = [.. InputReader.Read([name], terminal)];
        if (inputs.Length != 1)
        {
            terminal.Tell("A page is made for one dance. Name its file.");
            return ExitCode.Trouble;
        }

        DanceInput input = inputs[0];
        if (!DanceFiles.IsReadable(input, terminal))
        {
            return ExitCode.Trouble;
        }

        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(input.Text));
        int code = Complained.Tell(input, analysis.Report, terminal);
        byte[] page = StudentPageFile.Write(StudentPageData.Of(analysis, address ?? ""));
        string shown = output ?? ((input.IsStandardInput ? "dance" : Path.ChangeExtension(input.Name, null)) + ".student" + StudentPageFile.Extension);
        try
        {
            string path = terminal.FullPath(shown);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            WholeFile.Write(path, stream => stream.Write(page));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(shown, trouble));
            return ExitCode.Trouble;
        }

        terminal.Out.WriteLine(Plain.Line($"Wrote {shown}, {(page.Length + 500) / 1000} kB"));
        return code;
    }
}
