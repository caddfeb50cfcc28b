namespace Scuff.App.Complaints;

/// <summary>The piece of a long line that is worth showing, with the place of the faulty words in it.</summary>
/// <param name="Words">What is shown, safe for a terminal.</param>
/// <param name="Start">Zero-based place of the faulty words in it.</param>
/// <param name="Length">How many characters of it are faulty, at least 1.</param>
internal sealed record Excerpt(string Words, int Start, int Length)
{
    private const string More = "…";

    /// <summary>Cuts a line to a width so that the faulty words stay in sight.</summary>
    /// <param name="line">The line.</param>
    /// <param name="column">One-based column of the faulty words.</param>
    /// <param name="length">Their length.</param>
    /// <param name="width">Most characters to show, at least 20.</param>
    public static Excerpt Of(string line, int column, int length, int width)
    {
        string safe = Plain.Line(line);
        int start = Math.Clamp(column - 1, 0, safe.Length);
        if (safe.Length <= width)
        {
            return new Excerpt(safe, start, Math.Max(1, Math.Min(length, safe.Length - start)));
        }

        // A third of the room goes to what stands before the fault.
        int from = Math.Clamp(start - (width / 3), 0, safe.Length - width);
        string shown = safe.Substring(from, width);
        if (from > 0)
        {
            shown = More + shown[1..];
        }

        if (from + width < safe.Length)
        {
            shown = shown[..^1] + More;
        }

        int place = start - from;
        return new Excerpt(shown, place, Math.Max(1, Math.Min(length, width - place)));
    }
}
