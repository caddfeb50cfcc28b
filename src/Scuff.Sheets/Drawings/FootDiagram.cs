using Scuff.Analysis.Floor;
using Scuff.Stance;

namespace Scuff.Sheets.Drawings;

/// <summary>
/// The feet of a section, seen from above: a panel for every place at which something is danced, the count over it. Up is where the
/// dance faces as the section starts, in all its panels. A panel shows both feet afterwards, where a moved foot was, and the turn.
/// </summary>
internal static class FootDiagram
{
    /// <summary>Breadth of a page's column of text on A4, with margins of 2 cm: 170 mm.</summary>
    public const double MostWidth = 482;

    /// <summary>Breadth of the sign that tells what is up.</summary>
    public const double UpWidth = 34;

    /// <summary>How much larger the feet are drawn than the floor, to be seen; feet side by side still do not touch.</summary>
    public const double FootFactor = 1.3;

    // An eight with nothing between its counts fills the breadth.
    private const int UsualInRow = 8;
    private const double CountRow = 12.5;
    private const double TurnRow = 11;
    private const double MostFeet = 52;
    private const double RowGap = 4;
    private const double Pad = 2;

    // Points a metre: what the room allows, but no more than that; with less than the least the panels take a second row.
    private const double MostScale = 54;
    private const double LeastScale = 38;
    private const double CountSize = 9;
    private const double LetterSize = 7.5;
    private const double TurnRadius = 3.4;
    private const double TurnGap = 2.5;
    private const double Shaft = 0.8;
    private const double HeadLength = 3.6;

    // a shorter one would be a speck; the thin sole tells enough
    private const double LeastArrow = 2.5;

    // Panels in a row, tried in this order: a run of half counts in one row, or else in two.
    private static ReadOnlySpan<int> MostInRow => [16, 12, UsualInRow];

    private static ReadOnlySpan<Foot> Both => [Foot.Left, Foot.Right];

    /// <summary>Draws a section; null when nothing of it can be drawn.</summary>
    /// <param name="moments">What is danced.</param>
    /// <param name="path">The way of the feet.</param>
    /// <param name="heading">The section's heading, for the words.</param>
    /// <param name="up">The clock word that is up, or null when that is unknown.</param>
    /// <param name="labels">Words.</param>
    public static Drawing? Draw(IReadOnlyList<FootMoment> moments, FloorPath path, string heading, string? up, DrawingLabels labels)
    {
        if (!moments.Any(m => m.IsCertain))
        {
            return null;
        }

        List<Row> rows = Rows(moments, path.Size);
        double width = UpWidth;
        double top = 0;
        Sketch sketch = new();
        List<DrawnPiece> pieces = [];
        foreach (Row row in rows)
        {
            double height = CountRow + row.Feet + (row.Turns ? TurnRow : 0);
            if (top == 0)
            {
                DrawUp(sketch, up, CountRow + (row.Feet / 2));
                pieces.Add(new DrawnPiece(0, 0, UpWidth, Sketch.Round(height), sketch.Count));
            }

            double left = UpWidth;
            for (int i = 0; i < row.Widths.Length; i++)
            {
                int before = sketch.Count;
                DrawPanel(sketch, moments[row.First + i], path, new Cell(left, top, row.Widths[i], row.Feet, row.Scale, row.North));
                pieces.Add(new DrawnPiece(Sketch.Round(left), Sketch.Round(top), Sketch.Round(row.Widths[i]), Sketch.Round(height), sketch.Count - before));
                left += row.Widths[i];
            }

            width = Math.Max(width, left);
            top += height + RowGap;
        }

        return new Drawing(
            Sketch.Round(width),
            Sketch.Round(top - RowGap),
            sketch.Shapes,
            FootWords.Of(moments, path.Size, heading, up, labels))
        {
            Pieces = pieces.ToValueList(),
        };
    }

