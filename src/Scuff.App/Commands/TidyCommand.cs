using System.CommandLine;
using Scuff.Analysis;
using Scuff.App.Files;
using Scuff.Dances;
using Scuff.Prose;

namespace Scuff.App.Commands;

/// <summary><c>scuff tidy</c>: the same dance in canonical words.</summary>
internal sealed class TidyCommand : IProgramCommand
{
    public string Name => "tidy";

    public IReadOnlyList<Example> Examples =>
    [
        new("tidy my-dance.dance", "show the text in its tidy form"),
        new("tidy --write my-dance.dance", "write the tidy form into the file"),
        new("tidy < draft.txt > my-dance.dance", "tidy a text on its way"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = DanceFiles.CreateArgument();
        Option<bool> write = new("--write") { Description = "Write the tidy text into the file instead of showing it." };
        Command command = new(Name, "Rewrite texts in one order and wording; words that were not understood are kept.") { files, write };
        command.SetAction(parsed => Run(parsed.GetValue(files), parsed.GetValue(write), terminal));
        return command;
    }

    private static int Run(string[]? names, bool isWriting, Terminal terminal)
    {
        IEnumerable<DanceInput>? inputs = DanceFiles.Read(names, terminal);
        if (inputs is null)
        {
            return ExitCode.Trouble;
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
            string tidy = DanceWriter.Tidy(draft);
            if (!isWriting || input.IsStandardInput)
            {
                terminal.Out.Write(tidy);
            }
            else if (!Write(input, tidy, terminal))
            {
                code = ExitCode.Trouble;
                continue;
            }

            code = Math.Max(code, Complained.Tell(input, DanceAnalysis.Of(draft).Report, terminal));
        }

        return code;
    }

    private static bool Write(DanceInput input, string tidy, Terminal terminal)
    {
        string text = UsesWindowsLineEnds(input.Text) ? tidy.Replace("\n", "\r\n", StringComparison.Ordinal) : tidy;
        if (text == input.Text && input.Form is TextForm.Utf8 or TextForm.Utf8WithMark)
        {
            terminal.Out.WriteLine(Plain.Line($"{input.Name} is tidy."));
            return true;
        }

        try
        {
            WholeFile.Write(terminal.FullPath(input.Name), text, input.Form == TextForm.Utf8WithMark);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(input.Name, trouble));
            return false;
        }

        string form = input.Form is TextForm.Utf16 or TextForm.Windows1252 ? ", as UTF-8" : "";
        terminal.Out.WriteLine(Plain.Line($"Tidied {input.Name}{form}."));
        return true;
    }

    private static bool UsesWindowsLineEnds(string text)
    {
        int first = text.IndexOf('\n', StringComparison.Ordinal);
        return first > 0 && text[first - 1] == '\r';
    }
}
