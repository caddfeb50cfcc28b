namespace Scuff.Sheets.Drawings;

/// <summary>The words in pictures and in the texts that tell them to readers who do not see them. Equal by value.</summary>
public sealed record DrawingLabels
{
    /// <summary>The words in English.</summary>
    public static DrawingLabels English { get; } = new();

    /// <summary>Begins the text of a foot diagram; <c>{0}</c> is the heading of the section, <c>{1}</c> the clock word that is up.</summary>
    public string FeetFacing { get; init; } = "The feet in “{0}”, seen from above; up is {1}.";

    /// <summary>The same where it is not known where the section starts; <c>{0}</c> is its heading.</summary>
    public string Feet { get; init; } = "The feet in “{0}”, seen from above; up is where the dancer faces as it starts.";

    /// <summary>What happens on a count; <c>{0}</c> is the count, <c>{1}</c> what happens.</summary>
    public string OnCount { get; init; } = "{0}: {1}.";

    /// <summary>The right foot moves; <c>{0}</c> is the way.</summary>
    public string RightFoot { get; init; } = "right foot {0}";

    /// <summary>The left foot moves; <c>{0}</c> is the way.</summary>
    public string LeftFoot { get; init; } = "left foot {0}";

    /// <summary>A way of a foot.</summary>
    public string Forward { get; init; } = "forward";

    /// <summary>A way of a foot.</summary>
    public string Back { get; init; } = "back";

    /// <summary>A way of a foot.</summary>
    public string ToTheRight { get; init; } = "to the right";

    /// <summary>A way of a foot.</summary>
    public string ToTheLeft { get; init; } = "to the left";

    /// <summary>A way of a foot.</summary>
    public string ForwardRight { get; init; } = "forward to the right";

    /// <summary>A way of a foot.</summary>
    public string ForwardLeft { get; init; } = "forward to the left";

    /// <summary>A way of a foot.</summary>
    public string BackRight { get; init; } = "back to the right";

    /// <summary>A way of a foot.</summary>
    public string BackLeft { get; init; } = "back to the left";

    /// <summary>What a foot does that stays where it is.</summary>
    public string InPlace { get; init; } = "in place";

    /// <summary>What a foot meets the floor with; follows its way.</summary>
    public string OnBall { get; init; } = "on the ball";

    /// <summary>What a foot meets the floor with; follows its way.</summary>
    public string OnHeel { get; init; } = "on the heel";

    /// <summary>What a foot meets the floor with; follows its way.</summary>
    public string OnToe { get; init; } = "on the toe";

    /// <summary>A foot that meets no floor; follows its way.</summary>
    public string InTheAir { get; init; } = "in the air";

    /// <summary>The dance turns to the right; <c>{0}</c> is the part of a turn.</summary>
    public string TurnRight { get; init; } = "turn {0} to the right";

    /// <summary>The dance turns to the left; <c>{0}</c> is the part of a turn.</summary>
    public string TurnLeft { get; init; } = "turn {0} to the left";

    /// <summary>Where the weight goes.</summary>
    public string WeightOnRight { get; init; } = "weight on the right foot";

    /// <summary>Where the weight goes.</summary>
    public string WeightOnLeft { get; init; } = "weight on the left foot";

    /// <summary>Where the weight goes.</summary>
    public string WeightOnBoth { get; init; } = "weight on both feet";

    /// <summary>Nothing happens to the feet.</summary>
    public string FeetStay { get; init; } = "the feet stay";

    /// <summary>Words that could not be read.</summary>
    public string NotUnderstood { get; init; } = "not understood";

    /// <summary>Begins the text of the picture of the walls; <c>{0}</c> tells them.</summary>
    public string WallsSeen { get; init; } = "The room seen from above. {0}";

    /// <summary>One wall; <c>{0}</c> is its number, <c>{1}</c> the clock word it starts at.</summary>
    public string WallStarts { get; init; } = "Wall {0} starts at {1}.";

    /// <summary>A dance of one wall; <c>{0}</c> is the clock word.</summary>
    public string EveryWallStarts { get; init; } = "Every wall starts at {0}.";

    /// <summary>After the last of the walls told.</summary>
    public string WallsAgain { get; init; } = "Then they begin again.";

    /// <summary>Meaning of a sign.</summary>
    public string SignRight { get; init; } = "solid sole: right foot";

    /// <summary>Meaning of a sign.</summary>
    public string SignLeft { get; init; } = "outlined sole: left foot";

    /// <summary>Meaning of a sign.</summary>
    public string SignWeight { get; init; } = "filled heel: it carries the weight";

    /// <summary>Meaning of a sign.</summary>
    public string SignFree { get; init; } = "open heel: on the floor without weight";

    /// <summary>Meaning of a sign.</summary>
    public string SignPartWeight { get; init; } = "bar behind it: the part carries the weight";

    /// <summary>Meaning of a sign.</summary>
    public string SignBall { get; init; } = "only the ball touches";

    /// <summary>Meaning of a sign.</summary>
    public string SignHeel { get; init; } = "only the heel touches";

    /// <summary>Meaning of a sign.</summary>
    public string SignToe { get; init; } = "only the toe touches";

    /// <summary>Meaning of a sign.</summary>
    public string SignAir { get; init; } = "dashed: in the air";

    /// <summary>Meaning of a sign.</summary>
    public string SignTravel { get; init; } = "thin sole and arrow: where the foot came from";

    /// <summary>Meaning of a sign.</summary>
    public string SignTurn { get; init; } = "how far the body turns, and which way";

    /// <summary>Meaning of a sign.</summary>
    public string SignUp { get; init; } = "the way you face as the section starts is up";

    /// <summary>Meaning of a sign.</summary>
    public string SignNotUnderstood { get; init; } = "words that could not be read";
}
