using Scuff.Sheets.Drawings;
using Scuff.Sheets.Languages;

namespace Scuff.Sheets;

/// <summary>
/// The fixed words of a sheet, in its language. A property here is an entry <c>label.…</c> in every file of <c>data/languages</c>.
/// Equal by value.
/// </summary>
public sealed record SheetLabels
{
    /// <summary>The words in English.</summary>
    public static SheetLabels English => SheetLanguage.English.Labels;

    /// <summary>Before the name of who made the dance.</summary>
    public string By { get; init; } = "";

    /// <summary>What leads a sentence, with the sign behind it: <c>{0}</c> is the lead (<c>Style:</c>; in French with a space).</summary>
    public string Lead { get; init; } = "{0}:";

    /// <summary>Heading of the music.</summary>
    public string Music { get; init; } = "";

    /// <summary>Heads the column of counts.</summary>
    public string Counts { get; init; } = "";

    /// <summary>Heads the column of steps.</summary>
    public string Steps { get; init; } = "";

    /// <summary>Heads the column of facings.</summary>
    public string FacingAfter { get; init; } = "";

    /// <summary>Heading of the order of the parts.</summary>
    public string OrderOfParts { get; init; } = "";

    /// <summary>Before the order of the parts on one track.</summary>
    public string Order { get; init; } = "";

    /// <summary>Heading of tags and restarts.</summary>
    public string Breaks { get; init; } = "";

    /// <summary>Heading of what is special on one track; <c>{0}</c> is its name.</summary>
    public string OnTrack { get; init; } = "";

    /// <summary>Heading of the ending.</summary>
    public string Ending { get; init; } = "";

    /// <summary>Heading of notes.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Heading of the cautions.</summary>
    public string Cautions { get; init; } = "";

    /// <summary>Heading of what changed since the version before.</summary>
    public string Changes { get; init; } = "";

    /// <summary>Heading of the picture of the walls.</summary>
    public string Walls { get; init; } = "";

    /// <summary>Heading of the explanation of the foot diagrams.</summary>
    public string DiagramKey { get; init; } = "";

    /// <summary>What the address of the page for students is for.</summary>
    public string Page { get; init; } = "";

    /// <summary>The words in pictures.</summary>
    public DrawingLabels Drawings { get; init; } = new();

    /// <summary>At the foot of a page; <c>{0}</c> is its number and <c>{1}</c> how many there are.</summary>
    public string PageOf { get; init; } = "";

    /// <summary>A sentence where numbers in brackets are printed for letters that a printed sheet has no type for: <c>[U+6E2F]</c>.</summary>
    public string LettersMissing { get; init; } = "";

    /// <summary>Words that lead a sentence, with the sign behind them.</summary>
    public string LeadOf(string words) => Lead.Replace("{0}", words, StringComparison.Ordinal);

    /// <summary>The kind of a note as its lead: <c>Style:</c>.</summary>
    public string LeadOf(SheetNote note) => LeadOf(SheetWords.Capital(note.Kind));

    /// <summary>The name and the counts of an option as its lead: <c>Easier, 7&amp;8:</c>.</summary>
    public string LeadOf(SheetOption option) => LeadOf($"{SheetWords.Capital(option.Name)}, {option.Counts}");
}
