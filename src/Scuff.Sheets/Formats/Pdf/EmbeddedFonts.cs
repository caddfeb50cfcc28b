using PdfSharp.Fonts;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Gives the PDF library the faces that travel with Scuff, by the names of their files; it never looks for the machine's own.</summary>
internal sealed class EmbeddedFonts : IFontResolver
{
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(familyName);

    public byte[]? GetFont(string faceName) => FontFaces.FileOf(faceName);
}
