namespace Scuff.Stance;

/// <summary>Conversions of directions.</summary>
public static class DirectionExtensions
{
    /// <summary>The direction in the mirror: only those bound to a side of the room change.</summary>
    public static Direction Mirrored(this Direction direction) => direction switch
    {
        Direction.Left => Direction.Right,
        Direction.Right => Direction.Left,
        Direction.Clockwise => Direction.Anticlockwise,
        Direction.Anticlockwise => Direction.Clockwise,
        _ => direction,
    };

    /// <summary>
    /// The direction as seen in a mirror, for the foot that goes there. Both feet at once have no side of their own: with them the mirror changes which
    /// lands in front.
    /// </summary>
    public static Direction Mirrored(this Direction direction, ActingFoot foot) => (foot, direction) switch
    {
        (ActingFoot.Both, Direction.CrossFront) => Direction.CrossBehind,
        (ActingFoot.Both, Direction.CrossBehind) => Direction.CrossFront,
        _ => direction.Mirrored(),
    };
}
