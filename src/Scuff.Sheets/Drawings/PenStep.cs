namespace Scuff.Sheets.Drawings;

/// <summary>One movement of the pen, in points from the upper left corner of the drawing.</summary>
public abstract record PenStep
{
    private PenStep()
    {
    }

    /// <summary>To a point without drawing.</summary>
    public sealed record MoveTo(double X, double Y) : PenStep;

    /// <summary>In a straight line.</summary>
    public sealed record LineTo(double X, double Y) : PenStep;

    /// <summary>In a cubic Bézier curve, by way of two control points.</summary>
    public sealed record CurveTo(double X1, double Y1, double X2, double Y2, double X, double Y) : PenStep;

    /// <summary>Back to where this figure began.</summary>
    public sealed record Close : PenStep;
}
