using System.Globalization;
using CsCheck;
using Scuff;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Tests.Timelines;

/// <summary>Dances put together in code, without a text.</summary>
internal static class HandMade
{
    public static readonly TextSpan Nowhere = new(0, 0);

    /// <summary>Dances of one to three sections of whole counts and halves, with every kind of action that moves weight or turns.</summary>
    public static readonly Gen<Dance> AnyDance = Gen.Select(
        Gen.Select(Gen.Int[1, 8], Gen.Select(Gen.Int[-1, 14], AnyAction()).Array[0, 10]).Array[1, 3],
        Gen.OneOf(Weight.Left, Weight.Right),
        (sections, start) => OfSections(
            start,
            [.. sections.Select((s, i) => SectionOf(i + 1, s.Item1, Steps(s.Item2, s.Item1)))]));

    public static Counts Count(int whole) => Counts.FromWhole(whole);

    public static CountSpan Span(int start, int end) => new(Count(start), Count(end));

    public static StepAction Step(Foot foot, Direction direction = Direction.Forward, int turn = 0)
        => new(ActionKind.Step, foot.ToActingFoot(), direction, Contact.Flat, WeightEffect.Takes, Turn.FromEighths(turn));

    public static StepAction Touch(Foot foot, Direction direction = Direction.Together)
        => new(ActionKind.Touch, foot.ToActingFoot(), direction, Contact.Toe, WeightEffect.Keeps);

    /// <summary>An action at a place told by its label: <c>3</c>, <c>3&amp;</c>, <c>0&amp;</c>.</summary>
    public static WrittenStep On(string label, StepAction action, Counts? lasts = null)
    {
        bool half = label.EndsWith('&');
        int count = int.Parse(label.TrimEnd('&'), CultureInfo.InvariantCulture);
        Counts place = Count(count - 1) + (half ? Counts.Half : Counts.Zero);
        return new WrittenStep(new WrittenCount(label, place), lasts ?? (half ? Counts.Half : Counts.One), action, Nowhere, 1);
    }

    public static WrittenMove Move(params WrittenStep[] steps) => new() { Steps = steps.ToValueList(), Span = Nowhere, Words = "step R" };

    public static Section SectionOf(int number, int length, params WrittenStep[] steps) => new()
    {
        Number = number,
        Length = Count(length),
        Span = Nowhere,
        Lines =
        [
            new WrittenLine
            {
                Label = string.Create(CultureInfo.InvariantCulture, $"1-{length}"),
                Counts = Span(0, length),
                Moves = [Move(steps)],
                Span = Nowhere,
                Number = 1,
            },
        ],
    };

    public static Dance OfSections(Weight start, params Section[] sections) => new()
    {
        Start = start,
        Parts = [new Part("", sections.ToValueList(), Nowhere)],
    };

    public static Tag TagOf(string name, Section body) => new(name, false, null, body, Nowhere);

    public static Interruption Break(int wall, int? after, params InterruptionAct[] acts) => new()
    {
        Walls = [wall],
        AfterCounts = after is { } counts ? Count(counts) : null,
        Acts = acts.ToValueList(),
        Span = Nowhere,
        Line = 1,
        Verbatim = "",
    };

    public static Ending EndingOf(Section? body, int? after = null, int? wall = null) => new()
    {
        AfterCounts = after is { } counts ? Count(counts) : null,
        Wall = wall,
        Body = body,
        Span = Nowhere,
        Line = 1,
        Verbatim = "",
    };

    public static Track TrackOf(params Interruption[] interruptions) => new()
    {
        Title = "Harbour Lights Out",
        Interruptions = interruptions.ToValueList(),
        Span = Nowhere,
        Line = 1,
    };

    /// <summary>Eight counts in two sections of four: walks, a quarter turn to the right on count 8.</summary>
    public static Dance QuarterDance() => OfSections(
        Weight.Left,
        SectionOf(1, 4, On("1", Step(Foot.Right)), On("2", Step(Foot.Left)), On("3", Step(Foot.Right)), On("4", Step(Foot.Left))),
        SectionOf(2, 4, On("1", Step(Foot.Right)), On("2", Step(Foot.Left)), On("3", Step(Foot.Right)), On("4", Step(Foot.Left, turn: 2))));

    private static Gen<StepAction> AnyAction() => Gen.Select(
        Gen.OneOf(ActionKind.Step, ActionKind.Touch, ActionKind.Jump, ActionKind.Hold, ActionKind.Pivot, ActionKind.Shift),
        Gen.OneOf(Foot.Left, Foot.Right),
        Gen.Int[-4, 4],
        Gen.OneOf(Direction.Forward, Direction.Side, Direction.Together, Direction.CrossFront, Direction.Left, Direction.Right),
        (kind, foot, turn, direction) => kind switch
        {
            ActionKind.Touch => Touch(foot, direction),
            ActionKind.Jump => new StepAction(kind, ActingFoot.Both, Direction.Out, Contact.Flat, WeightEffect.Shares, Turn.FromEighths(turn)),
            ActionKind.Hold => StepAction.Hold,
            _ => Step(foot, direction, turn) with { Kind = kind },
        });

    private static WrittenStep[] Steps((int Half, StepAction Action)[] placed, int length) =>
    [
        .. placed
            .Where(p => p.Half < 2 * length)
            .DistinctBy(p => p.Half)
            .OrderBy(p => p.Half)
            .Select(p => new WrittenStep(
                new WrittenCount("", Counts.FromRatio(new Ratio(p.Half, 2))),
                Counts.Half,
                p.Action,
                Nowhere,
                1)),
    ];
}
