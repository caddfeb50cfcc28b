namespace Scuff.App.Files;

/// <summary>One text that was asked for: what was read, or the sentence that says why it was not.</summary>
/// <param name="Name">Its name as given (<c>-</c> is standard input).</param>
/// <param name="Text">The text; empty when there is a trouble.</param>
/// <param name="Form">How it was written.</param>
/// <param name="Trouble">One sentence, or null when it was read.</param>
internal sealed record DanceInput(string Name, string Text, TextForm Form, string? Trouble)
{
    /// <summary>The name that stands for standard input.</summary>
    public const string StandardInput = "-";

    /// <summary>Whether it came from standard input.</summary>
    public bool IsStandardInput => Name == StandardInput;

    /// <summary>The name as a person says it.</summary>
    public string Spoken => IsStandardInput ? "standard input" : Name;

    /// <summary>A sentence about how the text was written, when that is worth telling; else null.</summary>
    public string? Note => Form == TextForm.Windows1252
        ? $"{Spoken} is not UTF-8; it was read as Windows-1252, so look at its accents and fractions."
        : null;
}
