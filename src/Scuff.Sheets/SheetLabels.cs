using Scuff.Sheets.Drawings;

namespace Scuff.Sheets;

/// <summary>The fixed words of a sheet, in its language. Equal by value.</summary>
public sealed record SheetLabels
{
    /// <summary>The words in English.</summary>
    public static SheetLabels English { get; } = new();

    /// <summary>Before the name of who made the dance.</summary>
    public string By { get; init; } = "by";

    /// <summary>Heading of the music.</summary>
    public string Music { get; init; } = "Music";

    /// <summary>Heads the column of counts.</summary>
    public string Counts { get; init; } = "Counts";

    /// <summary>Heads the column of steps.</summary>
    public string Steps { get; init; } = "Steps";

    /// <summary>Heads the column of facings.</summary>
    public string FacingAfter { get; init; } = "Facing after";

    /// <summary>Heading of the order of the parts.</summary>
    public string OrderOfParts { get; init; } = "Order of the parts";

    /// <summary>Before the order of the parts on one track.</summary>
    public string Order { get; init; } = "Order";

    /// <summary>Heading of tags and restarts.</summary>
    public string Breaks { get; init; } = "Where the pattern breaks";

    /// <summary>Heading of what is special on one track; <c>{0}</c> is its name.</summary>
    public string OnTrack { get; init; } = "On {0}";

    /// <summary>Heading of the ending.</summary>
    public string Ending { get; init; } = "Ending";

    /// <summary>Heading of notes.</summary>
    public string Notes { get; init; } = "Notes";

    /// <summary>Heading of the cautions.</summary>
    public string Cautions { get; init; } = "Take care";

    /// <summary>Heading of what changed since the version before.</summary>
    public string Changes { get; init; } = "What changed";

    /// <summary>Heading of the picture of the walls.</summary>
    public string Walls { get; init; } = "The walls";

    /// <summary>Heading of the explanation of the foot diagrams.</summary>
    public string DiagramKey { get; init; } = "How to read the feet";

    /// <summary>The words in pictures.</summary>
    public DrawingLabels Drawings { get; init; } = DrawingLabels.English;

    /// <summary>At the foot of a page; <c>{0}</c> is its number and <c>{1}</c> how many there are.</summary>
    public string PageOf { get; init; } = "Page {0} of {1}";
}