    // As few rows as let the feet be large enough to read.
    private static List<Row> Rows(IReadOnlyList<FootMoment> moments, DancerSize size)
    {
        double north = moments[0].Before.Facing;
        Box[] boxes = [.. moments.Select(m => Box.Of(m, size, north, MostScale))];
        List<Row> rows = [];
        foreach (int most in MostInRow)
        {
            rows.Clear();
            int count = (moments.Count + most - 1) / most;
            int inRow = (moments.Count + count - 1) / count;
            for (int first = 0; first < moments.Count; first += inRow)
            {
                int next = Math.Min(first + inRow, moments.Count);
                rows.Add(RowOf([.. Enumerable.Range(first, next - first).Select(i => moments[i])], boxes[first..next], first, north));
            }

            if (rows.TrueForAll(r => r.Scale >= LeastScale))
            {
                break;
            }
        }

        return rows;
    }

    // Every panel gets what its feet and its count need, and an equal share of what is left.
    private static Row RowOf(FootMoment[] moments, Box[] boxes, int first, double north)
    {
        const double Room = MostWidth - UpWidth;
        double room = Room - (boxes.Length * 2 * Pad);
        double scale = MostScale * Math.Min(1, Math.Min(room / boxes.Sum(b => b.Width), (MostFeet - (2 * Pad)) / boxes.Max(b => b.Height)));
        double[] widths;
        while (true)
        {
            widths = [.. boxes.Select((b, i) => (2 * Pad) + Math.Max(b.Width * scale / MostScale, BreadthOf(moments[i])))];
            if (widths.Sum() <= Room || scale < 1)
            {
                break;
            }

            scale *= 0.95;
        }

        double share = Math.Max(0, Room - widths.Sum()) / Math.Max(UsualInRow, widths.Length);
        return new Row(
            first,
            [.. widths.Select(w => w + share)],
            (boxes.Max(b => b.Height) * scale / MostScale) + (2 * Pad),
            scale,
            north,
            moments.Any(m => m.IsCertain && m.Turn != Turn.None));
    }

    // what its words need: the count above, the turn below
    private static double BreadthOf(FootMoment moment)
    {
        double turn = moment.Turn == Turn.None ? 0 : (2 * TurnRadius) + TurnGap + BreadthOf(AmountOf(moment.Turn), CountSize);
        return Math.Max(turn, BreadthOf(moment.Label, SizeOf(moment)));
    }

    // At least what Atkinson Hyperlegible Next takes in bold: 0.66 of the size a digit, 0.73 an &, 0.85 a fraction (measured).
    private static double BreadthOf(string words, double size) => size * words.Sum(c => c switch
    {
        '¼' or '½' or '¾' or '⅛' or '⅜' or '⅝' or '⅞' => 0.85,
        '&' => 0.73,
        _ => 0.66,
    });

    private static string AmountOf(Turn turn) => SheetWords.Amount(turn.Amount / 8);

    private static double SizeOf(FootMoment moment) => moment.IsOffBeat ? LetterSize : CountSize;

    private static void DrawUp(Sketch sketch, string? up, double middle)
    {
        const double Centre = (UpWidth / 2) - 2;
        sketch.Line([(Centre, middle), (Centre, middle - 9)], Tint.Ink, Shaft);
        sketch.Head(Centre, middle - 12, 0, -1, HeadLength);
        if (up is not null)
        {
            sketch.Word(Centre, middle + 9, up, CountSize);
        }
    }

