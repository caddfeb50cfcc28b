using Scuff.Sheets.Drawings;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Something on a page, with its place known before it is drawn. Lengths are points from the upper left corner, y down.</summary>
/// <param name="Owner">What it is part of, or null for what is only ornament or repetition.</param>
/// <param name="Turn">Its place in the order of reading.</param>
/// <param name="X">Left edge.</param>
/// <param name="Y">Upper edge.</param>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
internal abstract record PageBox(Tag? Owner, int Turn, double X, double Y, double Width, double Height)
{
    /// <summary>A line of type.</summary>
    public sealed record Type(Tag? Owner, int Turn, double X, double Y, SetLine Line)
        : PageBox(Owner, Turn, X, Y, Line.Width, Line.Size * TypeSetter.Height);

    /// <summary>A drawing, or a piece of one.</summary>
    public sealed record Picture(Tag? Owner, int Turn, double X, double Y, Drawing Drawing, double Scale)
        : PageBox(Owner, Turn, X, Y, Drawing.Width * Scale, Drawing.Height * Scale);

    /// <summary>A clock with its one hand; the word beside it says the same.</summary>
    public sealed record Clock(int Turn, double X, double Y, double Size, double Degrees, bool IsStrong)
        : PageBox(null, Turn, X, Y, Size, Size);

    /// <summary>A box to tick with a pen.</summary>
    public sealed record Tick(int Turn, double X, double Y, double Size)
        : PageBox(null, Turn, X, Y, Size, Size);

    /// <summary>A row of dots that leads the eye from the words to where they face.</summary>
    public sealed record Leader(int Turn, double X, double Y, double Width)
        : PageBox(null, Turn, X, Y, Width, 1);
}
