namespace Scuff.Sheets.Formats.Docx;

/// <summary>The line at the foot of a page: title, version and date to the left, the number of the page to the right.</summary>
internal static class DocxFooter
{
    /// <summary>Writes it.</summary>
    public static void Write(SheetModel sheet, DocxSize size, Stream stream)
    {
        using DocxXml xml = new(stream, "w:ftr");
        xml.Open("w:p").Open("w:pPr").Empty("w:pStyle", ("val", "Footer"))
            .Open("w:tabs").Empty("w:tab", ("val", "right"), ("pos", size.BreadthTwips)).Close().Close();
        DocxBody.Run(xml, sheet.Edition.Length > 0 ? sheet.Title + " · " + sheet.Edition : sheet.Title);
        xml.Open("w:r").Empty("w:tab").Close();
        string template = sheet.Labels.PageOf;
        int at = 0;
        foreach ((string mark, string field) in (ReadOnlySpan<(string, string)>)[("{0}", "PAGE"), ("{1}", "NUMPAGES")])
        {
            int found = template.IndexOf(mark, at, StringComparison.Ordinal);
            if (found >= 0)
            {
                DocxBody.Run(xml, template[at..found]);
                xml.Open("w:fldSimple", ("instr", $" {field} "));
                DocxBody.Run(xml, "1");
                xml.Close();
                at = found + mark.Length;
            }
        }

        DocxBody.Run(xml, template[at..]);
        xml.Close();
    }
}
