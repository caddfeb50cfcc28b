namespace Scuff.Sheets.Drawings;

/// <summary>A small picture, drawn alike in every format. Lengths are points (1/72 inch), x to the right, y down. Equal by value.</summary>
/// <param name="Width">Width of the whole picture.</param>
/// <param name="Height">Height of the whole picture.</param>
/// <param name="Shapes">What is drawn, back to front.</param>
/// <param name="Words">The same told in words, for readers who do not see it.</param>
public sealed record Drawing(double Width, double Height, ValueList<DrawnShape> Shapes, string Words)
{
    /// <summary>
    /// The pieces that may stand in rows of another length where a page is narrow, in reading order; none when the picture is one.
    /// Every shape lies within its piece, and the shapes follow each other piece by piece.
    /// </summary>
    public ValueList<DrawnPiece> Pieces { get; init; }
}
