namespace Scuff.App;

/// <summary>Rows in aligned columns of plain text; the last column runs free.</summary>
internal static class Table
{
    /// <summary>Writes the rows under a head.</summary>
    public static void Write(TextWriter writer, Paint paint, IReadOnlyList<string> head, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        int[] widths = [.. head.Select((h, i) => rows.Select(r => r[i].Length).Append(h.Length).Max())];
        writer.WriteLine(paint.Of(Tone.Soft, Row(head, widths)));
        foreach (IReadOnlyList<string> row in rows)
        {
            writer.WriteLine(Row(row, widths));
        }
    }

    private static string Row(IReadOnlyList<string> cells, int[] widths)
        => "  " + string.Join("  ", cells.Select((c, i) => i == widths.Length - 1 ? c : c.PadRight(widths[i]))).TrimEnd();
}
