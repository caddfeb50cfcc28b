using System.Globalization;

namespace Scuff.Sheets.Formats.Docx;

/// <summary>Styles, fonts, lists and settings of a document. Change a style in the word processor, and all that has it follows.</summary>
internal static class DocxStyles
{
    /// <summary>The face the sheet is set in. Where it is missing, the word processor takes the nearest of <see cref="OtherFaces"/>.</summary>
    public const string Face = "Atkinson Hyperlegible Next";

    private const string OtherFaces = "Atkinson Hyperlegible,Tahoma,Verdana,DejaVu Sans,Arial";

    // A language with its most usual country: spelling checkers go by both.
    private static readonly Dictionary<string, string> Countries = new(StringComparer.Ordinal)
    {
        ["en"] = "en-GB",
        ["de"] = "de-DE",
        ["fr"] = "fr-FR",
        ["es"] = "es-ES",
        ["it"] = "it-IT",
        ["nl"] = "nl-NL",
        ["da"] = "da-DK",
        ["sv"] = "sv-SE",
    };

    private static string Ink => Look.Light.Ink[1..];

    private static string Soft => Look.Light.Soft[1..];

    private static string Rule => Look.Light.Line[1..];

    /// <summary>Language of the sheet as a word processor names it (<c>de-DE</c>).</summary>
    public static string LanguageOf(SheetModel sheet) => Countries.GetValueOrDefault(sheet.Language, sheet.Language);

    /// <summary>Writes the styles.</summary>
    public static void WriteStyles(SheetModel sheet, DocxSize size, Stream stream)
    {
        double body = size.Body;
        using DocxXml xml = new(stream, "w:styles");
        xml.Open("w:docDefaults").Open("w:rPrDefault").Open("w:rPr")
            .Empty("w:rFonts", ("ascii", Face), ("hAnsi", Face), ("cs", Face))
            .Empty("w:color", ("val", Ink))
            .Empty("w:sz", ("val", HalfPoints(body))).Empty("w:szCs", ("val", HalfPoints(body)))
            .Empty("w:lang", ("val", LanguageOf(sheet)), ("eastAsia", "ja-JP"), ("bidi", "ar-SA"))
            .Close().Close()
            .Open("w:pPrDefault").Open("w:pPr").Empty("w:spacing", ("after", 0), ("line", 240), ("lineRule", "auto")).Close().Close()
            .Close();
        Paragraph(xml, "Normal", "Normal", null, new Form { IsDefault = true });
        Paragraph(xml, "Title", "Title", "Facts", new Form { Size = body * (sheet.IsCard ? 1.7 : 2.2), IsBold = true, KeepsNext = true });
        Paragraph(xml, "Subtitle", "Subtitle", "Facts", new Form { Size = body * 1.1, Colour = Soft, After = body * 0.4 });
        Form heading = new() { Size = body * 1.2, IsBold = true, Before = body * 0.6, After = body * 0.2, KeepsNext = true, Level = 0 };
        Paragraph(xml, "Heading1", "heading 1", "Normal", heading);
        Paragraph(xml, "Heading2", "heading 2", "Normal", heading with { Size = body * 1.1, Before = body * 0.5, Level = 1 });
        Paragraph(xml, "Facts", "Facts", null, new Form { Size = body * 1.1, After = body * 0.35, IsOwn = true });
        Paragraph(xml, "Key", "Key", null, new Form { Size = body * 0.9, Colour = Soft, After = body * 0.3, IsOwn = true });
        Paragraph(xml, "TableHead", "Table Head", null, new Form { Size = body * 0.75, Colour = Soft, KeepsNext = true, IsOwn = true });
        Paragraph(xml, "Count", "Count", null, new Form { IsBold = true, IsOwn = true });
        Paragraph(xml, "Steps", "Steps", null, new Form { IsOwn = true });
        Paragraph(xml, "Facing", "Facing", null, new Form { IsOwn = true });
        Paragraph(xml, "Note", "Note", null, new Form { Size = body * 0.92, Colour = Soft, IsOwn = true });
        Paragraph(xml, "Option", "Option", null, new Form { Size = body * 0.92, IsOwn = true });
        Paragraph(xml, "Diagram", "Diagram", null, new Form { Before = body * 0.3, IsOwn = true });
        Paragraph(xml, "Sign", "Sign", null, new Form { Size = body * 0.8, Before = body * 0.1, After = body * 0.1, IsOwn = true });
        Paragraph(xml, "End", "End", null, new Form { Size = 1, IsOwn = true });
        Paragraph(xml, "ListBullet", "List Bullet", null, new Form { HasBullet = true, Indent = body * 1.4, After = body * 0.1 });
        Paragraph(xml, "Footer", "footer", null, new Form { Size = sheet.IsLarge ? 11 : 8, Colour = Soft });
        xml.Open("w:style", ("type", "character"), ("default", 1), ("styleId", "DefaultParagraphFont"))
            .Empty("w:name", ("val", "Default Paragraph Font")).Empty("w:semiHidden").Close();
        xml.Open("w:style", ("type", "character"), ("styleId", "Strong"))
            .Empty("w:name", ("val", "Strong")).Empty("w:qFormat").Open("w:rPr").Empty("w:b").Empty("w:bCs").Close().Close();
        Tables(xml, body);
    }

    /// <summary>Writes the settings.</summary>
    public static void WriteSettings(SheetModel sheet, Stream stream)
    {
        using DocxXml xml = new(stream, "w:settings");
        xml.Open("w:compat")
            .Empty("w:compatSetting", ("name", "compatibilityMode"), ("uri", "http://schemas.microsoft.com/office/word"), ("val", "15"))
            .Close()
            .Empty("w:themeFontLang", ("val", LanguageOf(sheet)));
    }