    private static void DrawPanel(Sketch sketch, FootMoment moment, FloorPath path, Cell cell)
    {
        double middle = cell.Left + (cell.Width / 2);
        sketch.Word(middle, cell.Top + (moment.IsOffBeat ? 7.5 : 8.5), moment.Label, SizeOf(moment), isBold: !moment.IsOffBeat);
        sketch.Line([(cell.Left + Pad, cell.Top + CountRow - 1), (cell.Left + cell.Width - Pad, cell.Top + CountRow - 1)], Tint.Line, 0.4);
        if (!moment.IsCertain)
        {
            sketch.Word(middle, cell.Top + CountRow + (cell.Feet / 2) + 4, "?", 12, isBold: true);
            return;
        }

        Box box = Box.Of(moment, path.Size, cell.North, cell.Scale);
        Map map = new(
            middle - ((box.Left + box.Right) / 2),
            cell.Top + CountRow + (cell.Feet / 2) - ((box.Top + box.Bottom) / 2),
            cell.Scale,
            cell.North);
        double length = path.Size.FootLength * FootFactor * cell.Scale;
        foreach (Foot foot in Both)
        {
            if (moment.Travels(foot) || moment.Twists(foot, path.Size))
            {
                FootPose was = moment.Before.Of(foot);
                (double x, double y) = map.Of(was.Place);
                SoleDrawing.DrawGhost(sketch, foot, x, y, was.Angle - cell.North, length);
            }
        }

        foreach (Foot foot in Both)
        {
            FootPose pose = moment.After.Of(foot);
            (double x, double y) = map.Of(pose.Place);
            SoleDrawing.Draw(sketch, new Sole(foot, pose.Contact, moment.Carries(foot)), x, y, pose.Angle - cell.North, length);
        }

        foreach (Foot foot in Both)
        {
            DrawWay(sketch, moment, path, foot, map, length);
        }

        if (moment.Turn != Turn.None)
        {
            DrawTurn(sketch, moment.Turn, middle, cell.Top + CountRow + cell.Feet + (TurnRow / 2));
        }
    }

    private static void DrawWay(Sketch sketch, FootMoment moment, FloorPath path, Foot foot, Map map, double length)
    {
        FootPose from = moment.Before.Of(foot);
        FootPose to = moment.After.Of(foot);
        if (moment.Twists(foot, path.Size))
        {
            // what moves is the end that does not stand
            FloorPoint toeFrom = from.Place + new FloorPoint(0, path.Size.FootLength * SoleDrawing.ToeEnd).Turned(from.Angle);
            FloorPoint toeTo = to.Place + new FloorPoint(0, path.Size.FootLength * SoleDrawing.ToeEnd).Turned(to.Angle);
            bool isHeel = (to.Heel(path.Size) - from.Heel(path.Size)).Length >= (toeTo - toeFrom).Length;
            Arrow(sketch, [map.Of(isHeel ? from.Heel(path.Size) : toeFrom), map.Of(isHeel ? to.Heel(path.Size) : toeTo)]);
            return;
        }

        if (!moment.Travels(foot))
        {
            return;
        }

        List<(double X, double Y)> way = [];
        if (moment.After.MotionOf(foot) == FootMotion.Swing)
        {
            const int Points = 8;
            double start = Math.Max(moment.Before.Arrives, moment.After.At - 1);
            for (int i = 0; i <= Points; i++)
            {
                way.Add(map.Of(path.At(foot, start + ((moment.After.Arrives - start) * i / Points)).Place));
            }
        }
        else
        {
            way.Add(map.Of(from.Place));
            way.Add(map.Of(to.Place));
        }

        Shorten(way, to.Angle - map.North, length);
        Arrow(sketch, way);
    }

    // The arrow ends at the edge of the sole, where its head is seen.
    private static void Shorten(List<(double X, double Y)> way, double degrees, double length)
    {
        (double x, double y) = way[^1];
        double angle = degrees * Math.PI / 180;
        while (way.Count > 1)
        {
            (double px, double py) = way[^2];
            double distance = Math.Sqrt(((px - x) * (px - x)) + ((py - y) * (py - y)));
            if (distance > 0)
            {
                // the sole as two half ellipses about its ball, short before it and long behind
                double ahead = (((px - x) * Math.Sin(angle)) - ((py - y) * Math.Cos(angle))) / distance;
                double along = (ahead > 0 ? SoleDrawing.ToeEnd : -SoleDrawing.HeelEnd) * length;
                double across = 0.19 * length;
                double edge = 1.2 + (1 / Math.Sqrt((ahead * ahead / (along * along)) + ((1 - (ahead * ahead)) / (across * across))));
                if (distance > edge)
                {
                    way[^1] = (x + ((px - x) * edge / distance), y + ((py - y) * edge / distance));
                    return;
                }
            }

            way.RemoveAt(way.Count - 2);
        }
    }

