using System.Globalization;
using Scuff.Sheets.Drawings;

namespace Scuff.Sheets;

/// <summary>A finished sheet: everything that is printed, in the words it is printed in. Formats only draw it. Equal by value.</summary>
public sealed record SheetModel
{
    /// <summary>Its language, as an ISO 639-1 code.</summary>
    public string Language { get; init; } = "en";

    /// <summary>Its fixed words.</summary>
    public SheetLabels Labels { get; init; } = SheetLabels.English;

    /// <summary>The paper it is printed on.</summary>
    public Paper Paper { get; init; }

    /// <summary>Whether it is in large print.</summary>
    public bool IsLarge { get; init; }

    /// <summary>Whether it is a caller's card, which has one side.</summary>
    public bool IsCard { get; init; }

    /// <summary>Whether it hangs on a wall: printed as large as it can be without taking more pages.</summary>
    public bool IsNotice { get; init; }

    /// <summary>The title, or a stand-in when the dance has none.</summary>
    public required string Title { get; init; }

    /// <summary>Who made it, or empty.</summary>
    public string Author { get; init; } = "";

    /// <summary>Who made it and where, as printed below the title; empty when neither is written.</summary>
    public string ByLine { get; init; } = "";

    /// <summary>What kind of dance it is, in sentences as a teacher would say them.</summary>
    public ValueList<string> Facts { get; init; }

    /// <summary>What else the heading says, in fields of her own, as written.</summary>
    public ValueList<SheetNote> Particulars { get; init; }

    /// <summary>Version and date, for the foot of every page, so that no page is taken for one of another version; empty when not written.</summary>
    public string Edition { get; init; } = "";

    /// <summary>What the abbreviations of this sheet mean, in one sentence.</summary>
    public string Key { get; init; } = "";

    /// <summary>Where the walls go, as a picture; null when that is unknown.</summary>
    public Drawing? WallPicture { get; init; }

    /// <summary>Where students find its page; null when the heading says none, and on a caller's card.</summary>
    public SheetAddress? PageSign { get; init; }

    /// <summary>The signs of the foot diagrams that stand on this sheet; empty when it has none.</summary>
    public ValueList<SheetSign> DiagramKey { get; init; }

    /// <summary>What to take care of, in sentences.</summary>
    public ValueList<string> Cautions { get; init; }

    /// <summary>What changed since the version before, in sentences; empty when none was given.</summary>
    public ValueList<string> Changes { get; init; }

    /// <summary>The parts; an ordinary dance has one without a name.</summary>
    public ValueList<SheetPart> Parts { get; init; }

    /// <summary>Tags and bridges.</summary>
    public ValueList<SheetSection> Tags { get; init; }

    /// <summary>Order of the parts of a phrased dance; empty for an ordinary one.</summary>
    public ValueList<string> Sequence { get; init; }

    /// <summary>Where the pattern breaks whatever the track.</summary>
    public ValueList<SheetBreak> Breaks { get; init; }

    /// <summary>How it ends, or null.</summary>
    public SheetBreak? Ending { get; init; }

    /// <summary>The music, with what is special on each track.</summary>
    public ValueList<SheetTrack> Tracks { get; init; }

    /// <summary>All endings: the dance's own, then those of single tracks, which name their track.</summary>
    public ValueList<SheetBreak> Endings =>
    [
        .. Ending is { } own ? (ReadOnlySpan<SheetBreak>)[own] : [],
        .. Tracks.Where(t => t.Ending is not null).Select(t => t.Ending! with { Where = string.Format(CultureInfo.InvariantCulture, Labels.OnTrack, t.Name) + ": " + t.Ending!.Where }),
    ];

    /// <summary>Moves that the dance defines itself.</summary>
    public ValueList<SheetSection> Moves { get; init; }

    /// <summary>Notes that belong to no line.</summary>
    public ValueList<SheetNote> Notes { get; init; }
}
