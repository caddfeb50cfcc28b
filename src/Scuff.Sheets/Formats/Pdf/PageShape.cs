namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Paper, margins and columns, in points.</summary>
/// <param name="Width">Width of the paper.</param>
/// <param name="Height">Height of the paper.</param>
/// <param name="Columns">How many columns there are.</param>
internal sealed record PageShape(double Width, double Height, int Columns)
{
    /// <summary>White at the sides: what printers leave, and room for a thumb and a hole.</summary>
    public const double Margin = 42;

    /// <summary>White above and below.</summary>
    public const double Top = 34;

    /// <summary>Room for the line at the foot of a page, above the lower margin.</summary>
    public const double Foot = 16;

    /// <summary>Between two columns.</summary>
    public const double Gutter = 22;

    /// <summary>The lowest point of the content.</summary>
    public double Bottom => Height - Top - Foot;

    /// <summary>Width of the content.</summary>
    public double Breadth => Width - (2 * Margin);

    /// <summary>Height of a column.</summary>
    public double Depth => Bottom - Top;

    /// <summary>Width of a column.</summary>
    public double ColumnWidth => (Breadth - ((Columns - 1) * Gutter)) / Columns;

    /// <summary>The shape of a sheet's paper.</summary>
    public static PageShape Of(Paper paper, int columns) => paper == Paper.Letter ? new(612, 792, columns) : new(595.28, 841.89, columns);

    /// <summary>Left edge of a column.</summary>
    public double ColumnX(int column) => Margin + (column * (ColumnWidth + Gutter));
}
