using System.CommandLine;

namespace Scuff.App.Commands;

/// <summary><c>scuff completion bash</c>: what a shell needs to complete the commands.</summary>
internal sealed class CompletionCommand : IProgramCommand
{
    public string Name => "completion";

    public IReadOnlyList<Example> Examples =>
    [
        new("completion bash > ~/.local/share/bash-completion/completions/scuff", "complete in bash from the next shell on"),
        new("completion zsh > ~/.zfunc/_scuff", "complete in zsh, when ~/.zfunc is in its fpath"),
        new("completion fish > ~/.config/fish/completions/scuff.fish", "complete in fish"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string> shell = new("shell") { Description = "The shell." };
        shell.AcceptOnlyFromAmong("bash", "zsh", "fish");
        Command command = new(Name, "Print a script that completes commands, options and dances in a shell.") { shell };
        command.SetAction(parsed =>
        {
            CompletionScript script = new((Command)parsed.RootCommandResult.Command);
            terminal.Out.Write(parsed.GetValue(shell) switch
            {
                "bash" => script.ForBash(),
                "zsh" => script.ForZsh(),
                _ => script.ForFish(),
            });
            return ExitCode.Clean;
        });
        return command;
    }
}
