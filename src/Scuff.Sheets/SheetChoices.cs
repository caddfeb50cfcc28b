using Scuff.Analysis;

namespace Scuff.Sheets;

/// <summary>What she chooses when she prints. Equal by value, the version before by being the same one.</summary>
public sealed record SheetChoices
{
    /// <summary>English, on A4, in usual print, with diagrams.</summary>
    public static SheetChoices Usual { get; } = new();

    /// <summary>Language of the sheet, by its ISO 639-1 code (<c>de</c>).</summary>
    public string Language { get; init; } = "en";

    /// <summary>The paper.</summary>
    public Paper Paper { get; init; }

    /// <summary>Whether it is printed large, for the far side of the hall and for weak eyes.</summary>
    public bool IsLarge { get; init; }

    /// <summary>Whether it is the caller's card: one side, the headings and the breaks, no explanations.</summary>
    public bool IsCard { get; init; }

    /// <summary>Whether the feet are drawn under each section.</summary>
    public bool HasDiagrams { get; init; } = true;

    /// <summary>The version before, for a list of what changed; or null.</summary>
    public DanceAnalysis? Earlier { get; init; }
}
