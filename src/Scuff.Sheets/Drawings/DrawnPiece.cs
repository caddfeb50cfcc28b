namespace Scuff.Sheets.Drawings;

/// <summary>A piece of a drawing that may stand apart from the others.</summary>
/// <param name="X">Its left edge in the drawing.</param>
/// <param name="Y">Its upper edge in the drawing.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
/// <param name="Shapes">How many shapes it has.</param>
public sealed record DrawnPiece(double X, double Y, double Width, double Height, int Shapes);
