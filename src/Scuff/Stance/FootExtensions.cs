namespace Scuff.Stance;

/// <summary>Small conversions between feet and weight.</summary>
public static class FootExtensions
{
    /// <summary>The other foot.</summary>
    public static Foot Other(this Foot foot) => foot == Foot.Left ? Foot.Right : Foot.Left;

    /// <summary>The foot as an acting foot.</summary>
    public static ActingFoot ToActingFoot(this Foot foot) => foot == Foot.Left ? ActingFoot.Left : ActingFoot.Right;

    /// <summary>The single foot that acts, or null for none and both.</summary>
    public static Foot? ToFoot(this ActingFoot foot) => foot switch
    {
        ActingFoot.Left => Foot.Left,
        ActingFoot.Right => Foot.Right,
        _ => null,
    };

    /// <summary>All the weight on this foot.</summary>
    public static Weight ToWeight(this Foot foot) => foot == Foot.Left ? Weight.Left : Weight.Right;

    /// <summary>The foot that is free under this weight, or null when it is shared or unknown.</summary>
    public static Foot? FreeFoot(this Weight weight) => weight switch
    {
        Weight.Left => Foot.Right,
        Weight.Right => Foot.Left,
        _ => null,
    };

    /// <summary>The foot that carries all the weight, or null when it is shared or unknown.</summary>
    public static Foot? StandingFoot(this Weight weight) => weight switch
    {
        Weight.Left => Foot.Left,
        Weight.Right => Foot.Right,
        _ => null,
    };

    /// <summary>Left and right exchanged.</summary>
    public static ActingFoot Mirrored(this ActingFoot foot) => foot switch
    {
        ActingFoot.Left => ActingFoot.Right,
        ActingFoot.Right => ActingFoot.Left,
        _ => foot,
    };

    /// <summary>Left and right exchanged.</summary>
    public static Weight Mirrored(this Weight weight) => weight switch
    {
        Weight.Left => Weight.Right,
        Weight.Right => Weight.Left,
        _ => weight,
    };
}
