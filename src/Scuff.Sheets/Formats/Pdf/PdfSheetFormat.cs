namespace Scuff.Sheets.Formats.Pdf;

/// <summary>
/// Pages to print: A4 or Letter, tagged for readers that speak, the type in the file. The same sheet gives the same bytes, on every
/// machine and every day.
/// </summary>
public sealed class PdfSheetFormat : ISheetFormat
{
    public string Name => "pdf";

    public string Extension => ".pdf";

    public string MediaType => "application/pdf";

    public bool IsText => false;

    public void Write(SheetModel sheet, Stream stream) => stream.Write(PdfPen.Draw(sheet, SheetLayout.Of(sheet)));
}
