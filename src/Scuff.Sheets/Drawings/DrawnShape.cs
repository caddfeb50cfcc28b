namespace Scuff.Sheets.Drawings;

/// <summary>One shape of a <see cref="Drawing"/>: a path or a word.</summary>
public abstract record DrawnShape
{
    private DrawnShape()
    {
    }

    /// <summary>A line or an area.</summary>
    /// <param name="Steps">How the pen goes; the first is a move.</param>
    /// <param name="Fill">What the area is filled with, by the nonzero rule.</param>
    /// <param name="Stroke">What the edge is drawn with.</param>
    /// <param name="Thickness">Thickness of the edge in points; its ends and corners are round.</param>
    /// <param name="IsDashed">Whether the edge is dashed: dashes of two and a half thicknesses, gaps of two.</param>
    public sealed record Outline(ValueList<PenStep> Steps, Tint Fill, Tint Stroke, double Thickness = 1, bool IsDashed = false) : DrawnShape;

    /// <summary>A word.</summary>
    /// <param name="X">Where its anchor is.</param>
    /// <param name="Y">Its baseline.</param>
    /// <param name="Words">The word.</param>
    /// <param name="Size">Size of the type in points.</param>
    /// <param name="Anchor">Which end of the word is at <paramref name="X"/>.</param>
    /// <param name="IsBold">Whether it is bold.</param>
    public sealed record Label(double X, double Y, string Words, double Size, Anchor Anchor = Anchor.Middle, bool IsBold = false) : DrawnShape;
}
