namespace Scuff.Sheets.Formats;

/// <summary>
/// A way to draw a sheet. A class that implements it, with a constructor without arguments, is found and offered; no list names it.
/// </summary>
public interface ISheetFormat
{
    /// <summary>Its word (<c>html</c>).</summary>
    string Name { get; }

    /// <summary>Extension of its files, with the dot.</summary>
    string Extension { get; }

    /// <summary>Its media type.</summary>
    string MediaType { get; }

    /// <summary>Whether it is text (in UTF-8), which a terminal can show.</summary>
    bool IsText { get; }

    /// <summary>Draws the sheet.</summary>
    /// <param name="sheet">Finished content.</param>
    /// <param name="stream">Where the drawing goes; not closed.</param>
    void Write(SheetModel sheet, Stream stream);
}
