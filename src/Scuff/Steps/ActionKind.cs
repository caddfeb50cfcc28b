namespace Scuff.Steps;

/// <summary>
/// The primitive actions: the only moves known to code. Everything else is data built from them.
/// What each means for feet and weight is in <see cref="ActionTraits"/>.
/// </summary>
public enum ActionKind
{
    /// <summary>Words that could not be read; weight and facing are unknown afterwards.</summary>
    Unknown,

    /// <summary>A foot is placed and takes the weight.</summary>
    Step,

    /// <summary>A step with weight that is going to be reversed.</summary>
    Rock,

    /// <summary>Weight goes back to a foot that has not left its place.</summary>
    Recover,

    /// <summary>The free foot meets the floor without weight, near the other.</summary>
    Touch,

    /// <summary>A short sounding touch; danced as a touch.</summary>
    Tap,

    /// <summary>The toe of the extended free leg reaches away and meets the floor.</summary>
    Point,

    /// <summary>The heel of the free foot meets the floor.</summary>
    Dig,

    /// <summary>The free leg kicks.</summary>
    Kick,

    /// <summary>The free lower leg kicks back or sideways from the knee.</summary>
    Flick,

    /// <summary>The free lower leg crosses the standing shin.</summary>
    Hook,

    /// <summary>The free knee is lifted.</summary>
    Hitch,

    /// <summary>The free heel strikes the floor in passing.</summary>
    Scuff,

    /// <summary>The free ball strikes the floor in passing.</summary>
    Brush,

    /// <summary>A foot strikes the floor flat, with or without weight as the effect says.</summary>
    Stomp,

    /// <summary>The lifted part of a foot is lowered and takes the weight (second count of a strut).</summary>
    Drop,

    /// <summary>The free foot is drawn along the floor.</summary>
    Drag,

    /// <summary>The free foot slides in along the floor.</summary>
    Slide,

    /// <summary>The ball of the free foot presses into the floor without a full weight change.</summary>
    Press,

    /// <summary>A long step onto a bent knee.</summary>
    Lunge,

    /// <summary>Take off and land on the same foot.</summary>
    Hop,

    /// <summary>The standing foot skids a few centimetres.</summary>
    Scoot,

    /// <summary>From one foot to the other with both in the air between.</summary>
    Leap,

    /// <summary>Both feet leave and meet the floor.</summary>
    Jump,

    /// <summary>A turn on the ball of the foot, with or without a change of weight.</summary>
    Pivot,

    /// <summary>Crossed feet uncross by a turn on both balls.</summary>
    Unwind,

    /// <summary>The free toe draws a curve on the floor.</summary>
    Sweep,

    /// <summary>The free leg draws a curve in the air.</summary>
    Ronde,

    /// <summary>Weight on a heel whose toe fans.</summary>
    Grind,

    /// <summary>A toe fans on its heel.</summary>
    FanToe,

    /// <summary>A heel fans on its ball.</summary>
    FanHeel,

    /// <summary>Both heels spread or close.</summary>
    SplitHeels,

    /// <summary>Both toes spread or close.</summary>
    SplitToes,

    /// <summary>Heels and toes return to the middle.</summary>
    Swivel,

    /// <summary>Both heels swivel.</summary>
    SwivelHeels,

    /// <summary>Both toes swivel.</summary>
    SwivelToes,

    /// <summary>The heel of the standing foot swivels.</summary>
    SwivelHeel,

    /// <summary>The toe of the standing foot swivels.</summary>
    SwivelToe,

    /// <summary>One toe and the other heel swivel opposite ways.</summary>
    Swivet,

    /// <summary>One toe and the other heel swivel to the same side, making a V.</summary>
    Applejack,

    /// <summary>Heels swing while the hips counter-turn.</summary>
    Twist,

    /// <summary>Heels rise and drop.</summary>
    Bounce,

    /// <summary>The hips bump.</summary>
    Bump,

    /// <summary>Hips and weight go to one foot, feet apart.</summary>
    Sway,

    /// <summary>The hips roll.</summary>
    RollHips,

    /// <summary>The body rolls.</summary>
    RollBody,

    /// <summary>A knee rolls.</summary>
    RollKnee,

    /// <summary>A knee pops.</summary>
    PopKnee,

    /// <summary>A shoulder pops.</summary>
    PopShoulder,

    /// <summary>The shoulders shimmy.</summary>
    Shimmy,

    /// <summary>A clap of the hands.</summary>
    Clap,

    /// <summary>A snap of the fingers.</summary>
    Snap,

    /// <summary>A hand slaps boot, knee or hip.</summary>
    Slap,

    /// <summary>The standing knee bends.</summary>
    Dip,

    /// <summary>The heels click together.</summary>
    Click,

    /// <summary>Nothing moves.</summary>
    Hold,

    /// <summary>The body turns in place; the weight stays where it is.</summary>
    Turn,

    /// <summary>Weight goes to a foot that is already in its place.</summary>
    Shift,

    /// <summary>Arms, head or hands only.</summary>
    Arms,
}
