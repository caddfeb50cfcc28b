using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>What all ways to dance a clause are put together from: foot, direction, size, weight and turn as its words give them.</summary>
internal static class VariantParts
{
    // What a reading costs when the foot it needs is not free: it is taken only when nothing else is possible.
    private const double ImpossibleFoot = 3;

    /// <summary>The signed turn a clause states, in eighths, or null; and whether its direction is missing.</summary>
    public static (Ratio? Eighths, bool DirectionMissing) StatedTurn(Clause clause, Foot? fallback)
    {
        if (clause.Amount is not int amount)
        {
            return (null, false);
        }

        if (clause.TurnSide is Foot side)
        {
            return (side == Foot.Right ? amount : -amount, false);
        }

        if (fallback is Foot other)
        {
            return (other == Foot.Right ? amount : -amount, false);
        }

        return (null, true);
    }

    /// <summary>What it costs that a foot acts with the weight where it is.</summary>
    public static double FootCost(Weight weight, ActingFoot foot, FootRule rule) => rule switch
    {
        FootRule.Free when foot.ToFoot() is Foot f && weight == f.ToWeight() => ImpossibleFoot,
        FootRule.Standing when foot.ToFoot() is Foot f && weight == f.Other().ToWeight() => ImpossibleFoot,
        _ => 0,
    };

    /// <summary>The part of the foot a word names.</summary>
    public static Contact ContactOf(string part, Contact usual) => part switch
    {
        "heel" or "heels" => Contact.Heel,
        "toe" or "toes" => Contact.Toe,
        "ball" => Contact.Ball,
        "flat" => Contact.Flat,
        _ => usual,
    };

    /// <summary>The free foot, or a guess from the foot that acted last when the weight is shared; null when unknown.</summary>
    public static Foot? NextFoot(Situation situation)
    {
        if (situation.Weight.FreeFoot() is Foot free)
        {
            return free;
        }

        if (situation.Weight == Weight.Shared)
        {
            return situation.Last?.Action.Foot.ToFoot()?.Other() ?? Foot.Right;
        }

        return null;
    }

    /// <summary>The way a clause goes, for the foot that acts.</summary>
    public static Direction DirectionOf(Clause clause, Foot? acting, Direction usual, ActionKind kind)
    {
        bool weightless = kind is ActionKind.Touch or ActionKind.Point or ActionKind.Tap or ActionKind.Kick or ActionKind.Flick or ActionKind.Hook
            or ActionKind.Hitch or ActionKind.Dig or ActionKind.Scuff or ActionKind.Brush or ActionKind.Sweep or ActionKind.Ronde or ActionKind.Drag
                or ActionKind.Slide;
        bool across = clause.DirSide is Foot side && acting is Foot foot && side != foot;
        if (clause.Diagonal)
        {
            bool back = clause.Dir?.Direction is Direction.Back or Direction.CrossBehind
                || (clause.Dir?.Direction is Direction.Home && clause.DirText.StartsWith("back", StringComparison.OrdinalIgnoreCase));
            return (back, across || clause.Dir?.Direction is Direction.CrossFront) switch
            {
                (false, false) => Direction.DiagonalForward,
                (false, true) => Direction.DiagonalForwardAcross,
                (true, false) => Direction.DiagonalBack,
                (true, true) => Direction.DiagonalBackAcross,
            };
        }

        if (clause.Dir is null)
        {
            return usual;
        }

        if (clause.Dir.Direction == Direction.Up && kind == ActionKind.Step)
        {
            return Direction.Forward;
        }

        Direction direction = clause.Dir.Direction;
        if (kind is ActionKind.Sway && (clause.DirSide is not null || clause.Dir.Direction == Direction.Back))
        {
            // "sway back to the left"
            return Direction.Side;
        }

        if (direction == Direction.Side && across && kind is ActionKind.Drag or ActionKind.Slide)
        {
            return Direction.Together;
        }

        if (direction == Direction.Side && across)
        {
            return Direction.Across;
        }

        if (weightless && direction == Direction.CrossFront)
        {
            return Direction.CrossFront;
        }

        return direction;
    }

    /// <summary>How large the step is said to be.</summary>
    public static StepSize SizeOf(Clause clause) => clause.Size switch { < 0 => StepSize.Small, > 0 => StepSize.Large, _ => StepSize.Usual };

    /// <summary>What a move does to the weight, where a note says so.</summary>
    public static WeightEffect EffectOf(Clause clause, ActingFoot foot, WeightEffect usual, out bool stated)
    {
        stated = clause.WeightNote is not null;
        switch (clause.WeightNote)
        {
            case TermKind.WeightNone:
                return WeightEffect.Keeps;
            case TermKind.WeightTakes:
                return WeightEffect.Takes;
            case TermKind.WeightBoth:
                return WeightEffect.Shares;
            case TermKind.WeightOn when clause.WeightFoot is Foot on && foot.ToFoot() is Foot acting:
                return on == acting ? WeightEffect.Takes : WeightEffect.Keeps;
            default:
                return usual;
        }
    }

    /// <summary>Whether the foot that names the figure steps to its own side first: "side together side touch to the left" begins with the left.</summary>
    public static bool BeginsAside(StepDefinition form)
        => form is
        {
            NamedBy: NamedBy.FirstFoot,
            Rows: [{ Foot: RelativeFoot.Same, Action: { Kind: ActionKind.Step or ActionKind.Rock, Direction: Direction.Side } }, ..]
        };

    /// <summary>Whether a figure is a step and a turn on both feet, whose turn is named by its direction.</summary>
    public static bool IsStepAndPivot(StepDefinition definition) => definition.Rows.Count == 2 && definition.Rows[0].Action.Turn.Sign == 0
        && definition.Rows[0].Action.Effect == WeightEffect.Takes
        && definition.Rows[1].Action.Turn.Sign != 0 && definition.Rows[1].Foot == RelativeFoot.Other
            && definition.Rows[1].Action.Kind is ActionKind.Recover or ActionKind.Pivot || definition.Id == "military_turn";
}
