using Scuff.Sheets.Drawings;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Puts the pieces of a drawing into rows.</summary>
internal static class PieceRows
{
    private const double Gap = 4;

    // Widths are rounded to hundredths of a point.
    private const double Slack = 0.1;

    /// <summary>
    /// The drawing with its pieces in as few rows of at most the given width as will do, the rows about equally long; as it is when
    /// it fits or has no pieces.
    /// </summary>
    public static Drawing Fit(Drawing drawing, double width)
    {
        if (drawing.Width <= width || drawing.Pieces.Count < 2)
        {
            return drawing;
        }

        // the narrowest width that needs no more rows is the sum of some pieces in a row
        int least = RowsAt(drawing, width);
        double narrowest = width;
        for (int from = 0; from < drawing.Pieces.Count; from++)
        {
            double sum = 0;
            for (int upto = from; upto < drawing.Pieces.Count && sum < narrowest; upto++)
            {
                sum += drawing.Pieces[upto].Width;
                if (sum < narrowest && RowsAt(drawing, sum) == least)
                {
                    narrowest = sum;
                }
            }
        }

        return InRows(drawing, narrowest);
    }

    private static int RowsAt(Drawing drawing, double width)
    {
        int rows = 1;
        double x = 0;
        foreach (DrawnPiece piece in drawing.Pieces)
        {
            if (piece.Width > width + Slack)
            {
                return int.MaxValue;
            }

            if (x > 0 && x + piece.Width > width + Slack)
            {
                rows++;
                x = 0;
            }

            x += piece.Width;
        }

        return rows;
    }

    private static Drawing InRows(Drawing drawing, double width)
    {
        List<DrawnShape> shapes = [];
        int next = 0;
        double x = 0;
        double top = 0;
        double bottom = 0;
        double widest = 0;
        foreach (DrawnPiece piece in drawing.Pieces)
        {
            if (x > 0 && x + piece.Width > width + Slack)
            {
                x = 0;
                top = bottom + Gap;
            }

            (double dx, double dy) = (x - piece.X, top - piece.Y);
            shapes.AddRange(drawing.Shapes.Skip(next).Take(piece.Shapes).Select(s => Moved(s, dx, dy)));
            next += piece.Shapes;
            x += piece.Width;
            widest = Math.Max(widest, x);
            bottom = Math.Max(bottom, top + piece.Height);
        }

        return new Drawing(widest, bottom, shapes.ToValueList(), drawing.Words);
    }

    private static DrawnShape Moved(DrawnShape shape, double dx, double dy) => shape switch
    {
        DrawnShape.Label label => label with { X = label.X + dx, Y = label.Y + dy },
        DrawnShape.Outline outline => outline with { Steps = outline.Steps.Select(s => Moved(s, dx, dy)).ToValueList() },
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "No such shape."),
    };

    private static PenStep Moved(PenStep step, double dx, double dy) => step switch
    {
        PenStep.MoveTo move => new PenStep.MoveTo(move.X + dx, move.Y + dy),
        PenStep.LineTo line => new PenStep.LineTo(line.X + dx, line.Y + dy),
        PenStep.CurveTo c => new PenStep.CurveTo(c.X1 + dx, c.Y1 + dy, c.X2 + dx, c.Y2 + dy, c.X + dx, c.Y + dy),
        _ => step,
    };
}
