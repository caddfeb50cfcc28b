using Scuff.Sheets.Formats.Docx;

namespace Scuff.Sheets.Formats;

/// <summary>A document for a word processor, in which everything can be edited: real styles, real tables, drawn pictures.</summary>
public sealed class DocxSheetFormat : ISheetFormat
{
    public string Name => "docx";

    public string Extension => ".docx";

    public string MediaType => "application/vnd.openxmlformats-officedocument.wordprocessingml.document";

    public bool IsText => false;

    public void Write(SheetModel sheet, Stream stream) => DocxPackage.Write(sheet, DocxSize.Of(sheet), stream);
}
