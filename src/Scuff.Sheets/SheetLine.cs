namespace Scuff.Sheets;

/// <summary>One line of a section.</summary>
public sealed record SheetLine
{
    /// <summary>The counts as printed (<c>3&amp;4</c>).</summary>
    public required string Counts { get; init; }

    /// <summary>Whether a box to tick stands before it, as in a plan that is worked off.</summary>
    public bool HasBox { get; init; }

    /// <summary>What it is called, set bold before the words: a dance of a programme. Empty for none.</summary>
    public string Title { get; init; } = "";

    /// <summary>What is danced.</summary>
    public required string Words { get; init; }

    /// <summary>Where the dance faces after it (<c>9:00</c>), or null when that is unknown or has no meaning here.</summary>
    public string? Facing { get; init; }

    /// <summary>Whether the dance faces elsewhere than before it.</summary>
    public bool Turns { get; init; }

    /// <summary>Styling, arms and other notes.</summary>
    public ValueList<SheetNote> Notes { get; init; }

    /// <summary>What may be danced instead.</summary>
    public ValueList<SheetOption> Options { get; init; }

    /// <summary>What stands between its title and its words; empty when one of them is.</summary>
    public string Between => Title.Length > 0 && Words.Length > 0 ? " · " : "";
}
