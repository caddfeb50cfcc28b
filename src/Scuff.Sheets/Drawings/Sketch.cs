namespace Scuff.Sheets.Drawings;

/// <summary>A drawing in the making. Places are rounded to hundredths of a point, so that the same bytes come out on every machine.</summary>
internal sealed class Sketch
{
    private readonly List<DrawnShape> _shapes = [];

    /// <summary>How many shapes there are so far.</summary>
    public int Count => _shapes.Count;

    /// <summary>What has been drawn.</summary>
    public ValueList<DrawnShape> Shapes => _shapes.ToValueList();

    /// <summary>Rounds a length as all lengths of a drawing are rounded.</summary>
    public static double Round(double length)
    {
        double rounded = Math.Round(length, 2, MidpointRounding.AwayFromZero);

        // a negative zero would be printed with its sign
        return rounded == 0 ? 0 : rounded;
    }

    /// <summary>Draws a figure whose points lie in another frame.</summary>
    /// <param name="figure">A point to begin at, then three points for every curve.</param>
    /// <param name="frame">The frame of the points.</param>
    /// <param name="fill">What the area is filled with.</param>
    /// <param name="stroke">What the edge is drawn with.</param>
    /// <param name="thickness">Thickness of the edge.</param>
    /// <param name="isDashed">Whether the edge is dashed.</param>
    public void Figure(ReadOnlySpan<double> figure, Frame frame, Tint fill, Tint stroke, double thickness, bool isDashed = false)
    {
        List<PenStep> steps = [Move(frame.Of(figure[0], figure[1]))];
        for (int i = 2; i + 5 < figure.Length; i += 6)
        {
            (double x1, double y1) = frame.Of(figure[i], figure[i + 1]);
            (double x2, double y2) = frame.Of(figure[i + 2], figure[i + 3]);
            (double x, double y) = frame.Of(figure[i + 4], figure[i + 5]);
            steps.Add(new PenStep.CurveTo(Round(x1), Round(y1), Round(x2), Round(y2), Round(x), Round(y)));
        }

        steps.Add(new PenStep.Close());
        _shapes.Add(new DrawnShape.Outline(steps.ToValueList(), fill, stroke, thickness, isDashed));
    }

    /// <summary>Draws a line through points.</summary>
    public void Line(ReadOnlySpan<(double X, double Y)> points, Tint stroke, double thickness)
    {
        List<PenStep> steps = [Move(points[0])];
        foreach ((double x, double y) in points[1..])
        {
            steps.Add(new PenStep.LineTo(Round(x), Round(y)));
        }

        _shapes.Add(new DrawnShape.Outline(steps.ToValueList(), Tint.None, stroke, thickness));
    }

    /// <summary>Draws an area with straight edges.</summary>
    public void Area(ReadOnlySpan<(double X, double Y)> corners, Tint fill, Tint stroke, double thickness)
    {
        List<PenStep> steps = [Move(corners[0])];
        foreach ((double x, double y) in corners[1..])
        {
            steps.Add(new PenStep.LineTo(Round(x), Round(y)));
        }

        steps.Add(new PenStep.Close());
        _shapes.Add(new DrawnShape.Outline(steps.ToValueList(), fill, stroke, thickness));
    }

    /// <summary>Draws an arc of a circle, clockwise for a positive sweep; angles in degrees clockwise from up.</summary>
    public void Arc(double x, double y, double radius, double from, double sweep, Tint stroke, double thickness)
    {
        int pieces = Math.Max(1, (int)Math.Ceiling(Math.Abs(sweep) / 60));
        double part = sweep / pieces * Math.PI / 180;

        // the usual distance of control points for an arc, which leaves the circle by less than a thousandth of its radius
        double handle = radius * 4 / 3 * Math.Tan(part / 4);
        double angle = from * Math.PI / 180;
        List<PenStep> steps = [Move(On(angle))];
        for (int i = 0; i < pieces; i++)
        {
            double next = angle + part;
            (double x0, double y0) = On(angle);
            (double x3, double y3) = On(next);
            steps.Add(new PenStep.CurveTo(
                Round(x0 + (handle * Math.Cos(angle))),
                Round(y0 + (handle * Math.Sin(angle))),
                Round(x3 - (handle * Math.Cos(next))),
                Round(y3 - (handle * Math.Sin(next))),
                Round(x3),
                Round(y3)));
            angle = next;
        }

        _shapes.Add(new DrawnShape.Outline(steps.ToValueList(), Tint.None, stroke, thickness));

        (double X, double Y) On(double at) => (x + (radius * Math.Sin(at)), y - (radius * Math.Cos(at)));
    }

    /// <summary>Draws the head of an arrow with its tip at a point.</summary>
    /// <param name="x">The tip.</param>
    /// <param name="y">The tip.</param>
    /// <param name="dx">The way it points.</param>
    /// <param name="dy">The way it points.</param>
    /// <param name="size">Its length.</param>
    public void Head(double x, double y, double dx, double dy, double size)
    {
        double length = Math.Sqrt((dx * dx) + (dy * dy));
        (double ux, double uy) = (dx / length * size, dy / length * size);
        Area(
            [(x, y), (x - ux - (uy * 0.45), y - uy + (ux * 0.45)), (x - ux + (uy * 0.45), y - uy - (ux * 0.45))],
            Tint.Ink,
            Tint.None,
            0);
    }

    /// <summary>Writes a word.</summary>
    public void Word(double x, double y, string words, double size, Anchor anchor = Anchor.Middle, bool isBold = false)
        => _shapes.Add(new DrawnShape.Label(Round(x), Round(y), words, size, anchor, isBold));

    private static PenStep.MoveTo Move((double X, double Y) to) => new(Round(to.X), Round(to.Y));

    /// <summary>Where the points of a figure come to lie: x to the right and y forward, turned clockwise, mirrored for a left foot.</summary>
    /// <param name="X">Where its origin lies.</param>
    /// <param name="Y">Where its origin lies.</param>
    /// <param name="Degrees">Turned clockwise by.</param>
    /// <param name="Scale">Points a unit.</param>
    /// <param name="IsMirrored">Whether right and left are exchanged.</param>
    internal readonly record struct Frame(double X, double Y, double Degrees, double Scale, bool IsMirrored)
    {
        /// <summary>A point of the figure on the drawing.</summary>
        public (double X, double Y) Of(double right, double forward)
        {
            (double sin, double cos) = Math.SinCos(Degrees * Math.PI / 180);
            double side = (IsMirrored ? -right : right) * Scale;
            double ahead = forward * Scale;
            return (X + (side * cos) + (ahead * sin), Y + (side * sin) - (ahead * cos));
        }
    }
}
