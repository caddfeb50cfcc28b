namespace Scuff.Sheets.Formats.Pdf;

/// <summary>The typefaces of a PDF. None is read before a character needs it.</summary>
internal static class FontFaces
{
    private static readonly Lazy<FontFace> PlainFace = new(() => Load("AtkinsonHyperlegibleNext-Regular"));
    private static readonly Lazy<FontFace> BoldFace = new(() => Load("AtkinsonHyperlegibleNext-Bold"));

    // Asked in this order, the rarer and larger ones last.
    private static readonly Lazy<FontFace>[] Others =
    [
        new(() => Load("NotoSans-Regular")),
        new(() => Load("Heebo-Regular")),
        new(() => Load("NotoSansArabic-Regular")),
        new(() => Load("NotoEmoji-Regular")),
    ];

    /// <summary>The face of all usual text.</summary>
    public static FontFace Plain => PlainFace.Value;

    /// <summary>The face of headings and counts.</summary>
    public static FontFace Bold => BoldFace.Value;

    /// <summary>The first face that can draw all of the characters, or null.</summary>
    /// <param name="element">What a reader takes for one character: a letter and the marks upon it.</param>
    /// <param name="isBold">Whether bold is wanted; what only another face has is not bold.</param>
    public static FontFace? FaceFor(string element, bool isBold)
    {
        FontFace usual = isBold ? Bold : Plain;
        return HasAll(usual, element) ? usual : Others.FirstOrDefault(f => HasAll(f.Value, element))?.Value;
    }

    /// <summary>The file of a face by its name.</summary>
    public static byte[] FileOf(string name) => Open(name);

    private static bool HasAll(FontFace face, string element)
    {
        foreach (System.Text.Rune rune in element.EnumerateRunes())
        {
            if (!face.Has(rune.Value))
            {
                return false;
            }
        }

        return true;
    }

    private static FontFace Load(string name) => new(name, Open(name));

    private static byte[] Open(string name)
    {
        using Stream stream = typeof(FontFaces).Assembly.GetManifestResourceStream($"fonts/{name}.ttf")
            ?? throw new ArgumentException($"There is no face {name}.", nameof(name));
        byte[] file = new byte[stream.Length];
        stream.ReadExactly(file);
        return file;
    }
}
