namespace Scuff.Analysis.Floor;

/// <summary>A point or a way on the floor in metres, seen from above: x to the right and y forward for a dancer who faces 12:00.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Forward.</param>
public readonly record struct FloorPoint(double X, double Y)
{
    /// <summary>Distance from the origin.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    public static FloorPoint operator +(FloorPoint a, FloorPoint b) => new(a.X + b.X, a.Y + b.Y);

    public static FloorPoint operator -(FloorPoint a, FloorPoint b) => new(a.X - b.X, a.Y - b.Y);

    public static FloorPoint operator *(FloorPoint a, double factor) => new(a.X * factor, a.Y * factor);

    /// <summary>The point on the way from one to the other.</summary>
    public static FloorPoint Between(FloorPoint from, FloorPoint to, double share) => from + ((to - from) * share);

    /// <summary>Turned about the origin, clockwise seen from above.</summary>
    public FloorPoint Turned(double degrees)
    {
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        return new FloorPoint((X * cos) + (Y * sin), (Y * cos) - (X * sin));
    }
}
