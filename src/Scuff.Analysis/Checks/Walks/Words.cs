using System.Globalization;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>The few trade words that messages and the titles of fixes are made of.</summary>
internal static class Words
{
    /// <summary>R or L.</summary>
    public static string Of(Foot foot) => foot == Foot.Left ? "L" : "R";

    /// <summary>R, L or both feet.</summary>
    public static string Of(Weight weight) => weight.StandingFoot() is { } foot ? Of(foot) : "both feet";

    /// <summary>An action in few words: <c>step L together</c>.</summary>
    public static string Of(StepAction action)
    {
        string verb = action is { Kind: ActionKind.Stomp, Effect: WeightEffect.Keeps }
            ? "stomp up"
            : action.Traits.Word.Replace('-', ' ');
        string foot = action.Foot.ToFoot() is { } one ? " " + Of(one) : "";
        string where = action.Direction switch
        {
            Direction.Forward => " forward",
            Direction.Back => " back",
            Direction.Side => " to side",
            Direction.Together => " together",
            Direction.InPlace => " in place",
            Direction.CrossFront => " across",
            Direction.CrossBehind => " behind",
            _ => "",
        };
        return verb + foot + where;
    }

    /// <summary>A time of a track, to the second: <c>3:25</c>.</summary>
    public static string Clock(double seconds)
    {
        int whole = (int)Math.Round(seconds);
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
    }

    /// <summary>A length: <c>8 counts</c>, <c>1 count</c>.</summary>
    public static string Of(Counts length) => length == Counts.One ? "1 count" : length.ToString() + " counts";

    /// <summary>A turn: <c>1/4 left</c>, <c>full turn right</c>, <c>1 1/4 right</c>.</summary>
    public static string Of(Turn turn)
    {
        Ratio amount = turn.Amount / 8;
        Ratio rest = amount - amount.Floor;
        string side = turn.Sign > 0 ? " right" : " left";
        return (amount.Floor, rest.Sign) switch
        {
            (0, 0) => "no turn",
            (1, 0) => "full turn" + side,
            (var whole, 0) => Of(whole) + " full turns" + side,
            (0, _) => rest.ToString() + side,
            (var whole, _) => Of(whole) + " " + rest.ToString() + side,
        };
    }

    /// <summary>An amount of turn without its direction: <c>1 1/2</c>, <c>3/4</c>.</summary>
    public static string Turns(Ratio eighths)
    {
        Ratio turns = eighths / 8;
        Ratio rest = turns - turns.Floor;
        return (turns.Floor, rest.Sign) switch
        {
            (0, _) => rest.ToString(),
            (var whole, 0) => Of(whole),
            (var whole, _) => Of(whole) + " " + rest.ToString(),
        };
    }

    /// <summary>To one decimal at most: <c>6.7</c>, <c>5</c>.</summary>
    public static string Tenths(Ratio value) => Tenths(value.ToDouble());

    /// <summary>To one decimal at most: <c>1.6</c>.</summary>
    public static string Tenths(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>To two decimals at most: <c>0.25</c>.</summary>
    public static string Hundredths(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>Where a tempo is stated, after a figure that follows from it: <c> at 200 beats a minute</c>.</summary>
    public static string Of(DancedTempo tempo) => $" at {Tenths(tempo.BeatsPerMinute)} beats a minute"
        + (tempo.TrackTitle.Length > 0 ? $" (“{tempo.TrackTitle}”)" : "");

    /// <summary>A way over the floor.</summary>
    public static string Of(FloorWay way) => way switch
    {
        FloorWay.Left => "left",
        FloorWay.Right => "right",
        FloorWay.Forward => "forward",
        _ => "back",
    };

    /// <summary>A whole number.</summary>
    public static string Of(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary><c>a, b and c</c>.</summary>
    public static string Join(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "",
        1 => words[0],
        _ => string.Join(", ", words.Take(words.Count - 1)) + " and " + words[^1],
    };

    /// <summary><c>section 2</c>, or the section's heading when it has no number of its own.</summary>
    public static string Of(Section section) => section.Number > 0 ? "section " + Of(section.Number) : section.Title;
}
