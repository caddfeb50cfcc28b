namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Where everything of a sheet stands, before anything is drawn.</summary>
/// <param name="Shape">The paper.</param>
/// <param name="Size">The size it is printed in.</param>
/// <param name="Document">The root of its tags.</param>
/// <param name="Pages">Its pages.</param>
internal sealed record SheetLayout(PageShape Shape, PrintSize Size, Tag Document, IReadOnlyList<PlacedPage> Pages)
{
    // Above this, smaller type saves no trip to the printer and only costs eyesight.
    private const int MostPagesToShrinkFor = 2;

    /// <summary>
    /// Lays a sheet out in the largest size that needs no more pages than the smallest. What does not go on two pages even then is
    /// printed in the largest size and runs over; nothing is ever left out.
    /// </summary>
    public static SheetLayout Of(SheetModel sheet)
    {
        IReadOnlyList<PrintSize> sizes = PrintSize.For(sheet);
        // the last two are the smallest, with the feet below and beside
        SheetLayout least = sizes.TakeLast(2).Select(s => Of(sheet, s)).MinBy(l => l.Pages.Count)!;
        if (least.Pages.Count > MostPagesToShrinkFor && !sheet.IsCard)
        {
            return Of(sheet, sizes[0]);
        }

        foreach (PrintSize size in sizes)
        {
            SheetLayout layout = Of(sheet, size);
            if (layout.Pages.Count <= least.Pages.Count)
            {
                return layout;
            }
        }

        return least;
    }

    /// <summary>Lays a sheet out in one size.</summary>
    public static SheetLayout Of(SheetModel sheet, PrintSize size)
    {
        PageShape shape = PageShape.Of(sheet.Paper, size.Columns);
        SheetComposer composer = new(sheet, shape, size);
        PagePlacer placer = new(shape);
        foreach (Block block in composer.Compose())
        {
            placer.Place(block);
        }

        List<PlacedPage> pages = placer.Finish();
        return new SheetLayout(shape, size, composer.Document, [.. pages.Select((p, i) => composer.WithFoot(p, i + 1, pages.Count))]);
    }
}
