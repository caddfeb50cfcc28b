using Scuff.Stance;

namespace Scuff.Sheets.Drawings;

/// <summary>
/// Our sole, seen from above. The right one is solid and the left one outlined; the heel is filled when it carries the weight; of a
/// touching foot only the touching part is drawn; a foot in the air is dashed.
/// </summary>
internal static class SoleDrawing
{
    /// <summary>Where its heel ends, as a part of its length behind the ball.</summary>
    public const double HeelEnd = -0.72;

    /// <summary>Where its toe ends, as a part of its length before the ball.</summary>
    public const double ToeEnd = 0.28;

    private const double Edge = 0.9;
    private const double Thin = 0.45;

    // A right sole drawn by us, its length the unit, the origin in the middle of the ball, x to the right, y forward. The heel ends
    // where Proportions.HeelToBall says; the widest place is as broad as Proportions.FootBreadth by FootLength.
    private static readonly double[] Forefoot =
    [
        -0.10, -0.30,
        -0.12, -0.18, -0.19, -0.10, -0.18, 0.04,
        -0.175, 0.14, -0.16, 0.28, -0.06, 0.28,
        0.06, 0.28, 0.18, 0.14, 0.18, 0.0,
        0.18, -0.10, 0.12, -0.20, 0.115, -0.30,
        0.05, -0.27, -0.03, -0.27, -0.10, -0.30,
    ];

    private static readonly double[] Heel =
    [
        -0.105, -0.41,
        -0.03, -0.385, 0.05, -0.385, 0.118, -0.41,
        0.135, -0.52, 0.13, -0.72, 0.005, -0.72,
        -0.12, -0.72, -0.125, -0.52, -0.105, -0.41,
    ];

    private static readonly double[] Toe =
    [
        -0.18, 0.08,
        -0.175, 0.17, -0.16, 0.28, -0.06, 0.28,
        0.04, 0.28, 0.15, 0.19, 0.172, 0.08,
        0.06, 0.12, -0.06, 0.12, -0.18, 0.08,
    ];

    private static readonly double[] Whole =
    [
        -0.10, -0.34,
        -0.12, -0.20, -0.19, -0.10, -0.18, 0.04,
        -0.175, 0.14, -0.16, 0.28, -0.06, 0.28,
        0.06, 0.28, 0.18, 0.14, 0.18, 0.0,
        0.18, -0.10, 0.12, -0.22, 0.118, -0.34,
        0.125, -0.47, 0.14, -0.72, 0.005, -0.72,
        -0.13, -0.72, -0.12, -0.47, -0.10, -0.34,
    ];

    // what is solid in a right foot that is in the air
    private static readonly double[] Core =
    [
        -0.09, 0.0,
        -0.09, 0.10, -0.06, 0.17, -0.02, 0.17,
        0.04, 0.17, 0.10, 0.08, 0.10, -0.01,
        0.10, -0.08, 0.05, -0.16, 0.0, -0.16,
        -0.05, -0.16, -0.09, -0.08, -0.09, 0.0,
    ];

    // a bar across behind the touching part, as broad as it
    private static readonly double[] Bar =
    [
        -0.16, -0.05,
        -0.16, -0.05, 0.16, -0.05, 0.16, -0.05,
        0.16, -0.05, 0.16, 0.05, 0.16, 0.05,
        0.16, 0.05, -0.16, 0.05, -0.16, 0.05,
        -0.16, 0.05, -0.16, -0.05, -0.16, -0.05,
    ];

    /// <summary>Draws a foot.</summary>
    /// <param name="sketch">Where to draw it.</param>
    /// <param name="sole">The foot.</param>
    /// <param name="x">Where its ball is.</param>
    /// <param name="y">Where its ball is.</param>
    /// <param name="degrees">Where its toe points, clockwise from up.</param>
    /// <param name="length">Its length in points.</param>
    public static void Draw(Sketch sketch, Sole sole, double x, double y, double degrees, double length)
    {
        Sketch.Frame frame = FrameOf(sole.Foot, x, y, degrees, length);
        Tint solid = sole.Foot == Foot.Right ? Tint.Ink : Tint.Paper;
        switch (sole.Contact)
        {
            case Contact.Flat:
                sketch.Figure(Forefoot, frame, solid, Tint.Ink, Edge);
                sketch.Figure(Heel, frame, sole.CarriesWeight ? Tint.Ink : Tint.Paper, Tint.Ink, Edge);
                return;
            case Contact.Air:
                sketch.Figure(Whole, frame, Tint.Paper, Tint.Ink, Edge, isDashed: true);
                if (sole.Foot == Foot.Right)
                {
                    sketch.Figure(Core, frame, Tint.Ink, Tint.None, 0);
                }

                return;
            case Contact.Ball:
                sketch.Figure(Forefoot, frame, solid, Tint.Ink, Edge);
                break;
            case Contact.Toe:
                sketch.Figure(Toe, frame, solid, Tint.Ink, Edge);
                break;
            case Contact.Heel:
                sketch.Figure(Heel, frame, solid, Tint.Ink, Edge);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(sole));
        }

        if (sole.CarriesWeight)
        {
            double behind = sole.Contact switch
            {
                Contact.Ball => -0.45,
                Contact.Toe => -0.08,
                _ => -0.24,
            };
            (double barX, double barY) = frame.Of(0, behind);
            sketch.Figure(Bar, FrameOf(sole.Foot, barX, barY, degrees, length), Tint.Ink, Tint.Ink, Edge);
        }
    }

    /// <summary>Draws where a foot was, as a thin outline.</summary>
    public static void DrawGhost(Sketch sketch, Foot foot, double x, double y, double degrees, double length)
        => sketch.Figure(Whole, FrameOf(foot, x, y, degrees, length), Tint.None, Tint.Line, Thin);

    /// <summary>The corners that hold the whole sole, wherever it points; half of its edge lies outside.</summary>
    public static (double Left, double Top, double Right, double Bottom) BoxOf(Foot foot, double x, double y, double degrees, double length)
    {
        Sketch.Frame frame = FrameOf(foot, x, y, degrees, length);
        (double left, double top, double right, double bottom) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        for (int i = 0; i < Whole.Length; i += 2)
        {
            (double px, double py) = frame.Of(Whole[i], Whole[i + 1]);
            left = Math.Min(left, px);
            right = Math.Max(right, px);
            top = Math.Min(top, py);
            bottom = Math.Max(bottom, py);
        }

        return (left, top, right, bottom);
    }

    private static Sketch.Frame FrameOf(Foot foot, double x, double y, double degrees, double length)
        => new(x, y, degrees, length, foot == Foot.Left);
}
