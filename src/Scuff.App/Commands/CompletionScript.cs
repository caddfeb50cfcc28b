using System.CommandLine;
using System.CommandLine.Completions;
using System.Text;

namespace Scuff.App.Commands;

/// <summary>
/// Scripts for shells, made from the command tree, so that a new command or option is completed without a word here.
/// A shell asks nothing of the program while one types: that would be felt.
/// </summary>
internal sealed class CompletionScript(Command scuff)
{
    private static readonly string[] TakesFiles = ["files"];

    // files of many endings: a shell offers every one
    private static readonly string[] TakesAnyFiles = ["tracks"];

    /// <summary>For bash 4 or later.</summary>
    public string ForBash()
    {
        StringBuilder script = new();
        script.Append("# bash completion for scuff\n");
        script.Append("_scuff() {\n");
        script.Append("    local word=\"${COMP_WORDS[COMP_CWORD]}\" before=\"${COMP_WORDS[COMP_CWORD-1]}\" command=\"\" i\n");
        script.Append("    for ((i = 1; i < COMP_CWORD; i++)); do\n");
        script.Append("        case \"${COMP_WORDS[i]}\" in -*) ;; *) command=\"${COMP_WORDS[i]}\"; break ;; esac\n");
        script.Append("    done\n");
        script.Append("    COMPREPLY=()\n");
        script.Append("    case \"$command $before\" in\n");
        foreach (Command command in scuff.Subcommands)
        {
            foreach (Option option in command.Options.Where(TakesValue))
            {
                string patterns = string.Join('|', Words(option).Select(w => $"\"{command.Name} {w}\""));
                string[] values = Values(option);
                string reply = values.Length > 0
                    ? $"COMPREPLY=($(compgen -W '{string.Join(' ', values)}' -- \"$word\"))"
                    : option.HelpName == "folder" ? "COMPREPLY=($(compgen -d -- \"$word\"))" : ":";
                script.Append($"        {patterns}) {reply}; return ;;\n");
            }
        }

        script.Append("    esac\n");
        script.Append("    case \"$command\" in\n");
        script.Append($"        \"\") COMPREPLY=($(compgen -W '{string.Join(' ', scuff.Subcommands.Select(c => c.Name).Concat(scuff.Options.SelectMany(Words)))}' -- \"$word\")) ;;\n");
        foreach (Command command in scuff.Subcommands)
        {
            string options = string.Join(' ', command.Options.SelectMany(Words));
            string values = string.Join(' ', ArgumentValues(command));
            script.Append($"        {command.Name})\n");
            script.Append($"            case \"$word\" in -*) COMPREPLY=($(compgen -W '{options} --help' -- \"$word\"));;\n");
            script.Append(command.Arguments.Any(IsFiles)
                ? "                *) COMPREPLY=($(compgen -f -X '!*.dance' -- \"$word\") $(compgen -d -- \"$word\"));;\n"
                : command.Arguments.Any(IsAnyFiles)
                ? "                *) COMPREPLY=($(compgen -f -- \"$word\"));;\n"
                : $"                *) COMPREPLY=($(compgen -W '{values}' -- \"$word\"));;\n");
            script.Append("            esac ;;\n");
        }

        script.Append("    esac\n");
        script.Append("}\n");
        script.Append("complete -o filenames -F _scuff scuff ./scuff\n");
        return script.ToString();
    }

    /// <summary>For zsh.</summary>
    public string ForZsh()
    {
        StringBuilder script = new();
        script.Append("#compdef scuff\n");
        script.Append("# zsh completion for scuff\n");
        script.Append("_scuff() {\n");
        script.Append("    local -a commands\n");
        script.Append("    commands=(\n");
        foreach (Command command in scuff.Subcommands)
        {
            script.Append($"        {Quoted(command.Name + ":" + Plainly(command.Description))}\n");
        }

        script.Append("    )\n");
        script.Append("    if (( CURRENT == 2 )); then\n");
        script.Append("        _describe -t commands 'command' commands\n");
        script.Append("        return\n");
        script.Append("    fi\n");
        script.Append("    local command=\"$words[2]\"\n");
        script.Append("    shift words\n");
        script.Append("    (( CURRENT-- ))\n");
        script.Append("    case \"$command\" in\n");
        foreach (Command command in scuff.Subcommands)
        {
            List<string> specs = [.. command.Options.SelectMany(o => Words(o).Select(w => ZshOption(o, w)))];
            specs.Add(Quoted("--help[Say what it does, with examples]"));
            string[] values = ArgumentValues(command);
            if (command.Arguments.Any(IsFiles))
            {
                specs.Add(Quoted("*:dance:_files -g \"*.dance(-.)\""));
            }
            else if (command.Arguments.Any(IsAnyFiles))
            {
                specs.Add(Quoted("*:track:_files"));
            }
            else if (values.Length > 0)
            {
                specs.Add(Quoted($"1:{command.Arguments[0].Name}:({string.Join(' ', values)})"));
            }

            script.Append($"        {command.Name}) _arguments {string.Join(' ', specs)} ;;\n");
        }

        script.Append("    esac\n");
        script.Append("}\n");
        script.Append("if [ \"$funcstack[1]\" = \"_scuff\" ]; then _scuff \"$@\"; else compdef _scuff scuff; fi\n");
        return script.ToString();
    }

