using System.CommandLine;

namespace Scuff.App.Commands;

/// <summary>
/// A command of the program. A class that implements it, with a constructor without arguments, is found and offered;
/// no list names it.
/// </summary>
internal interface IProgramCommand
{
    /// <summary>Its word; commands are listed in order of it.</summary>
    string Name { get; }

    /// <summary>How it is used, for its help.</summary>
    IReadOnlyList<Example> Examples { get; }

    /// <summary>What its exit codes mean, for its help, in lines of at most 80 characters.</summary>
    string Closing =>
        """
        Ends with 0 when all is clean (hints allowed), 1 after an error, question or warning,
        2 after wrong usage or trouble with a file.
        """;

    /// <summary>Makes the command.</summary>
    /// <param name="terminal">What it reads from and writes to.</param>
    Command Create(Terminal terminal);
}
