namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Puts strips onto pages: blocks whole where they fit on a page, headings with what they head.</summary>
/// <param name="shape">The paper.</param>
internal sealed class PagePlacer(PageShape shape)
{
    private readonly List<List<PageBox>> _pages = [[]];
    private int _column;
    private double _y = PageShape.Top;
    private bool _headStands;

    private bool IsAtTop => _y <= PageShape.Top;

    private double Room => shape.Bottom - _y;

    /// <summary>Puts a block below what is there already.</summary>
    public void Place(Block block)
    {
        if (!Fits(block, 0, block.Slices.Count) && !IsAtTop && WouldFit(block, 0, block.Slices.Count))
        {
            Next();
        }

        bool isBegun = false;
        for (int i = 0; i < block.Slices.Count;)
        {
            int end = i;
            while (end < block.Slices.Count - 1 && block.Slices[end].KeepsNext)
            {
                end++;
            }

            end++;
            if (!Fits(block, i, end) && !IsAtTop && WouldFit(block, i, end))
            {
                Next();
            }

            for (; i < end; i++)
            {
                if (!Fits(block, i, i + 1) && !IsAtTop)
                {
                    Next();
                }

                if (block.Slices[i].IsOfTable)
                {
                    if (!_headStands && block.Head is not null)
                    {
                        Put(block.Head(isBegun));
                        _headStands = true;
                    }

                    isBegun = true;
                }

                Put(block.Slices[i]);
            }
        }
    }

    /// <summary>The pages, each in the order of reading.</summary>
    public List<PlacedPage> Finish() => [.. _pages.Select(p => new PlacedPage([.. p.OrderBy(b => b.Turn)]))];

    private bool Fits(Block block, int from, int to) => HeightOf(block, from, to, IsAtTop, _headStands) <= Room + 0.01;

    private bool WouldFit(Block block, int from, int to) => HeightOf(block, from, to, isAtTop: true, headStands: false) <= shape.Depth + 0.01;

    private static double HeightOf(Block block, int from, int to, bool isAtTop, bool headStands)
    {
        double height = 0;
        bool needsHead = block.Head is not null && !headStands;
        for (int i = from; i < to; i++)
        {
            if (needsHead && block.Slices[i].IsOfTable)
            {
                Slice head = block.Head!(true);
                height += head.Gap + head.Height;
                needsHead = false;
            }

            height += (isAtTop && height == 0 ? 0 : block.Slices[i].Gap) + block.Slices[i].Height;
        }

        return height;
    }

    private void Put(Slice slice)
    {
        _y += IsAtTop ? 0 : slice.Gap;
        _pages[^1].AddRange(slice.Boxes.Select(b => b with { X = b.X + shape.ColumnX(_column), Y = b.Y + _y }));
        _y += slice.Height;
    }

    private void Next()
    {
        _y = PageShape.Top;
        _headStands = false;
        _column++;
        if (_column == shape.Columns)
        {
            _column = 0;
            _pages.Add([]);
        }
    }
}