    /// <summary>For fish.</summary>
    public string ForFish()
    {
        StringBuilder script = new();
        script.Append("# fish completion for scuff\n");
        script.Append("complete -c scuff -f\n");
        foreach (Command command in scuff.Subcommands)
        {
            script.Append($"complete -c scuff -n __fish_use_subcommand -a {command.Name} -d {Quoted(Plainly(command.Description))}\n");
        }

        foreach (Command command in scuff.Subcommands)
        {
            string when = $"complete -c scuff -n '__fish_seen_subcommand_from {command.Name}'";
            foreach (Option option in command.Options)
            {
                string words = string.Concat(Words(option).Select(w => w.StartsWith("--", StringComparison.Ordinal) ? $" -l {w[2..]}" : $" -s {w[1..]}"));
                string[] values = Values(option);
                string takes = !TakesValue(option) ? ""
                    : values.Length > 0 ? $" -x -a {Quoted(string.Join(' ', values))}"
                    : option.HelpName == "folder" ? " -x -a '(__fish_complete_directories)'" : " -x";
                script.Append($"{when}{words}{takes} -d {Quoted(Plainly(option.Description))}\n");
            }

            string[] arguments = ArgumentValues(command);
            if (command.Arguments.Any(IsFiles))
            {
                script.Append($"{when} -k -a '(__fish_complete_suffix .dance)'\n");
            }
            else if (command.Arguments.Any(IsAnyFiles))
            {
                script.Append($"{when} -F\n");
            }
            else if (arguments.Length > 0)
            {
                script.Append($"{when} -a {Quoted(string.Join(' ', arguments))}\n");
            }
        }

        return script.ToString();
    }

    private static bool IsFiles(Argument argument) => TakesFiles.Contains(argument.Name, StringComparer.Ordinal);

    private static bool IsAnyFiles(Argument argument) => TakesAnyFiles.Contains(argument.Name, StringComparer.Ordinal);

    private static bool TakesValue(Option option) => option.ValueType != typeof(bool) && option.Arity.MaximumNumberOfValues > 0;

    private static IEnumerable<string> Words(Option option)
        => option.Aliases.Prepend(option.Name).Where(w => w.StartsWith('-')).Distinct(StringComparer.Ordinal);

    private static string[] Values(Option option) => TakesValue(option)
        ? [.. option.GetCompletions(CompletionContext.Empty).Select(c => c.Label).Where(IsWord)]
        : [];

    private string[] ArgumentValues(Command command)
    {
        if (command.Arguments.Count == 0 || IsFiles(command.Arguments[0]))
        {
            return [];
        }

        return command.Arguments[0].Name == "command"
            ? [.. scuff.Subcommands.Select(c => c.Name)]
            : [.. command.Arguments[0].GetCompletions(CompletionContext.Empty).Select(c => c.Label).Where(IsWord)];
    }

    private static bool IsWord(string label) => label.All(c => char.IsAsciiLetterOrDigit(c) || c == '-');

    private static string ZshOption(Option option, string word)
    {
        string[] values = Values(option);
        string takes = !TakesValue(option) ? ""
            : values.Length > 0 ? $":{option.Name.TrimStart('-')}:({string.Join(' ', values)})"
            : option.HelpName == "folder" ? ":folder:_files -/" : $":{option.Name.TrimStart('-')}: ";
        return Quoted($"{word}[{Plainly(option.Description)}]{takes}");
    }

    // Brackets and colons mean something to zsh, quotes to every shell; descriptions do without them.
    private static string Plainly(string? words)
        => new([.. (words ?? "").Select(c => c switch { ':' => ',', '[' or ']' or '\'' or '"' or '`' or '$' or '\\' => ' ', _ => c })]);

    private static string Quoted(string words) => "'" + words + "'";
}
