using System.Globalization;
using Scuff.Sheets.Drawings;

namespace Scuff.Sheets.Formats.Docx;

/// <summary>
/// Draws pictures as shapes of the word processor: sharp at any size, and each line can be taken and changed. Who does not see them,
/// and whatever knows no shapes, gets the picture's words.
/// </summary>
/// <param name="xml">Where they go.</param>
internal sealed class DocxPicture(DocxXml xml)
{
    private const string GroupUri = "http://schemas.microsoft.com/office/word/2010/wordprocessingGroup";

    // English metric units in a point. Source: ECMA-376 part 1, 20.1.2.1.
    private const double Point = 12_700;

    // An exact line is set with four fifths of it above the baseline.
    private const double Leading = 1.2;
    private const double AboveBaseline = 0.8 * Leading;

    // Wide enough for a letter of any face; the box is not seen.
    private const double WidestLetter = 1.1;

    private int _id;

    /// <summary>A picture among the words.</summary>
    public void Inline(Drawing drawing, double scale, bool isToldBeside = false)
    {
        Begin();
        xml.Open("wp:inline", ("distT", 0), ("distB", 0), ("distL", 0), ("distR", 0));
        Extent(drawing, scale);
        Group(drawing, scale, isToldBeside);
        xml.Close();
        End(drawing, isToldBeside);
    }

    /// <summary>A picture in the upper right corner, with the words beside it.</summary>
    /// <param name="drawing">The picture.</param>
    /// <param name="scale">Its scale.</param>
    /// <param name="right">Where its right edge is, in points from the left edge of the paper.</param>
    /// <param name="top">Where its upper edge is, in points from the upper edge of the paper.</param>
    public void Corner(Drawing drawing, double scale, double right, double top)
    {
        Begin();
        xml.Open(
            "wp:anchor",
            ("distT", 0),
            ("distB", 0),
            ("distL", Units(14)),
            ("distR", 0),
            ("simplePos", 0),
            ("relativeHeight", 1),
            ("behindDoc", 0),
            ("locked", 0),
            ("layoutInCell", 1),
            ("allowOverlap", 0));
        xml.Empty("wp:simplePos", ("x", 0), ("y", 0));

        // in lengths: aligned by a word, LibreOffice 7.4 aligns each label of the picture by itself
        Place("wp:positionH", Units(right - (drawing.Width * scale)));
        Place("wp:positionV", Units(top));
        Extent(drawing, scale);
        xml.Empty("wp:wrapSquare", ("wrapText", "left"));
        Group(drawing, scale, isToldBeside: false);
        xml.Close();
        End(drawing, isToldBeside: false);

        void Place(string direction, long offset)
            => xml.Open(direction, ("relativeFrom", "page")).Words("wp:posOffset", offset.ToString(CultureInfo.InvariantCulture)).Close();
    }

    private static long Units(double points) => (long)Math.Round(points * Point, MidpointRounding.AwayFromZero);

    private static string Colour(Tint tint) => tint == Tint.Paper ? "FFFFFF" : Look.Light.Ink[1..];

    private void Begin() => xml.Open("w:r").Open("mc:AlternateContent").Open("mc:Choice", ("Requires", "wpg")).Open("w:drawing");

    private void End(Drawing drawing, bool isToldBeside)
    {
        xml.Close().Close();
        xml.Open("mc:Fallback").Words("w:t", isToldBeside ? "" : drawing.Words, ("xml:space", "preserve")).Close();
        xml.Close().Close();
    }

    private void Extent(Drawing drawing, double scale)
    {
        xml.Empty("wp:extent", ("cx", Units(drawing.Width * scale)), ("cy", Units(drawing.Height * scale)));
        xml.Empty("wp:effectExtent", ("l", 0), ("t", 0), ("r", 0), ("b", 0));
    }

