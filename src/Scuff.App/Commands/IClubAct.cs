namespace Scuff.App.Commands;

/// <summary>Something that a command does with a club, named by the word after the command: <c>book plan</c>, <c>night show</c>.</summary>
internal interface IClubAct
{
    /// <summary>Its word.</summary>
    string Name { get; }

    /// <summary>What follows the word, for the sentence about wrong usage: <c>CLASS DAY</c>.</summary>
    string Usage { get; }

    /// <summary>How few words must follow.</summary>
    int Fewest { get; }

    /// <summary>How many words may follow.</summary>
    int Most { get; }

    /// <summary>The options it takes besides <c>--club</c>.</summary>
    IReadOnlyList<string> Takes { get; }
}
