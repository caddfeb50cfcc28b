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
}
