namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Where everything of a sheet stands, before anything is drawn.</summary>
/// <param name="Shape">The paper.</param>
/// <param name="Size">The size it is printed in.</param>
/// <param name="Document">The root of its tags.</param>
/// <param name="Pages">Its pages.</param>
internal sealed record SheetLayout(PageShape Shape, PrintSize Size, Tag Document, IReadOnlyList<PlacedPage> Pages)
{
    // Above this, the smallest type saves no trip to the printer and only costs eyesight.
    private const int MostPagesToShrinkFor = 2;
    private const double LeastBodyOfMany = 10;

    /// <summary>
    /// Lays a sheet out in the largest size that needs no more pages than the smallest. What does not go on two pages even then is
    /// not printed in the smallest sizes, and runs over; nothing is ever left out.
    /// </summary>
    public static SheetLayout Of(SheetModel sheet)
    {
        IReadOnlyList<PrintSize> sizes = PrintSize.For(sheet);
        SheetLayout least = Least(sheet, sizes);
        if (least.Pages.Count > MostPagesToShrinkFor && !sheet.IsCard)
        {
            sizes = [.. sizes.Where(s => s.Body >= LeastBodyOfMany)];
            least = Least(sheet, sizes);
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

    // The last three of a ladder are the smallest, with the feet below and beside.
    private static SheetLayout Least(SheetModel sheet, IReadOnlyList<PrintSize> sizes)
        => sizes.TakeLast(3).Select(s => Of(sheet, s)).MinBy(l => l.Pages.Count)!;

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
