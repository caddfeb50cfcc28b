using Scuff.Sheets.Drawings;

namespace Tests.Sheets;

/// <summary>What shapes take up: control points for outlines, a generous guess of its breadth for a word.</summary>
internal readonly record struct DrawnBox(double Left, double Top, double Right, double Bottom)
{
    public static DrawnBox Of(DrawnShape shape) => Of([shape]);

    public static DrawnBox Of(IEnumerable<DrawnShape> shapes)
    {
        (double X, double Y)[] points = [.. shapes.SelectMany(PointsOf)];
        Assert.NotEmpty(points);
        return new DrawnBox(points.Min(p => p.X), points.Min(p => p.Y), points.Max(p => p.X), points.Max(p => p.Y));
    }

    public bool Overlaps(DrawnBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool IsInside(Drawing drawing) => Left >= -0.01 && Top >= -0.01 && Right <= drawing.Width + 0.01 && Bottom <= drawing.Height + 0.01;

    private static IEnumerable<(double X, double Y)> PointsOf(DrawnShape shape)
    {
        switch (shape)
        {
            case DrawnShape.Outline outline:
                double half = outline.Stroke == Tint.None ? 0 : outline.Thickness / 2;
                return outline.Steps.SelectMany(PointsOf).SelectMany(p => new[] { (p.X - half, p.Y - half), (p.X + half, p.Y + half) });
            case DrawnShape.Label label:
                // measured in bold, at most: a digit is 0.66 of the size broad, an & 0.73, a fraction 0.85, a colon 0.28; all are 0.71 high
                double breadth = label.Size * label.Words.Sum(c => c switch
                {
                    '¼' or '½' or '¾' => 0.85,
                    '&' => 0.73,
                    ':' => 0.28,
                    _ => 0.66,
                });
                double left = label.Anchor switch
                {
                    Anchor.Start => label.X,
                    Anchor.Middle => label.X - (breadth / 2),
                    _ => label.X - breadth,
                };
                return [(left, label.Y - (0.71 * label.Size)), (left + breadth, label.Y)];
            default:
                throw new ArgumentOutOfRangeException(nameof(shape));
        }
    }

    private static IEnumerable<(double X, double Y)> PointsOf(PenStep step) => step switch
    {
        PenStep.MoveTo move => [(move.X, move.Y)],
        PenStep.LineTo line => [(line.X, line.Y)],
        PenStep.CurveTo curve => [(curve.X1, curve.Y1), (curve.X2, curve.Y2), (curve.X, curve.Y)],
        PenStep.Close => [],
        _ => throw new ArgumentOutOfRangeException(nameof(step)),
    };
}