    private static void Arrow(Sketch sketch, List<(double X, double Y)> way)
    {
        if (way.Count < 2)
        {
            return;
        }

        (double x, double y) = way[^1];
        (double px, double py) = way[^2];
        double length = Math.Sqrt(((x - px) * (x - px)) + ((y - py) * (y - py)));
        if (length < LeastArrow)
        {
            return;
        }

        // a light border keeps the line visible where it crosses a solid sole
        double head = Math.Min(HeadLength, length);
        way[^1] = (x - ((x - px) / length * head * 0.8), y - ((y - py) / length * head * 0.8));
        sketch.Line([.. way], Tint.Paper, Shaft + 1.6);
        sketch.Line([.. way], Tint.Ink, Shaft);
        sketch.Head(x, y, x - px, y - py, head);
    }

    private static void DrawTurn(Sketch sketch, Turn turn, double middle, double y)
    {
        string amount = AmountOf(turn);
        double x = middle - ((TurnGap + BreadthOf(amount, CountSize)) / 2);
        DrawTurnArc(sketch, x, y, TurnRadius, turn.Sign);
        sketch.Word(x + TurnRadius + TurnGap, y + 3.2, amount, CountSize, Anchor.Start);
    }

    /// <summary>Draws an arc with a head, most of a circle, to the right for a positive sign.</summary>
    public static void DrawTurnArc(Sketch sketch, double x, double y, double radius, int sign)
    {
        const double From = -60;
        const double Sweep = 240;
        sketch.Arc(x, y, radius, sign * From, sign * Sweep, Tint.Ink, Shaft);
        double end = sign * (From + Sweep) * Math.PI / 180;
        (double tipX, double tipY) = (x + (radius * Math.Sin(end)), y - (radius * Math.Cos(end)));
        (double dx, double dy) = (sign * Math.Cos(end), sign * Math.Sin(end));
        sketch.Head(tipX + (dx * 1.8), tipY + (dy * 1.8), dx, dy, 3.2);
    }

    /// <summary>A row of panels.</summary>
    /// <param name="First">Index of its first moment.</param>
    /// <param name="Widths">Breadth of each panel.</param>
    /// <param name="Feet">Height of the feet's room.</param>
    /// <param name="Scale">Points a metre.</param>
    /// <param name="North">What is up, degrees clockwise from 12:00.</param>
    /// <param name="Turns">Whether any of its panels turns.</param>
    private sealed record Row(int First, double[] Widths, double Feet, double Scale, double North, bool Turns);

    /// <summary>A panel and how it is filled.</summary>
    private readonly record struct Cell(double Left, double Top, double Width, double Feet, double Scale, double North);

    /// <summary>From the floor to the paper.</summary>
    private readonly record struct Map(double X, double Y, double Scale, double North)
    {
        public (double X, double Y) Of(FloorPoint place)
        {
            FloorPoint turned = place.Turned(-North);
            return (X + (turned.X * Scale), Y - (turned.Y * Scale));
        }
    }

    /// <summary>What the feet of a panel take up, in points, with the start of the dance as the origin.</summary>
    private readonly record struct Box(double Left, double Top, double Right, double Bottom)
    {
        public double Width => Right - Left;

        public double Height => Bottom - Top;

        public static Box Of(FootMoment moment, DancerSize size, double north, double scale)
        {
            if (!moment.IsCertain)
            {
                return new Box(0, 0, 1, 1);
            }

            Map map = new(0, 0, scale, north);
            Box box = new(double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
            foreach (Foot foot in Both)
            {
                box = box.With(moment.After.Of(foot), foot, size, map);
                if (moment.Travels(foot) || moment.Twists(foot, size))
                {
                    box = box.With(moment.Before.Of(foot), foot, size, map);
                }
            }

            return box;
        }

        private Box With(FootPose pose, Foot foot, DancerSize size, Map map)
        {
            (double x, double y) = map.Of(pose.Place);
            (double left, double top, double right, double bottom) =
                SoleDrawing.BoxOf(foot, x, y, pose.Angle - map.North, size.FootLength * FootFactor * map.Scale);
            return new Box(Math.Min(Left, left), Math.Min(Top, top), Math.Max(Right, right), Math.Max(Bottom, bottom));
        }
    }
}
