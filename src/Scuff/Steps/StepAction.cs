using Scuff.Stance;

namespace Scuff.Steps;

/// <summary>One primitive action by a known foot: the atom that is danced.</summary>
/// <param name="Kind">Which primitive.</param>
/// <param name="Foot">The foot that acts.</param>
/// <param name="Direction">Where it goes, relative to the body after <paramref name="Turn"/>.</param>
/// <param name="Contact">The part of the acting foot that meets the floor.</param>
/// <param name="Effect">What happens to the weight.</param>
/// <param name="Turn">Turn of the body made with the action.</param>
/// <param name="Size">How far it goes compared with the usual.</param>
public sealed record StepAction(
    ActionKind Kind,
    ActingFoot Foot,
    Direction Direction,
    Contact Contact,
    WeightEffect Effect,
    Turn Turn = default,
    StepSize Size = StepSize.Usual)
{
    /// <summary>Nothing moves.</summary>
    public static StepAction Hold { get; } = new(ActionKind.Hold, ActingFoot.None, Direction.InPlace, Contact.Air, WeightEffect.Keeps);

    /// <summary>Words that could not be read.</summary>
    public static StepAction Unknown { get; } = new(ActionKind.Unknown, ActingFoot.None, Direction.Unstated, Contact.Air, WeightEffect.Unknown);

    /// <summary>What the primitive is.</summary>
    public ActionTraits Traits => ActionTraits.Of(Kind);

    /// <summary>Where the weight is after this action when it was at <paramref name="before"/>.</summary>
    public Weight WeightAfter(Weight before) => Effect switch
    {
        // who lifts or touches with one of two feet that share the weight stands on the other
        WeightEffect.Keeps when before == Weight.Shared && Traits.FootRule == FootRule.Free && Foot is ActingFoot.Left or ActingFoot.Right
            => Foot == ActingFoot.Left ? Weight.Right : Weight.Left,
        WeightEffect.Keeps => before,
        WeightEffect.Shares => Weight.Shared,
        WeightEffect.ToLeft => Weight.Left,
        WeightEffect.ToRight => Weight.Right,
        WeightEffect.Takes when Foot is ActingFoot.Left => Weight.Left,
        WeightEffect.Takes when Foot is ActingFoot.Right => Weight.Right,
        WeightEffect.Takes when Foot is ActingFoot.Both => Weight.Shared,
        _ => Weight.Unknown,
    };

    /// <summary>The same action in the mirror: left and right exchanged.</summary>
    public StepAction Mirrored() => this with
    {
        Foot = Foot.Mirrored(),
        Direction = Direction.Mirrored(Foot),
        Turn = -Turn,
        Effect = Effect switch
        {
            WeightEffect.ToLeft => WeightEffect.ToRight,
            WeightEffect.ToRight => WeightEffect.ToLeft,
            _ => Effect,
        },
    };

    /// <summary>
    /// The foot in front where a jump lands on both feet crossed; null for what does not, or leaves open which.
    /// </summary>
    public Foot? FootInFront => (Kind, Foot, Direction) switch
    {
        (ActionKind.Jump, ActingFoot.Both, Direction.CrossFront) => Stance.Foot.Right,
        (ActionKind.Jump, ActingFoot.Both, Direction.CrossBehind) => Stance.Foot.Left,
        _ => null,
    };
}
