namespace Scuff.Sheets;

/// <summary>
/// The sentences of the cautions, in the sheet's language. In each, <c>{0}</c> is the number and <c>{1}</c> the place; the words of the
/// number and of the place are templates too. Equal by value.
/// </summary>
public sealed record CautionLabels
{
    /// <summary>The sentences in English.</summary>
    public static CautionLabels English { get; } = new();

    /// <summary>Swivels and twists; <c>{0}</c> is how many, <c>{1}</c> where the first is.</summary>
    public string KneeTwist { get; init; } = "Swivels and twists ({0}, the first in {1}): soft knees, heels light, smooth soles and no sticky floor.";

    /// <summary>A turn on one foot; <c>{0}</c> is its size, <c>{1}</c> where.</summary>
    public string OneFootSpin { get; init; } = "Turn on one foot ({0}, {1}): only as far as your balance goes; two steps in place do as well.";

    /// <summary>Many turns in a row; <c>{0}</c> is how much in eight counts, <c>{1}</c> where they begin.</summary>
    public string ManyTurns { get; init; } = "Many turns ({0} in eight counts, {1}): whoever gets dizzy leaves them out.";

    /// <summary>Jumps and hops; <c>{0}</c> is how many, <c>{1}</c> where the first is.</summary>
    public string Jumps { get; init; } = "Jumps and hops ({0}, the first in {1}): land softly, or step instead.";

    /// <summary>Deep bends; <c>{0}</c> is how many, <c>{1}</c> where the first is.</summary>
    public string Kneel { get; init; } = "Deep bends ({0}, the first in {1}): only as low as the knee likes.";

    /// <summary>Stomps; <c>{0}</c> is how many, <c>{1}</c> where the first is.</summary>
    public string Stomps { get; init; } = "Stomps ({0}, the first in {1}): flat foot and soft knee, and not on concrete.";

    /// <summary>Quick steps; <c>{0}</c> is weight changes a second, <c>{1}</c> where they begin.</summary>
    public string FastFeet { get; init; } = "Quick feet ({0} steps a second, {1}): small steps, and slower music to learn it.";

    /// <summary>It travels to the left; <c>{0}</c> is metres, <c>{1}</c> where it is farthest.</summary>
    public string SharedFloorLeft { get; init; } = "It travels {0} m to the left ({1}): leave room to that side.";

    /// <summary>It travels to the right; as <see cref="SharedFloorLeft"/>.</summary>
    public string SharedFloorRight { get; init; } = "It travels {0} m to the right ({1}): leave room to that side.";

    /// <summary>It travels forward; as <see cref="SharedFloorLeft"/>.</summary>
    public string SharedFloorForward { get; init; } = "It travels {0} m forward ({1}): leave room in front.";

    /// <summary>It travels back; as <see cref="SharedFloorLeft"/>.</summary>
    public string SharedFloorBack { get; init; } = "It travels {0} m back ({1}): leave room behind.";

    /// <summary>The last line of all.</summary>
    public string Deference { get; init; } = "The rules of the hall and the advice of doctors and licensed teachers come before this sheet.";

    /// <summary>A place; <c>{0}</c> is the section's number, <c>{1}</c> the count.</summary>
    public string InSection { get; init; } = "section {0} count {1}";

    /// <summary>A place in a phrased dance; <c>{0}</c> is the part, <c>{1}</c> the section's number, <c>{2}</c> the count.</summary>
    public string InPart { get; init; } = "part {0} section {1} count {2}";

    /// <summary>A place in a tag; <c>{0}</c> is its name, <c>{1}</c> the count.</summary>
    public string InTag { get; init; } = "tag “{0}” count {1}";

    /// <summary>A full turn or less; <c>{0}</c> is a number such as ¾ or 1.</summary>
    public string Turn { get; init; } = "{0} turn";

    /// <summary>More than a full turn; <c>{0}</c> is a number such as 1½.</summary>
    public string Turns { get; init; } = "{0} turns";
}
