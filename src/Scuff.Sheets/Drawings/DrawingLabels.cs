using Scuff.Sheets.Languages;

namespace Scuff.Sheets.Drawings;

/// <summary>The words in pictures and in the texts that tell them to readers who do not see them. Equal by value.</summary>
public sealed record DrawingLabels
{
    /// <summary>The words in English.</summary>
    public static DrawingLabels English => SheetLanguage.English.Labels.Drawings;

    /// <summary>Begins the text of a foot diagram; <c>{0}</c> is the heading of the section, <c>{1}</c> the clock word that is up.</summary>
    public string FeetFacing { get; init; } = "";

    /// <summary>The same where it is not known where the section starts; <c>{0}</c> is its heading.</summary>
    public string Feet { get; init; } = "";

    /// <summary>What happens on a count; <c>{0}</c> is the count, <c>{1}</c> what happens.</summary>
    public string OnCount { get; init; } = "";

    /// <summary>The right foot moves; <c>{0}</c> is the way.</summary>
    public string RightFoot { get; init; } = "";

    /// <summary>The left foot moves; <c>{0}</c> is the way.</summary>
    public string LeftFoot { get; init; } = "";

    /// <summary>A way of a foot.</summary>
    public string Forward { get; init; } = "";

    /// <summary>A way of a foot.</summary>
    public string Back { get; init; } = "";

    /// <summary>A way of a foot.</summary>
    public string ToTheRight { get; init; } = "";

    /// <summary>A way of a foot.</summary>
    public string ToTheLeft { get; init; } = "";

    /// <summary>A way of a foot.</summary>
    public string ForwardRight { get; init; } = "";

    /// <summary>A way of a foot.</summary>
    public string ForwardLeft { get; init; } = "";

    /// <summary>A way of a foot.</summary>
    public string BackRight { get; init; } = "";

    /// <summary>A way of a foot.</summary>
    public string BackLeft { get; init; } = "";

    /// <summary>What a foot does that stays where it is.</summary>
    public string InPlace { get; init; } = "";

    /// <summary>What a foot meets the floor with; follows its way.</summary>
    public string OnBall { get; init; } = "";

    /// <summary>What a foot meets the floor with; follows its way.</summary>
    public string OnHeel { get; init; } = "";

    /// <summary>What a foot meets the floor with; follows its way.</summary>
    public string OnToe { get; init; } = "";

    /// <summary>A foot that meets no floor; follows its way.</summary>
    public string InTheAir { get; init; } = "";

    /// <summary>The dance turns to the right; <c>{0}</c> is the part of a turn.</summary>
    public string TurnRight { get; init; } = "";

    /// <summary>The dance turns to the left; <c>{0}</c> is the part of a turn.</summary>
    public string TurnLeft { get; init; } = "";

    /// <summary>Where the weight goes.</summary>
    public string WeightOnRight { get; init; } = "";

    /// <summary>Where the weight goes.</summary>
    public string WeightOnLeft { get; init; } = "";

    /// <summary>Where the weight goes.</summary>
    public string WeightOnBoth { get; init; } = "";

    /// <summary>Nothing happens to the feet.</summary>
    public string FeetStay { get; init; } = "";

    /// <summary>Words that could not be read.</summary>
    public string NotUnderstood { get; init; } = "";

    /// <summary>Begins the text of the picture of the walls; <c>{0}</c> tells them.</summary>
    public string WallsSeen { get; init; } = "";

    /// <summary>One wall; <c>{0}</c> is its number, <c>{1}</c> the clock word it starts at.</summary>
    public string WallStarts { get; init; } = "";

    /// <summary>A dance of one wall; <c>{0}</c> is the clock word.</summary>
    public string EveryWallStarts { get; init; } = "";

    /// <summary>After the last of the walls told.</summary>
    public string WallsAgain { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignRight { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignLeft { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignWeight { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignFree { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignPartWeight { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignBall { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignHeel { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignToe { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignAir { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignTravel { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignTurn { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignUp { get; init; } = "";

    /// <summary>Meaning of a sign.</summary>
    public string SignNotUnderstood { get; init; } = "";
}
