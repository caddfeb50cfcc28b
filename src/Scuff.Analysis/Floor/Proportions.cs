namespace Scuff.Analysis.Floor;

/// <summary>
/// Lengths as parts of the body height, unless another unit is named. A design value is our choice to start from, inside the
/// range that teachers' advice gives ("small steps, under the body").
/// </summary>
public static class Proportions
{
    /// <summary>Length of a foot. Source: foot length to stature ratio, thesis, https://ttu-ir.tdl.org/items/89c3a984-f695-46dd-8dbb-45c1b7f0b741.</summary>
    public const double FootLength = 0.15;

    /// <summary>
    /// Breadth of a foot. Source: British adults, dimension 31,
    /// http://personal.cityu.edu.hk/meachan/online%20anthropometry/Chapter2/Ch2-31.htm.
    /// </summary>
    public const double FootBreadth = 0.054;

    /// <summary>From the heel to the ball, as a part of the foot's length. From memory (0.70 to 0.74 are quoted).</summary>
    public const double HeelToBall = 0.72;

    /// <summary>
    /// Leg from hip joint to floor. Source: Drillis and Contini 1966, Body segment parameters (0.530 of the height), as reprinted in
    /// textbooks of biomechanics; from memory.
    /// </summary>
    public const double LegLength = 0.53;

    /// <summary>
    /// How far a foot gets from the point below the hips when the hips sink by 15 % of the leg:
    /// 0.53 × √(1 − 0.85²). The 15 % are a design value.
    /// </summary>
    public const double Reach = 0.279;

    /// <summary>Feet together: from centre to centre. Inside the normal standing width of 0.05 to 0.10 (from memory).</summary>
    public const double Stance = 0.08;

    /// <summary>A walk, the first step of a shuffle. Design value inside 0.25 to 0.30.</summary>
    public const double Walk = 0.275;

    /// <summary>A step between two counts. Design value inside 0.10 to 0.15.</summary>
    public const double OffBeat = 0.125;

    /// <summary>A step to the side, from foot to foot. Design value inside 0.20 to 0.25.</summary>
    public const double Side = 0.225;

    /// <summary>A long step. Design value inside 0.35 to 0.40.</summary>
    public const double Long = 0.375;

    /// <summary>Feet apart: from centre to centre. Design value inside 0.20 to 0.25.</summary>
    public const double Apart = 0.225;

    /// <summary>A rock or a press: it comes back, so it goes less far than a walk. Design value.</summary>
    public const double Rock = 0.20;

    /// <summary>A touch, heel or brush away from the other foot. Design value.</summary>
    public const double Touch = 0.18;

    /// <summary>A point, kick or sweep with the leg stretched. Design value.</summary>
    public const double Stretched = 0.25;

    /// <summary>How far in front of or behind the standing foot a crossing foot lands, ball to ball; a foot's length keeps the toes free. Design value.</summary>
    public const double CrossAlong = 0.13;

    /// <summary>How far past the standing foot a crossing foot lands. Design value, above the foot's breadth.</summary>
    public const double CrossPast = 0.07;

    /// <summary>How far along a locked foot lands: tighter than a cross. Design value.</summary>
    public const double LockAlong = 0.08;

    /// <summary>How far past the standing foot a locked foot lands. Design value, above the foot's breadth.</summary>
    public const double LockPast = 0.06;

    /// <summary>A hop or a jump along the floor. Design value.</summary>
    public const double Hop = 0.12;

    /// <summary>A scoot: "a few centimetres". Design value.</summary>
    public const double Scoot = 0.04;

    /// <summary>A foot in passing lifts this high. Design value.</summary>
    public const double Lift = 0.025;

    /// <summary>A jumping or hopping foot lifts this high. Design value.</summary>
    public const double JumpLift = 0.05;

    /// <summary>Height of a kicking foot: low, as on a full floor. Design value.</summary>
    public const double KickHeight = 0.12;

    /// <summary>Height of a flicked or hooked foot, about mid-shin. Design value.</summary>
    public const double HookHeight = 0.18;

    /// <summary>Height of the foot below a hitched knee. Design value.</summary>
    public const double HitchHeight = 0.24;

    /// <summary>Height of a foot that is only off the floor. Design value.</summary>
    public const double LowHeight = 0.05;

    /// <summary>Small and large steps that have no length of their own, as a multiple of the usual one. Design values.</summary>
    public const double SmallFactor = 0.6;

    /// <summary>See <see cref="SmallFactor"/>.</summary>
    public const double LargeFactor = 1.4;

    /// <summary>Toes point a little outwards, in degrees. From memory (5 to 10 are normal in walking).</summary>
    public const double ToeOutDegrees = 6;

    /// <summary>How far a heel or toe swivels, fans or splits, in degrees. Design value: easy on knees.</summary>
    public const double SwivelDegrees = 30;

    /// <summary>How much of the hips' place the unloaded foot draws to itself. Design value.</summary>
    public const double FreeShare = 0.15;
}
