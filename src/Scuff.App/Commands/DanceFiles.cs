using System.CommandLine;
using Scuff.App.Files;

namespace Scuff.App.Commands;

/// <summary>The files argument that several commands share.</summary>
internal static class DanceFiles
{
    /// <summary>Makes the argument.</summary>
    public static Argument<string[]> CreateArgument() => new("files")
    {
        Description = "Dances, or folders of .dance files; - or nothing reads standard input.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    /// <summary>The texts, read one after the other as they are asked for; null, after telling why, when none was named or piped.</summary>
    public static IEnumerable<DanceInput>? Read(string[]? names, Terminal terminal)
    {
        if (names is { Length: > 0 })
        {
            return Options.AreKnown(names, terminal) ? InputReader.Read(names, terminal) : null;
        }

        if (terminal.InputIsPiped)
        {
            return InputReader.Read([], terminal);
        }

        terminal.Tell("Name a dance file or a folder of them, or pipe a text in.");
        return null;
    }

    /// <summary>Tells the trouble or the note of an input.</summary>
    /// <returns>Whether there is a text to go on with.</returns>
    public static bool IsReadable(DanceInput input, Terminal terminal)
    {
        if (input.Trouble is { } trouble)
        {
            terminal.Tell(trouble);
            return false;
        }

        if (input.Note is { } note)
        {
            terminal.Tell(note);
        }

        return true;
    }
}