    private void Group(Drawing drawing, double scale, bool isToldBeside)
    {
        _id++;
        string words = isToldBeside ? "" : DocxText.Safe(drawing.Words);
        xml.Empty("wp:docPr", ("id", _id), ("name", FormattableString.Invariant($"Picture {_id}")), ("descr", words));
        xml.Empty("wp:cNvGraphicFramePr");
        xml.Open("a:graphic").Open("a:graphicData", ("uri", GroupUri)).Open("wpg:wgp").Empty("wpg:cNvGrpSpPr");
        (long width, long height) = (Units(drawing.Width * scale), Units(drawing.Height * scale));
        xml.Open("wpg:grpSpPr").Open("a:xfrm")
            .Empty("a:off", ("x", 0), ("y", 0)).Empty("a:ext", ("cx", width), ("cy", height))
            .Empty("a:chOff", ("x", 0), ("y", 0)).Empty("a:chExt", ("cx", width), ("cy", height))
            .Close().Close();
        Frame(width, height);
        ReadOnlySpan<DrawnShape> shapes = drawing.Shapes.Span;
        int at = 0;
        while (at < shapes.Length)
        {
            if (shapes[at] is DrawnShape.Label label)
            {
                Label(label, scale);
                at++;
                continue;
            }

            // outlines in a row that look alike are one shape of several paths
            DrawnShape.Outline first = (DrawnShape.Outline)shapes[at];
            int end = at + 1;
            while (end < shapes.Length && shapes[end] is DrawnShape.Outline next && next with { Steps = default } == first with { Steps = default })
            {
                end++;
            }

            Outlines(first, shapes[at..end], scale);
            at = end;
        }

        xml.Close().Close().Close();
    }

    // Some word processors measure a group by what is in it: an unseen frame keeps the picture's own size and margins.
    private void Frame(long width, long height)
    {
        OpenShape(0, 0, width, height, isText: false);
        xml.Open("a:prstGeom", ("prst", "rect")).Empty("a:avLst").Close().Empty("a:noFill").Open("a:ln").Empty("a:noFill").Close().Close();
        xml.Empty("wps:bodyPr").Close();
    }

    private void Outlines(DrawnShape.Outline look, ReadOnlySpan<DrawnShape> outlines, double scale)
    {
        Bounds bounds = Bounds.Of(outlines, scale);
        OpenShape(bounds.Left, bounds.Top, bounds.Width, bounds.Height, isText: false);
        xml.Open("a:custGeom").Empty("a:avLst").Empty("a:gdLst").Empty("a:ahLst").Empty("a:cxnLst")
            .Empty("a:rect", ("l", "0"), ("t", "0"), ("r", "r"), ("b", "b")).Open("a:pathLst");
        foreach (DrawnShape shape in outlines)
        {
            xml.Open("a:path", ("w", bounds.Width), ("h", bounds.Height), ("fill", look.Fill == Tint.None ? "none" : "norm"));
            foreach (PenStep step in ((DrawnShape.Outline)shape).Steps)
            {
                Step(step, bounds, scale);
            }

            xml.Close();
        }

        xml.Close().Close();
        if (look.Fill == Tint.None)
        {
            xml.Empty("a:noFill");
        }
        else
        {
            xml.Open("a:solidFill").Empty("a:srgbClr", ("val", Colour(look.Fill))).Close();
        }

        Edge(look, scale);
        xml.Close();
        xml.Empty("wps:bodyPr").Close();
    }

    private void Edge(DrawnShape.Outline look, double scale)
    {
        if (look.Stroke == Tint.None)
        {
            xml.Open("a:ln").Empty("a:noFill").Close();
            return;
        }

        xml.Open("a:ln", ("w", Units(look.Thickness * scale)), ("cap", "rnd"))
            .Open("a:solidFill").Empty("a:srgbClr", ("val", Colour(look.Stroke))).Close();
        if (look.IsDashed)
        {
            // in thousandths of a percent of the thickness
            xml.Open("a:custDash").Empty("a:ds", ("d", 250_000), ("sp", 200_000)).Close();
        }

        xml.Empty("a:round").Close();
    }

