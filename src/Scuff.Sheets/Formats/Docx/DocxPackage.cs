using System.IO.Compression;

namespace Scuff.Sheets.Formats.Docx;

/// <summary>Puts the parts of a document into their package: the same bytes for the same sheet.</summary>
internal static class DocxPackage
{
    private const string Namespace = "application/vnd.openxmlformats-officedocument.wordprocessingml.";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

    // A package has no need of a time, but its form has: the earliest it can say.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes the document.</summary>
    /// <param name="sheet">Its content.</param>
    /// <param name="size">How large it is printed.</param>
    /// <param name="stream">Where it goes; not closed.</param>
    public static void Write(SheetModel sheet, DocxSize size, Stream stream)
    {
        using ZipArchive package = new(stream, ZipArchiveMode.Create, leaveOpen: true);
        Add(package, "[Content_Types].xml", WriteTypes);
        Add(package, "_rels/.rels", s => WriteRelations(
            s,
            ("rId1", Relations + "officeDocument", "word/document.xml"),
            ("rId2", "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties", "docProps/core.xml"),
            ("rId3", Relations + "extended-properties", "docProps/app.xml")));
        Add(package, "docProps/core.xml", s => WriteCore(sheet, s));
        Add(package, "docProps/app.xml", WriteApp);
        Add(package, "word/document.xml", s =>
        {
            using DocxXml xml = new(s, "w:document", "r", "a", "wp", "wpg", "wps", "mc");
            new DocxBody(xml, sheet, size).Draw();
        });
        Add(package, "word/_rels/document.xml.rels", s => WriteRelations(
            s,
            ("rId1", Relations + "styles", "styles.xml"),
            ("rId2", Relations + "settings", "settings.xml"),
            ("rId3", Relations + "fontTable", "fontTable.xml"),
            ("rId4", Relations + "numbering", "numbering.xml"),
            (DocxBody.FooterId, Relations + "footer", "footer1.xml")));
        Add(package, "word/styles.xml", s => DocxStyles.WriteStyles(sheet, size, s));
        Add(package, "word/settings.xml", s => DocxStyles.WriteSettings(sheet, s));
        Add(package, "word/fontTable.xml", DocxStyles.WriteFonts);
        Add(package, "word/numbering.xml", s => DocxStyles.WriteNumbering(size, s));
        Add(package, "word/footer1.xml", s => DocxFooter.Write(sheet, size, s));
    }

    private static void Add(ZipArchive package, string name, Action<Stream> write)
    {
        ZipArchiveEntry entry = package.CreateEntry(name, CompressionLevel.Optimal);
        entry.LastWriteTime = NoTime;
        using Stream stream = entry.Open();
        write(stream);
    }

    private static void WriteTypes(Stream stream)
    {
        using DocxXml xml = new(stream, "ct:Types");
        xml.Empty("ct:Default", ("Extension", "rels"), ("ContentType", "application/vnd.openxmlformats-package.relationships+xml"));
        xml.Empty("ct:Default", ("Extension", "xml"), ("ContentType", "application/xml"));
        foreach ((string part, string type) in ((string, string)[])
        [
            ("/word/document.xml", Namespace + "document.main+xml"),
            ("/word/styles.xml", Namespace + "styles+xml"),
            ("/word/settings.xml", Namespace + "settings+xml"),
            ("/word/fontTable.xml", Namespace + "fontTable+xml"),
            ("/word/numbering.xml", Namespace + "numbering+xml"),
            ("/word/footer1.xml", Namespace + "footer+xml"),
            ("/docProps/core.xml", "application/vnd.openxmlformats-package.core-properties+xml"),
            ("/docProps/app.xml", "application/vnd.openxmlformats-officedocument.extended-properties+xml"),
        ])
        {
            xml.Empty("ct:Override", ("PartName", part), ("ContentType", type));
        }
    }

    private static void WriteRelations(Stream stream, params ReadOnlySpan<(string Id, string Type, string Target)> relations)
    {
        using DocxXml xml = new(stream, "rel:Relationships");
        foreach ((string id, string type, string target) in relations)
        {
            xml.Empty("rel:Relationship", ("Id", id), ("Type", type), ("Target", target));
        }
    }

    private static void WriteCore(SheetModel sheet, Stream stream)
    {
        using DocxXml xml = new(stream, "cp:coreProperties", "dc");
        xml.Words("dc:title", sheet.Title);
        if (sheet.Author.Length > 0)
        {
            xml.Words("dc:creator", sheet.Author);
        }

        xml.Words("dc:description", string.Join(' ', sheet.Facts));
        xml.Words("dc:language", DocxStyles.LanguageOf(sheet));
    }

    private static void WriteApp(Stream stream)
    {
        using DocxXml xml = new(stream, "ep:Properties");
        xml.Words("ep:Application", "Scuff");
    }
}
