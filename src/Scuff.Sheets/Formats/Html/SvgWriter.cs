using System.Globalization;
using System.Text;
using Scuff.Sheets.Drawings;

namespace Scuff.Sheets.Formats.Html;

/// <summary>
/// Draws pictures as SVG inside a page. Colours are those of the page, so that a dark screen and a printer each get their own; a
/// reader who does not see the picture gets its words.
/// </summary>
internal sealed class SvgWriter
{
    private readonly StringBuilder _html = new();
    private readonly string _prefix;
    private int _pictures;

    /// <summary>Starts a page.</summary>
    /// <param name="prefix">Begins the ids of its pictures.</param>
    public SvgWriter(string prefix) => _prefix = prefix;

    /// <summary>The picture in one piece.</summary>
    /// <param name="drawing">The picture.</param>
    /// <param name="isToldBeside">Whether its words stand beside it, so that they need not be told twice.</param>
    public string Whole(Drawing drawing, bool isToldBeside = false)
    {
        _html.Clear();
        Open(0, 0, drawing.Width, drawing.Height);
        if (isToldBeside)
        {
            _html.Append(" aria-hidden=\"true\">");
        }
        else
        {
            string id = NextId();
            _html.Append(" role=\"img\" aria-labelledby=\"").Append(id).Append("\"><title id=\"").Append(id).Append("\">")
                .Append(HtmlText.Safe(drawing.Words)).Append("</title>");
        }

        Draw(drawing.Shapes.Span);
        return _html.Append("</svg>").ToString();
    }

    /// <summary>The picture in its pieces, which flow like words; in one piece when it has none.</summary>
    public string InPieces(Drawing drawing)
    {
        if (drawing.Pieces.Count == 0)
        {
            return Whole(drawing);
        }

        _html.Clear();
        _html.Append("<div class=\"strip\" role=\"img\" aria-label=\"").Append(HtmlText.Safe(drawing.Words)).Append("\">");
        int from = 0;
        foreach (DrawnPiece piece in drawing.Pieces)
        {
            Open(piece.X, piece.Y, piece.Width, piece.Height);
            _html.Append(" aria-hidden=\"true\">");
            Draw(drawing.Shapes.Span.Slice(from, piece.Shapes));
            _html.Append("</svg>");
            from += piece.Shapes;
        }

        return _html.Append("</div>").ToString();
    }

    private static string Paint(Tint tint) => tint switch
    {
        Tint.None => "n",
        Tint.Ink => "i",
        Tint.Paper => "p",
        Tint.Line => "l",
        _ => throw new ArgumentOutOfRangeException(nameof(tint)),
    };

    private string NextId() => string.Create(CultureInfo.InvariantCulture, $"{_prefix}{++_pictures}");

    // sizes in em make the pictures grow with the type, in large print and in print
    private void Open(double x, double y, double width, double height)
    {
        _html.Append("<svg viewBox=\"");
        Number(x).Append(' ');
        Number(y).Append(' ');
        Number(width).Append(' ');
        Number(height).Append("\" style=\"--w:");
        Number(width).Append(";--h:");
        Number(height).Append('"');
    }

    private void Draw(ReadOnlySpan<DrawnShape> shapes)
    {
        foreach (DrawnShape shape in shapes)
        {
            switch (shape)
            {
                case DrawnShape.Outline outline:
                    Draw(outline);
                    break;
                case DrawnShape.Label label:
                    Draw(label);
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(shapes));
            }
        }
    }

    private void Draw(DrawnShape.Outline outline)
    {
        _html.Append("<path class=\"f").Append(Paint(outline.Fill)).Append(" s").Append(Paint(outline.Stroke)).Append('"');
        if (outline.Stroke != Tint.None)
        {
            _html.Append(" stroke-width=\"");
            Number(outline.Thickness).Append('"');
            if (outline.IsDashed)
            {
                _html.Append(" stroke-dasharray=\"");
                Number(outline.Thickness * 2.5).Append(' ');
                Number(outline.Thickness * 2).Append('"');
            }
        }

        _html.Append(" d=\"");
        foreach (PenStep step in outline.Steps)
        {
            switch (step)
            {
                case PenStep.MoveTo move:
                    Point('M', move.X, move.Y);
                    break;
                case PenStep.LineTo line:
                    Point('L', line.X, line.Y);
                    break;
                case PenStep.CurveTo curve:
                    Point('C', curve.X1, curve.Y1);
                    Point(' ', curve.X2, curve.Y2);
                    Point(' ', curve.X, curve.Y);
                    break;
                case PenStep.Close:
                    _html.Append('Z');
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(outline));
            }
        }

        _html.Append("\"/>");
    }

    private void Draw(DrawnShape.Label label)
    {
        _html.Append("<text x=\"");
        Number(label.X).Append("\" y=\"");
        Number(label.Y).Append("\" font-size=\"");
        Number(label.Size).Append('"');
        if (label.Anchor != Anchor.Start)
        {
            _html.Append(" text-anchor=\"").Append(label.Anchor == Anchor.Middle ? "middle" : "end").Append('"');
        }

        if (label.IsBold)
        {
            _html.Append(" font-weight=\"bold\"");
        }

        _html.Append('>').Append(HtmlText.Safe(label.Words)).Append("</text>");
    }

    private void Point(char pen, double x, double y)
    {
        _html.Append(pen);
        Number(x).Append(' ');
        Number(y);
    }

    private StringBuilder Number(double number) => _html.Append(CultureInfo.InvariantCulture, $"{number:0.##}");
}