    /// <summary>Writes what faces may stand in for ours.</summary>
    public static void WriteFonts(Stream stream)
    {
        using DocxXml xml = new(stream, "w:fonts");
        xml.Open("w:font", ("name", Face))
            .Empty("w:altName", ("val", OtherFaces))
            .Empty("w:charset", ("val", "00"))
            .Empty("w:family", ("val", "swiss"))
            .Empty("w:pitch", ("val", "variable"))
            .Close();
    }

    /// <summary>Writes the list of bullets.</summary>
    public static void WriteNumbering(DocxSize size, Stream stream)
    {
        using DocxXml xml = new(stream, "w:numbering");
        xml.Open("w:abstractNum", ("abstractNumId", 0)).Empty("w:multiLevelType", ("val", "singleLevel"))
            .Open("w:lvl", ("ilvl", 0)).Empty("w:start", ("val", 1)).Empty("w:numFmt", ("val", "bullet"))
            .Empty("w:lvlText", ("val", "•")).Empty("w:lvlJc", ("val", "left"))
            .Open("w:pPr").Empty("w:ind", ("left", DocxSize.Twips(size.Body * 1.4)), ("hanging", DocxSize.Twips(size.Body * 1.1))).Close()
            .Close().Close()
            .Open("w:num", ("numId", 1)).Empty("w:abstractNumId", ("val", 0)).Close();
    }

    private static int HalfPoints(double points) => (int)Math.Round(points * 2, MidpointRounding.AwayFromZero);

    private static void Paragraph(DocxXml xml, string id, string name, string? next, Form form)
    {
        if (form.IsDefault)
        {
            xml.Open("w:style", ("type", "paragraph"), ("default", 1), ("styleId", id));
        }
        else if (form.IsOwn)
        {
            xml.Open("w:style", ("type", "paragraph"), ("customStyle", 1), ("styleId", id));
        }
        else
        {
            xml.Open("w:style", ("type", "paragraph"), ("styleId", id));
        }

        xml.Empty("w:name", ("val", name));
        if (!form.IsDefault)
        {
            xml.Empty("w:basedOn", ("val", "Normal"));
        }

        if (next is not null)
        {
            xml.Empty("w:next", ("val", next));
        }

        xml.Empty("w:qFormat");
        xml.Open("w:pPr");
        if (form.KeepsNext)
        {
            xml.Empty("w:keepNext").Empty("w:keepLines");
        }

        if (form.HasBullet)
        {
            xml.Open("w:numPr").Empty("w:numId", ("val", 1)).Close();
        }

        xml.Empty("w:spacing", ("before", DocxSize.Twips(form.Before)), ("after", DocxSize.Twips(form.After)));
        if (form.Indent > 0)
        {
            xml.Empty("w:ind", ("left", DocxSize.Twips(form.Indent)), ("hanging", DocxSize.Twips(form.Indent * 0.8)));
        }

        if (form.Level is { } level)
        {
            xml.Empty("w:outlineLvl", ("val", level));
        }

        xml.Close();
        xml.Open("w:rPr");
        if (form.IsBold)
        {
            xml.Empty("w:b").Empty("w:bCs");
        }

        if (form.Colour is { } colour)
        {
            xml.Empty("w:color", ("val", colour));
        }

        if (form.Size is { } size)
        {
            xml.Empty("w:sz", ("val", HalfPoints(size))).Empty("w:szCs", ("val", HalfPoints(size)));
        }

        xml.Close().Close();
    }

    private static void Tables(DocxXml xml, double body)
    {
        string side = DocxSize.Twips(body * 0.35).ToString(CultureInfo.InvariantCulture);
        xml.Open("w:style", ("type", "table"), ("default", 1), ("styleId", "TableNormal"))
            .Empty("w:name", ("val", "Normal Table")).Empty("w:semiHidden")
            .Open("w:tblPr").Empty("w:tblInd", ("w", 0), ("type", "dxa")).Close().Close();
        xml.Open("w:style", ("type", "table"), ("customStyle", 1), ("styleId", "SectionTable"))
            .Empty("w:name", ("val", "Section Table")).Empty("w:basedOn", ("val", "TableNormal"))
            .Open("w:tblPr")
            .Open("w:tblBorders")
            .Empty("w:top", ("val", "single"), ("sz", 8), ("space", 0), ("color", Ink))
            .Empty("w:bottom", ("val", "single"), ("sz", 4), ("space", 0), ("color", Rule))
            .Empty("w:insideH", ("val", "single"), ("sz", 4), ("space", 0), ("color", Rule))
            .Close()
            .Open("w:tblCellMar")
            .Empty("w:top", ("w", DocxSize.Twips(body * 0.06)), ("type", "dxa"))
            .Empty("w:left", ("w", 0), ("type", "dxa"))
            .Empty("w:bottom", ("w", DocxSize.Twips(body * 0.06)), ("type", "dxa"))
            .Empty("w:right", ("w", side), ("type", "dxa"))
            .Close()
            .Close().Close();
    }

    /// <summary>What a paragraph style says; sizes in points.</summary>
    private sealed record Form
    {
        public bool IsDefault { get; init; }

        public bool IsOwn { get; init; }

        public double? Size { get; init; }

        public string? Colour { get; init; }

        public bool IsBold { get; init; }

        public double Before { get; init; }

        public double After { get; init; }

        public double Indent { get; init; }

        public bool HasBullet { get; init; }

        public bool KeepsNext { get; init; }

        public int? Level { get; init; }
    }
}
