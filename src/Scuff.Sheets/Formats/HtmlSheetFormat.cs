using Scuff.Sheets.Formats.Html;

namespace Scuff.Sheets.Formats;

/// <summary>
/// A page that stands alone: no outside file, no script. Counts, steps and facing of a section are a real table, so that a screen
/// reader can walk it; print turns everything to ink.
/// </summary>
public sealed class HtmlSheetFormat : ISheetFormat
{
    public string Name => "html";

    public string Extension => ".html";

    public string MediaType => "text/html; charset=utf-8";

    public bool IsText => true;

    public void Write(SheetModel sheet, Stream stream)
    {
        using StreamWriter writer = TextOutput.Open(stream);
        new HtmlPage(writer, sheet).Draw();
    }
}
