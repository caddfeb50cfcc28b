using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using Scuff.Sheets.Drawings;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Draws a layout into a PDF. Everything on it is ink.</summary>
internal sealed class PdfPen : IDisposable
{
    // The library keeps its faces in one place for the whole program.
    private static readonly Lock Turnstile = new();

    private readonly PdfDocument _document = new();
    private readonly Dictionary<(string Face, double Size), XFont> _fonts = [];
    private readonly List<Tag> _open = [];
    private StructureBuilder _tags = null!;
    private XGraphics _page = null!;

    private PdfPen()
    {
    }

    /// <summary>Draws all pages.</summary>
    public static byte[] Draw(SheetModel sheet, SheetLayout layout)
    {
        lock (Turnstile)
        {
            GlobalFontSettings.FontResolver ??= new EmbeddedFonts();
            using PdfPen pen = new();
            return pen.DrawPages(sheet, layout);
        }
    }

    public void Dispose() => _document.Dispose();

    private byte[] DrawPages(SheetModel sheet, SheetLayout layout)
    {
        _document.Info.Title = Substitutes.Clean(sheet.Title);
        _document.Info.Author = Substitutes.Clean(sheet.Author);
        _document.Info.Creator = "Scuff";
        _document.ViewerPreferences.DisplayDocTitle = true;
        UAManager manager = UAManager.ForDocument(_document);
        manager.SetDocumentLanguage(sheet.Language);
        _tags = manager.StructureBuilder;
        foreach (PlacedPage placed in layout.Pages)
        {
            PdfPage page = _document.AddPage();
            page.Width = XUnit.FromPoint(layout.Shape.Width);
            page.Height = XUnit.FromPoint(layout.Shape.Height);
            using (_page = XGraphics.FromPdfPage(page))
            {
                foreach (PageBox box in placed.Boxes)
                {
                    Draw(box, layout.Shape);
                }

                CloseDownTo(_open.TakeWhile(t => t.GoesOn).Count());
            }
        }

        CloseDownTo(0);
        using MemoryStream drawn = new();
        _document.Save(drawn, closeStream: false);
        return StableBytes.Of(drawn.ToArray());
    }

    private void Draw(PageBox box, PageShape shape)
    {
        if (box.Owner is null)
        {
            // what is ornament is kept out of the element that happens to be open
            CloseDownTo(_open.TakeWhile(t => t.GoesOn || t.Name == "TR").Count());
            _tags.BeginArtifact();
            DrawInside(box);
            _tags.End();
            return;
        }

        Open(box.Owner, box, shape);
        if (box is PageBox.Type { Line.Spoken: { } spoken })
        {
            _tags.BeginElement(PdfInlineLevelElementTag.Span);
            _tags.CurrentStructureElement.Elements.SetString("/ActualText", spoken);
            DrawInside(box);
            _tags.End();
            return;
        }

        DrawInside(box);
    }

    private void Open(Tag owner, PageBox box, PageShape shape)
    {
        List<Tag> path = [.. owner.Path];
        int same = 0;
        while (same < _open.Count && same < path.Count && ReferenceEquals(_open[same], path[same]))
        {
            same++;
        }

        CloseDownTo(same);
        foreach (Tag tag in path.Skip(same))
        {
            if (tag.Alternative is { } alternative)
            {
                // the library takes the rectangle as it stands: in the page's own frame, y up
                _tags.BeginElement(
                    PdfIllustrationElementTag.Figure,
                    Substitutes.Clean(alternative),
                    new XRect(box.X, shape.Height - box.Y - box.Height, box.Width, box.Height));
            }
            else
            {
                _tags.BeginBlockLevelElement(tag.Name);
            }

            if (tag.Scope is { } scope)
            {
                PdfDictionary attributes = new(_document);
                attributes.Elements.SetName("/O", "/Table");
                attributes.Elements.SetName("/Scope", "/" + scope);
                _tags.CurrentStructureElement.Elements["/A"] = attributes;
            }

            _open.Add(tag);
        }
    }

    private void CloseDownTo(int count)
    {
        while (_open.Count > count)
        {
            _tags.End();
            _open.RemoveAt(_open.Count - 1);
        }
    }