    private void Step(PenStep step, Bounds bounds, double scale)
    {
        switch (step)
        {
            case PenStep.MoveTo to:
                xml.Open("a:moveTo");
                Place(to.X, to.Y);
                xml.Close();
                break;
            case PenStep.LineTo to:
                xml.Open("a:lnTo");
                Place(to.X, to.Y);
                xml.Close();
                break;
            case PenStep.CurveTo to:
                xml.Open("a:cubicBezTo");
                Place(to.X1, to.Y1);
                Place(to.X2, to.Y2);
                Place(to.X, to.Y);
                xml.Close();
                break;
            case PenStep.Close:
                xml.Empty("a:close");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(step));
        }

        void Place(double x, double y) => xml.Empty("a:pt", ("x", Units(x * scale) - bounds.Left), ("y", Units(y * scale) - bounds.Top));
    }

    private void Label(DrawnShape.Label label, double scale)
    {
        double size = label.Size * scale;
        double width = Math.Max(label.Words.Length, 1) * size * WidestLetter;
        double left = (label.X * scale) - (label.Anchor switch { Anchor.Start => 0, Anchor.Middle => width / 2, _ => width });
        double top = (label.Y * scale) - (AboveBaseline * size);
        OpenShape(Units(left), Units(top), Units(width), Units(Leading * size), isText: true);
        xml.Open("a:prstGeom", ("prst", "rect")).Empty("a:avLst").Close().Empty("a:noFill").Open("a:ln").Empty("a:noFill").Close().Close();
        xml.Open("wps:txbx").Open("w:txbxContent").Open("w:p").Open("w:pPr")
            .Empty("w:spacing", ("before", 0), ("after", 0), ("line", DocxSize.Twips(Leading * size)), ("lineRule", "exact"))
            .Empty("w:jc", ("val", label.Anchor switch { Anchor.Start => "left", Anchor.Middle => "center", _ => "right" }))
            .Close();
        DocxBody.Run(xml, label.Words, label.IsBold, size);
        xml.Close().Close().Close();
        xml.Open("wps:bodyPr", ("wrap", "none"), ("lIns", 0), ("tIns", 0), ("rIns", 0), ("bIns", 0), ("anchor", "t"))
            .Empty("a:noAutofit").Close().Close();
    }

    private void OpenShape(long left, long top, long width, long height, bool isText)
    {
        _id++;
        xml.Open("wps:wsp").Empty("wps:cNvPr", ("id", _id), ("name", FormattableString.Invariant($"{(isText ? "Word" : "Line")} {_id}")));
        if (isText)
        {
            xml.Empty("wps:cNvSpPr", ("txBox", 1));
        }
        else
        {
            xml.Empty("wps:cNvSpPr");
        }

        xml.Open("wps:spPr").Open("a:xfrm").Empty("a:off", ("x", left), ("y", top)).Empty("a:ext", ("cx", width), ("cy", height)).Close();
    }

    /// <summary>The box around outlines, in units; never without breadth, which would leave a line no scale.</summary>
    private sealed record Bounds(long Left, long Top, long Width, long Height)
    {
        public static Bounds Of(ReadOnlySpan<DrawnShape> outlines, double scale)
        {
            (double left, double top, double right, double bottom) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
            foreach (DrawnShape shape in outlines)
            {
                foreach (PenStep step in ((DrawnShape.Outline)shape).Steps)
                {
                    switch (step)
                    {
                        case PenStep.MoveTo to:
                            Add(to.X, to.Y);
                            break;
                        case PenStep.LineTo to:
                            Add(to.X, to.Y);
                            break;
                        case PenStep.CurveTo to:
                            Add(to.X1, to.Y1);
                            Add(to.X2, to.Y2);
                            Add(to.X, to.Y);
                            break;
                    }
                }
            }

            if (left > right)
            {
                return new Bounds(0, 0, Units(1), Units(1));
            }

            (long x, long y) = (Units(left * scale), Units(top * scale));
            return new Bounds(x, y, Math.Max(Units(right * scale) - x, 1), Math.Max(Units(bottom * scale) - y, 1));

            void Add(double x, double y)
            {
                (left, top) = (Math.Min(left, x), Math.Min(top, y));
                (right, bottom) = (Math.Max(right, x), Math.Max(bottom, y));
            }
        }
    }
}
