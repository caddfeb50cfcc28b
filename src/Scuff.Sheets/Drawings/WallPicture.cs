using System.Globalization;
using Scuff.Stance;
using Scuff.Timelines;

namespace Scuff.Sheets.Drawings;

/// <summary>
/// Where the walls of a dance go: the room from above, each side with its clock word and its notches (none for 12, one for 3, two
/// for 6, three for 9), and the numbers of the walls where they start, joined in their order.
/// </summary>
internal static class WallPicture
{
    private const double Size = 112;
    private const double Inset = 26;
    private const double WordSize = 9;

    /// <summary>Draws the walls; null when the facings are not known, and for a phrased dance.</summary>
    /// <param name="timeline">Plain repetitions.</param>
    /// <param name="walls">How many walls the dance has, or null.</param>
    /// <param name="labels">Words.</param>
    public static Drawing? Draw(Timeline timeline, int? walls, DrawingLabels labels)
    {
        if (walls is not { } count)
        {
            return null;
        }

        List<Facing> starts = [];
        foreach (TimedStretch stretch in timeline.Stretches)
        {
            if (stretch.Plan.StartsWall && starts.Count < count && stretch.Facing is { } facing)
            {
                starts.Add(facing);
            }
        }

        if (starts.Count < count)
        {
            return null;
        }

        Sketch sketch = new();
        DrawRoom(sketch);

        // the numbers stand clear of the notches
        double radius = count == 1 ? 0 : 18.5;
        for (int i = 0; i < count; i++)
        {
            (double x, double y) = Seat(starts[i], radius);
            if (count > 1)
            {
                (double nextX, double nextY) = Seat(starts[(i + 1) % count], radius);
                DrawStep(sketch, x, y, nextX, nextY, count == 2);
            }
        }

        if (count == 1)
        {
            // every wall the same way: one arrow to the front
            sketch.Line([(Size / 2, (Size / 2) + 16), (Size / 2, (Size / 2) - 12)], Tint.Ink, 1);
            sketch.Head(Size / 2, (Size / 2) - 18, 0, -1, 7);
        }

        for (int i = 0; i < count && count > 1; i++)
        {
            (double x, double y) = Seat(starts[i], radius);
            sketch.Word(x, y + 4, (i + 1).ToString(CultureInfo.InvariantCulture), 11, isBold: true);
        }

        return new Drawing(Size, Size, sketch.Shapes, Format(labels.WallsSeen, Tell(starts, labels)));
    }

    private static string Tell(List<Facing> starts, DrawingLabels labels) => starts.Count == 1
        ? Format(labels.EveryWallStarts, starts[0])
        : string.Join(' ', starts.Select((f, i) => Format(labels.WallStarts, i + 1, f)).Append(labels.WallsAgain));

    private static void DrawRoom(Sketch sketch)
    {
        const double Far = Size - Inset;
        sketch.Area([(Inset, Inset), (Far, Inset), (Far, Far), (Inset, Far)], Tint.None, Tint.Line, 0.6);

        // the front is the wall that the dance begins at
        sketch.Line([(Inset, Inset), (Far, Inset)], Tint.Ink, 2);
        sketch.Word(Size / 2, Inset - 5, "12:00", WordSize);
        sketch.Word(Far + 4.5, (Size / 2) + 3, "3:00", WordSize, Anchor.Start);
        sketch.Word(Size / 2, Far + 12, "6:00", WordSize);
        sketch.Word(Inset - 4.5, (Size / 2) + 3, "9:00", WordSize, Anchor.End);
        Notches(sketch, 1, Far, Size / 2, isUpright: true);
        Notches(sketch, 2, Size / 2, Far, isUpright: false);
        Notches(sketch, 3, Inset, Size / 2, isUpright: true);
    }

    private static void Notches(Sketch sketch, int count, double x, double y, bool isUpright)
    {
        for (int i = 0; i < count; i++)
        {
            double shift = (i - ((count - 1) / 2.0)) * 4.5;
            if (isUpright)
            {
                sketch.Line([(x - 3, y + shift), (x + 3, y + shift)], Tint.Ink, 1.4);
            }
            else
            {
                sketch.Line([(x + shift, y - 3), (x + shift, y + 3)], Tint.Ink, 1.4);
            }
        }
    }

    private static (double X, double Y) Seat(Facing facing, double radius)
    {
        double angle = facing.Eighths.ToDouble() * Math.PI / 4;
        return ((Size / 2) + (radius * Math.Sin(angle)), (Size / 2) - (radius * Math.Cos(angle)));
    }

    // From number to number, clear of both; two walls lead to each other side by side.
    private static void DrawStep(Sketch sketch, double x, double y, double nextX, double nextY, bool isPair)
    {
        double length = Math.Sqrt(((nextX - x) * (nextX - x)) + ((nextY - y) * (nextY - y)));
        (double dx, double dy) = ((nextX - x) / length, (nextY - y) / length);
        (double sideX, double sideY) = isPair ? (-dy * 4, dx * 4) : (0, 0);
        double clear = Math.Min(8.5, length / 2.6);
        (double fromX, double fromY) = (x + (dx * clear) + sideX, y + (dy * clear) + sideY);
        (double toX, double toY) = (nextX - (dx * clear) + sideX, nextY - (dy * clear) + sideY);
        sketch.Line([(fromX, fromY), (toX - (dx * 3.5), toY - (dy * 3.5))], Tint.Ink, 0.9);
        sketch.Head(toX, toY, dx, dy, 4.5);
    }

    private static string Format(string words, params object[] arguments) => string.Format(CultureInfo.InvariantCulture, words, arguments);
}