    private void DrawInside(PageBox box)
    {
        switch (box)
        {
            case PageBox.Type type:
                Draw(type.Line, type.X, type.Y + (TypeSetter.Rise * type.Line.Size));
                break;
            case PageBox.Picture picture:
                Draw(picture);
                break;
            case PageBox.Clock clock:
                Draw(clock);
                break;
            case PageBox.Tick tick:
                _page.DrawRectangle(new XPen(XColors.Black, 0.8), tick.X + 0.4, tick.Y + 0.4, tick.Size - 0.8, tick.Size - 0.8);
                break;
            case PageBox.Leader leader:
                _page.DrawLine(
                    new XPen(XColors.Black, 0.5) { DashStyle = XDashStyle.Custom, DashPattern = [1, 6] },
                    leader.X,
                    leader.Y + 0.5,
                    leader.X + leader.Width,
                    leader.Y + 0.5);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(box), box, "No such box.");
        }
    }

    private void Draw(SetLine line, double x, double baseline)
    {
        foreach (SetRun run in line.Runs)
        {
            _page.DrawString(run.Words, Font(run.Face.Name, line.Size), XBrushes.Black, x + run.X, baseline);
        }
    }

    private void Draw(PageBox.Clock clock)
    {
        double radius = (clock.Size / 2) - 0.5;
        double x = clock.X + (clock.Size / 2);
        double y = clock.Y + (clock.Size / 2);
        _page.DrawEllipse(new XPen(XColors.Black, clock.IsStrong ? 0.8 : 0.5), x - radius, y - radius, 2 * radius, 2 * radius);
        (double sin, double cos) = Math.SinCos(clock.Degrees * Math.PI / 180);
        double reach = radius * 0.78;
        double back = radius * 0.2;
        XPen hand = new(XColors.Black, clock.IsStrong ? 1.8 : 0.9) { LineCap = XLineCap.Round };
        _page.DrawLine(hand, x - (back * sin), y + (back * cos), x + (reach * sin), y - (reach * cos));
    }

    private void Draw(PageBox.Picture picture)
    {
        foreach (DrawnShape shape in picture.Drawing.Shapes)
        {
            switch (shape)
            {
                case DrawnShape.Outline outline:
                    Draw(outline, picture);
                    break;
                case DrawnShape.Label label:
                    SetLine line = TypeSetter.One(label.Words, label.Size * picture.Scale, label.IsBold);
                    double x = picture.X + (label.X * picture.Scale) - (label.Anchor switch
                    {
                        Anchor.Start => 0,
                        Anchor.Middle => line.Width / 2,
                        _ => line.Width,
                    });
                    Draw(line, x, picture.Y + (label.Y * picture.Scale));
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(picture), shape, "No such shape.");
            }
        }
    }

    private void Draw(DrawnShape.Outline outline, PageBox.Picture picture)
    {
        XGraphicsPath path = new() { FillMode = XFillMode.Winding };
        XPoint here = default;
        XPoint start = default;
        foreach (PenStep step in outline.Steps)
        {
            switch (step)
            {
                case PenStep.MoveTo move:
                    path.StartFigure();
                    here = start = At(move.X, move.Y);
                    break;
                case PenStep.LineTo line:
                    path.AddLine(here, here = At(line.X, line.Y));
                    break;
                case PenStep.CurveTo curve:
                    path.AddBezier(here, At(curve.X1, curve.Y1), At(curve.X2, curve.Y2), here = At(curve.X, curve.Y));
                    break;
                case PenStep.Close:
                    path.CloseFigure();
                    here = start;
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(outline), step, "No such movement.");
            }
        }

        XBrush? fill = outline.Fill == Tint.None ? null : new XSolidBrush(ColourOf(outline.Fill));
        XPen? edge = outline.Stroke == Tint.None || outline.Thickness <= 0
            ? null
            : new XPen(ColourOf(outline.Stroke), outline.Thickness * picture.Scale) { LineCap = XLineCap.Round, LineJoin = XLineJoin.Round };
        if (edge is not null && outline.IsDashed)
        {
            edge.DashStyle = XDashStyle.Custom;
            edge.DashPattern = [2.5, 2];
        }

        if (edge is not null && fill is not null)
        {
            _page.DrawPath(edge, fill, path);
        }
        else if (edge is not null)
        {
            _page.DrawPath(edge, path);
        }
        else if (fill is not null)
        {
            _page.DrawPath(fill, path);
        }

        XPoint At(double x, double y) => new(picture.X + (x * picture.Scale), picture.Y + (y * picture.Scale));
    }

    private static XColor ColourOf(Tint tint) => tint == Tint.Paper ? XColors.White : XColors.Black;

    private XFont Font(string face, double size)
    {
        if (!_fonts.TryGetValue((face, size), out XFont? font))
        {
            font = new XFont(face, size, XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode));
            _fonts[(face, size)] = font;
        }

        return font;
    }
}
