using System.Diagnostics;
using Scuff.App;
using Scuff.App.Commands;

namespace Tests.App;

public sealed class HelpAndCompletionTests
{
    public static TheoryData<string> CommandNames => [.. CommandTree.FindCommands().Select(c => c.Name)];

    [Fact]
    public void Bare_scuff_and_help_show_every_command()
    {
        using ProgramRun run = new();
        foreach (string[] args in (string[][])[[], ["help"], ["--help"]])
        {
            Assert.Equal(0, run.Run(args));
            Assert.All(CommandTree.FindCommands(), c => Assert.Contains("  " + c.Name, run.Out, StringComparison.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(CommandNames))]
    public void Help_of_a_command_has_examples_that_are_valid_usage(string name)
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("help", name));

        string byHelp = run.Out;
        IProgramCommand command = CommandTree.FindCommands().Single(c => c.Name == name);
        Assert.NotEmpty(command.Examples);
        foreach (Example example in command.Examples)
        {
            Assert.Contains($"scuff {example.Line}", byHelp, StringComparison.Ordinal);
            Assert.StartsWith(name, example.Line, StringComparison.Ordinal);
            string[] args = example.Line.Split([" > ", " < "], StringSplitOptions.None)[0].Split(' ');
            Assert.Empty(CommandTree.Create(new Terminal
            {
                Out = TextWriter.Null,
                Error = TextWriter.Null,
                OpenInput = () => Stream.Null,
                OpenOutput = () => Stream.Null,
                OutputIsPiped = true,
                InputIsPiped = false,
                Folder = run.Folder,
            }).Parse(args).Errors);
        }

        Assert.Equal(0, run.Run(name, "--help"));
        Assert.Equal(byHelp, run.Out);
    }

    [Fact]
    public void Version_is_said()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("--version"));
        Assert.Matches(@"^\d+\.\d+\.\d+", run.Out);
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    public void A_completion_script_knows_every_command_and_option(string shell)
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("completion", shell));

        Assert.All(CommandTree.FindCommands(), c => Assert.Contains(c.Name, run.Out, StringComparison.Ordinal));
        foreach (string option in (string[])["json", "fix", "write", "format", "output", "wall"])
        {
            Assert.Contains(option, run.Out, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("scuff ch", "check")]
    [InlineData("scuff sheet --format h", "html")]
    [InlineData("scuff sheet --fo", "--format")]
    [InlineData("scuff check b", "box.dance")]
    [InlineData("scuff help ti", "tidy")]
    [InlineData("scuff completion f", "fish")]
    public void Bash_completes(string typed, string completed)
    {
        if (OperatingSystem.IsWindows() || !File.Exists("/bin/bash"))
        {
            Assert.Skip("There is no bash here.");
        }

        using ProgramRun run = new();
        run.Run("completion", "bash");
        run.Put("scuff.bash", run.Out);
        run.Put("box.dance", ProgramRun.CleanDance);
        run.Put("box.txt", "no dance");
        string words = string.Join(' ', typed.Split(' ').Select(w => $"'{w}'"));
        ProcessStartInfo start = new("/bin/bash")
        {
            WorkingDirectory = run.Folder,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add($". ./scuff.bash; COMP_WORDS=({words}); COMP_CWORD=$((${{#COMP_WORDS[@]}} - 1)); _scuff; echo \"${{COMPREPLY[@]}}\"");

        using Process bash = Process.Start(start)!;
        string answer = bash.StandardOutput.ReadToEnd().Trim();
        bash.WaitForExit();

        Assert.Equal(completed, answer);
    }
}
