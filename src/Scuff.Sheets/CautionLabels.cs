using Scuff.Sheets.Languages;

namespace Scuff.Sheets;

/// <summary>
/// The sentences of the cautions, in the sheet's language. In each, <c>{0}</c> is the number and <c>{1}</c> the place; the words of the
/// number and of the place are templates too. Equal by value.
/// </summary>
public sealed record CautionLabels
{
    /// <summary>The sentences in English.</summary>
    public static CautionLabels English => SheetLanguage.English.Cautions;

    /// <summary>Swivels and twists; <c>{0}</c> is how many, <c>{1}</c> where the first is.</summary>
    public string KneeTwist { get; init; } = "";

    /// <summary>A turn on one foot; <c>{0}</c> is its size, <c>{1}</c> where.</summary>
    public string OneFootSpin { get; init; } = "";

    /// <summary>Many turns in a row; <c>{0}</c> is how much in eight counts, <c>{1}</c> where they begin.</summary>
    public string ManyTurns { get; init; } = "";

    /// <summary>Jumps and hops; <c>{0}</c> is how many, <c>{1}</c> where the first is.</summary>
    public string Jumps { get; init; } = "";

    /// <summary>Deep bends; <c>{0}</c> is how many, <c>{1}</c> where the first is.</summary>
    public string Kneel { get; init; } = "";

    /// <summary>Stomps; <c>{0}</c> is how many, <c>{1}</c> where the first is.</summary>
    public string Stomps { get; init; } = "";

    /// <summary>Quick steps; <c>{0}</c> is weight changes a second, <c>{1}</c> where they begin.</summary>
    public string FastFeet { get; init; } = "";

    /// <summary>It travels to the left; <c>{0}</c> is metres, <c>{1}</c> where it is farthest.</summary>
    public string SharedFloorLeft { get; init; } = "";

    /// <summary>It travels to the right; as <see cref="SharedFloorLeft"/>.</summary>
    public string SharedFloorRight { get; init; } = "";

    /// <summary>It travels forward; as <see cref="SharedFloorLeft"/>.</summary>
    public string SharedFloorForward { get; init; } = "";

    /// <summary>It travels back; as <see cref="SharedFloorLeft"/>.</summary>
    public string SharedFloorBack { get; init; } = "";

    /// <summary>The last line of all.</summary>
    public string Deference { get; init; } = "";

    /// <summary>A place; <c>{0}</c> is the section's number, <c>{1}</c> the count.</summary>
    public string InSection { get; init; } = "";

    /// <summary>A place in a phrased dance; <c>{0}</c> is the part, <c>{1}</c> the section's number, <c>{2}</c> the count.</summary>
    public string InPart { get; init; } = "";

    /// <summary>A place in a tag; <c>{0}</c> is its name, <c>{1}</c> the count.</summary>
    public string InTag { get; init; } = "";

    /// <summary>A full turn or less; <c>{0}</c> is a number such as ¾ or 1.</summary>
    public string Turn { get; init; } = "";

    /// <summary>More than a full turn; <c>{0}</c> is a number such as 1½.</summary>
    public string Turns { get; init; } = "";
}
