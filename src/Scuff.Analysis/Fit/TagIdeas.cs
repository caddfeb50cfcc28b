using System.Globalization;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>
/// Tags of any length out of the plainest steps, for a dance that has none of its own. They begin with the free foot, leave the same foot free, do not
/// turn and do not travel, so that they can stand wherever the weight is on one foot.
/// </summary>
public static class TagIdeas
{
    /// <summary>A tag.</summary>
    /// <param name="length">Its counts, from 1 to <see cref="FitModel.LongestTag"/>.</param>
    /// <param name="free">The foot it begins with.</param>
    /// <param name="beatsInBar">3 in a waltz.</param>
    /// <param name="usual">The foot that most tags of the dance begin with; a tag that begins with the other says so in its name.</param>
    /// <param name="isTaken">Whether a name is already that of another tag.</param>
    public static Tag Make(int length, Foot free, int beatsInBar, Foot usual, Func<string, bool> isTaken)
    {
        ArgumentNullException.ThrowIfNull(isTaken);
        string foot = free == usual ? "" : free == Foot.Left ? " left" : " right";
        string name = string.Create(CultureInfo.InvariantCulture, $"Extra {length}{foot}");
        for (char letter = 'b'; isTaken(name) && letter <= 'z'; letter++)
        {
            name = string.Create(CultureInfo.InvariantCulture, $"Extra {length}{foot} {letter}");
        }

        List<WrittenLine> lines = [];
        int at = 0;
        int block = 0;
        while (at < length)
        {
            StepAction[] actions = beatsInBar == 3 ? Waltz(length - at, free) : Plain(length - at, block++, free);
            lines.Add(LineOf(at, actions));
            at += actions.Length;
        }

        Section body = new() { Number = 1, Length = Counts.FromWhole(length), Lines = lines.ToValueList(), Span = default };
        return new Tag(name, IsBridge: false, Counts.FromWhole(length), body, default);
    }

    private static StepAction[] Plain(int left, int block, Foot free)
    {
        Foot other = free.Other();
        if (left < 4)
        {
            return Short(left, free);
        }

        return (block % 3) switch
        {
            0 =>
            [
                Act(ActionKind.Rock, free, Direction.Forward), Act(ActionKind.Recover, other, Direction.InPlace),
                Act(ActionKind.Rock, free, Direction.Back), Act(ActionKind.Recover, other, Direction.InPlace),
            ],
            1 =>
            [
                Act(ActionKind.Step, free, Direction.Side), Touch(other),
                Act(ActionKind.Step, other, Direction.Side), Touch(free),
            ],
            _ => [Sway(free), Sway(other), Sway(free), Sway(other)],
        };
    }

    // one slow sway a bar
    private static StepAction[] Waltz(int left, Foot free) => left < 6
        ? [.. Short(Math.Min(left, 3), free)]
        : [Sway(free), StepAction.Hold, StepAction.Hold, Sway(free.Other()), StepAction.Hold, StepAction.Hold];

    private static StepAction[] Short(int length, Foot free) => length switch
    {
        1 => [StepAction.Hold],
        2 => [Sway(free), Sway(free.Other())],
        _ => [Sway(free), Sway(free.Other()), StepAction.Hold],
    };

    private static StepAction Sway(Foot foot) => Act(ActionKind.Sway, foot, Direction.Side);

    private static StepAction Touch(Foot foot) => new(ActionKind.Touch, foot.ToActingFoot(), Direction.Together, Contact.Ball, WeightEffect.Keeps);

    private static StepAction Act(ActionKind kind, Foot foot, Direction way) => new(kind, foot.ToActingFoot(), way, Contact.Flat, WeightEffect.Takes);



    private static WrittenLine LineOf(int at, StepAction[] actions)
    {
        WrittenCount[] places = [.. actions.Select((_, i) => PlaceOf(at + i))];
        WrittenMove[] moves = [.. actions.Select((a, i) => MoveOf(places[i], a))];
        return new WrittenLine
        {
            Label = actions.Length == 1
                ? places[0].Label
                : string.Create(CultureInfo.InvariantCulture, $"{at + 1}-{at + actions.Length}"),
            Counts = new CountSpan(Counts.FromWhole(at), Counts.FromWhole(at + actions.Length)),
            Moves = [.. moves],
            Places = [.. places],
            Span = default,
            Number = 0,
        };
    }

    private static WrittenCount PlaceOf(int count) => new((count + 1).ToString(CultureInfo.InvariantCulture), Counts.FromWhole(count));

    private static WrittenMove MoveOf(WrittenCount place, StepAction action) => new()
    {
        Definition = action.Kind == ActionKind.Sway ? StepCatalogue.Default.Find("sway_one") : null,
        Named = action.Foot.ToFoot(),
        Steps = [new WrittenStep(place, Counts.One, action, default, 0) { FootIsNamed = true }],
        Span = default,
        Words = "",
    };

    /// <summary>A single action danced in place of the last count before a restart.</summary>
    internal static WrittenMove Instead(Counts place, StepAction action)
        => MoveOf(new WrittenCount(CountGrid.LabelOf(place), place), action);
}
