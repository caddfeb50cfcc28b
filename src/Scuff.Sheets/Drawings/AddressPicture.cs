using System.Collections;
using QRCoder;

namespace Scuff.Sheets.Drawings;

/// <summary>Addresses as pictures for a camera (QR codes, ISO/IEC 18004), with the quiet edge that they need.</summary>
public static class AddressPicture
{
    // At least a tenth of the distance from which it is read (from memory): a hand and a half over a sheet on a table.
    private const double Size = 80;

    // A hair more than a square, so that no gap shows between two rows where a screen draws half a point.
    private const double Overlap = 0.04;

    /// <summary>The dark squares in rows: where each run starts and how long it is.</summary>
    /// <param name="address">The address.</param>
    /// <param name="size">Squares along an edge.</param>
    public static IReadOnlyList<(int X, int Y, int Length)> Runs(string address, out int size)
    {
        using QRCodeGenerator generator = new();
        using QRCodeData code = generator.CreateQrCode(address, QRCodeGenerator.ECCLevel.M);
        List<BitArray> rows = code.ModuleMatrix;
        size = rows.Count;
        List<(int X, int Y, int Length)> runs = [];
        for (int y = 0; y < rows.Count; y++)
        {
            for (int x = 0; x < rows[y].Length; x++)
            {
                int start = x;
                while (x < rows[y].Length && rows[y][x])
                {
                    x++;
                }

                if (x > start)
                {
                    runs.Add((start, y, x - start));
                }
            }
        }

        return runs;
    }

    /// <summary>The picture for a sheet.</summary>
    /// <param name="address">The address.</param>
    /// <param name="words">The same told in words.</param>
    internal static Drawing Of(string address, string words)
    {
        IReadOnlyList<(int X, int Y, int Length)> runs = Runs(address, out int size);
        double unit = Size / size;
        List<PenStep> steps = [];
        foreach ((int x, int y, int length) in runs)
        {
            (double left, double top) = (Sketch.Round(x * unit), Sketch.Round(y * unit));
            (double right, double bottom) = (Sketch.Round((x + length) * unit), Sketch.Round(((y + 1) * unit) + Overlap));
            steps.AddRange([new PenStep.MoveTo(left, top), new PenStep.LineTo(right, top), new PenStep.LineTo(right, bottom), new PenStep.LineTo(left, bottom), new PenStep.Close()]);
        }

        ValueList<PenStep> page =
        [
            new PenStep.MoveTo(0, 0), new PenStep.LineTo(Size, 0), new PenStep.LineTo(Size, Size), new PenStep.LineTo(0, Size), new PenStep.Close(),
        ];
        return new Drawing(
            Size,
            Size,
            [new DrawnShape.Outline(page, Tint.Paper, Tint.None, 0), new DrawnShape.Outline(steps.ToValueList(), Tint.Ink, Tint.None, 0)],
            words);
    }
}
