namespace Scuff.Sheets;

/// <summary>
/// The caller's card: what a caller who knows the dance looks at between two calls. It has one side, so it keeps the order of the
/// figures, where each section ends facing, and every place where the pattern breaks; it explains nothing.
/// </summary>
internal static class CardBuilder
{
    /// <summary>The card of a sheet.</summary>
    public static SheetModel Of(SheetModel sheet) => sheet with
    {
        IsCard = true,
        Key = "",
        Particulars = [],
        Cautions = [],
        Changes = [],
        DiagramKey = [],
        PageSign = null,
        Parts = sheet.Parts.Select(p => p with { Sections = p.Sections.Select(Of).ToValueList() }).ToValueList(),
        Tags = sheet.Tags.Select(Of).ToValueList(),
        Tracks = sheet.Tracks.Select(t => t with { Notes = [] }).ToValueList(),
        Moves = [],
        Notes = [],
    };

    // Lines that turn keep their facing too: that is where a floor goes astray.
    private static SheetSection Of(SheetSection section) => section with
    {
        Lines = section.Lines
            .Select((line, i) => line with
            {
                Facing = i == section.Lines.Count - 1 || line.Turns ? line.Facing : null,
                Notes = [],
                Options = [],
            })
            .ToValueList(),
        Notes = [],
        Diagram = null,
    };
}
