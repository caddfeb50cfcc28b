namespace Scuff.Sheets.Formats.Docx;

/// <summary>How large a document is printed. Lengths are points.</summary>
/// <param name="Body">Size of the type of the steps.</param>
/// <param name="Pictures">Scale of the foot diagrams.</param>
/// <param name="Columns">How many columns there are.</param>
/// <param name="Width">Width of the paper.</param>
/// <param name="Height">Height of the paper.</param>
internal sealed record DocxSize(double Body, double Pictures, int Columns, double Width, double Height)
{
    /// <summary>What is left white at either side: room for a thumb and a hole.</summary>
    public const double Margin = 42;

    /// <summary>What is left white at the top and at the bottom, where the line at the foot of the page stands in it.</summary>
    public const double Edge = 34;

    /// <summary>Between two columns.</summary>
    public const double Gutter = 22;

    // An average letter in parts of the size. The face named in DocxStyles takes 0.5 over the sheets of the demo club, but is on few
    // machines; the broadest of those that may stand in for it (DejaVu Sans) takes 0.56, and with it the sheet must fit as well.
    private const double Letter = 0.56;

    // Distance of lines in parts of the size, as word processors set these faces; and the little space about a row of a table.
    private const double Line = 1.2;
    private const double Row = 0.2;

    // letters of the longest facing, "10:30", with the clock before it
    private const int UsualFacing = 8;

    // How much of the room is counted on: a word processor breaks a line or two elsewhere. (With 1, eight of the 224 sheets of the demo club
    // took a page more than they should in LibreOffice with DejaVu Sans; with this, none that fits the smallest size below.)
    private const double Sure = 0.975;

    /// <summary>Breadth of the content.</summary>
    public double Breadth => Width - (2 * Margin);

    /// <summary>Breadth of the content in twentieths of a point.</summary>
    public int BreadthTwips => Twips(Breadth);

    /// <summary>Breadth of a column.</summary>
    public double ColumnWidth => (Breadth - ((Columns - 1) * Gutter)) / Columns;

    /// <summary>A length in twentieths of a point.</summary>
    public static int Twips(double points) => (int)Math.Round(points * 20, MidpointRounding.AwayFromZero);

    /// <summary>
    /// The size for a sheet: the largest with which it takes no more pages than with the smallest, as far as that can be told without
    /// setting it; a word processor sets it anew, and whoever opens it may change it.
    /// </summary>
    public static DocxSize Of(SheetModel sheet)
    {
        (double width, double height) = sheet.Paper == Paper.Letter ? (612.0, 792.0) : (595.3, 841.9);
        (double Body, double Pictures, int Columns)[] steps = (sheet.IsCard, sheet.IsLarge) switch
        {
            (true, true) => [(24, 1, 1), (22, 1, 1), (20, 1, 1), (18, 1, 1), (16, 1, 1), (16, 1, 2), (14, 1, 2)],
            (true, false) => [(16, 1, 1), (15, 1, 1), (14, 1, 1), (13, 1, 1), (12, 1, 1), (11, 1, 1), (12, 1, 2), (11, 1, 2), (10, 1, 2), (9, 1, 2)],

            (false, false) when sheet.IsNotice =>
                [(18, 1, 1), (17, 1, 1), (16, 1, 1), (15, 1, 1), (14, 1, 1), (13, 1, 1), (12, 1, 1), (11, 1, 1), (10.5, 1, 1), (10, 1, 1), (9.5, 1, 1), (9, 1, 1), (8.5, 1, 1)],

            // large print begins at 16 points: the usual definition of libraries for the blind
            (false, true) => [(16, 1.06, 1)],
            _ =>
            [
                (11, 1, 1), (10.5, 1, 1), (10.5, 0.9, 1), (10, 0.9, 1), (10, 0.8, 1), (9.5, 0.8, 1), (9.5, 0.72, 1),
                (9.5, 0.66, 1), (9, 0.66, 1), (9, 0.6, 1), (8.5, 0.6, 1), (8.5, 0.55, 1), (8, 0.55, 1), (8, 0.5, 1),
                (8, 0.45, 1), (8, 0.42, 1), (8, 0.38, 1),
            ],
        };
        List<DocxSize> sizes = [.. steps.Select(s => new DocxSize(s.Body, s.Pictures, s.Columns, width, height))];
        int least = sizes[^1].PagesOf(sheet);
        return sizes.First(s => s.PagesOf(sheet) <= least);
    }

    // A section is not parted from its feet, so what does not fit leaves the rest of its column empty.
    private int PagesOf(SheetModel sheet)
    {
        // a notice is one long table, where what each row is off adds up
        double room = (Height - (2 * Edge)) * Sure * (sheet.IsNotice ? Sure : 1);
        int columns = 1;
        double depth = 0;
        foreach ((double block, bool isWhole) in Blocks(sheet))
        {
            if (depth + block > room && isWhole && depth > 0)
            {
                columns++;
                depth = 0;
            }

            depth += block;
            int more = (int)(depth / room);
            columns += more;
            depth -= more * room;
        }

        return (columns + Columns - 1) / Columns;
    }

    private IEnumerable<(double Depth, bool IsWhole)> Blocks(SheetModel sheet)
    {
        double beside = ColumnWidth - (Columns > 1 ? 0 : 140);
        double titles = Body * (sheet.Particulars.Count > 0 ? 4.5 + Line : 4.5);
        double head = titles + Lines(string.Join(' ', sheet.Facts), beside) + Lines(sheet.Key, beside);
        double walls = sheet.WallPicture is { } picture ? Math.Min(130, picture.Height) + Body : 0;

        // what follows the heading begins beside the picture of the walls when that is deeper
        bool isBeside = Columns == 1 && head < walls;
        double words = Words(sheet, isBeside ? beside : ColumnWidth);
        yield return (Columns > 1 ? head + walls : isBeside ? Math.Max(head, walls - words) : head, false);
        yield return (words, false);
        foreach (SheetSection section in sheet.Parts.SelectMany(p => p.Sections).Concat(sheet.Tags).Concat(sheet.Moves))
        {
            double depth = Heading + (DocxBody.HasHead(section) ? 0.95 * Body : 0) + section.Lines.Sum(l => DepthOf(l, StepsWidth - WideFacing(section))) + Depth(section.Notes, StepsWidth);
            depth += section.Diagram is { } diagram ? (diagram.Height * Math.Min(Pictures, ColumnWidth / diagram.Width)) + (0.4 * Body) : 0;
            yield return (depth, section.Lines.Count <= DocxBody.MostKeptRows);
        }

        if (sheet.DiagramKey.Count > 0)
        {
            double width = (ColumnWidth / DocxBody.KeyColumns) - (sheet.DiagramKey.Max(s => s.Picture.Width) * DocxBody.SignScale) - (1.2 * Body);
            yield return (Heading + sheet.DiagramKey.Chunk(DocxBody.KeyColumns).Sum(row => row.Max(DepthOf) + (0.2 * Body)), true);

            double DepthOf(SheetSign sign) => Math.Max(
                sign.Picture.Height * DocxBody.SignScale,
                Math.Ceiling(sign.Words.Length * Letter * 0.8 * Body / width) * Line * 0.8 * Body);
        }
    }

    private double Heading => 2.2 * Body;

    // All words outside the sections; those before the sections may stand in a narrower width.
    private double Words(SheetModel sheet, double width)
    {
        double depth = sheet.Parts.Count(p => p.Heading.Length > 0) * 3 * Body;
        depth += sheet.Tracks.Count > 0 ? Heading + sheet.Tracks.Sum(t => Lines(t.Name + " " + t.Facts, width) + Depth(t.Notes, StepsWidth)) : 0;
        depth += sheet.Sequence.Count > 0 ? Heading + Lines(string.Join(" · ", sheet.Sequence), width) : 0;
        foreach (ValueList<SheetBreak> breaks in (ValueList<SheetBreak>[])[sheet.Breaks, sheet.Endings, .. sheet.Tracks.Select(t => t.Breaks)])
        {
            depth += breaks.Count > 0 ? Heading + breaks.Sum(b => Lines(b.Where + ": " + b.What, ColumnWidth - 20)) : 0;
        }

        foreach (ValueList<string> sentences in (ValueList<string>[])[sheet.Changes, sheet.Cautions])
        {
            depth += sentences.Count > 0 ? Heading + sentences.Sum(s => Lines(s, width - 20)) : 0;
        }

        return depth + (sheet.Notes.Count > 0 ? Heading + Depth(sheet.Notes, StepsWidth) : 0);
    }

    private double DepthOf(SheetLine line, double width) => (Row * Body) + Lines(line.Title + line.Between + line.Words, width) + Depth(line.Notes, width)
        + line.Options.Sum(o => Lines(o.Name + ", " + o.Counts + ": " + o.Words, width) * 0.92);

    private double StepsWidth => ColumnWidth - (9 * Body);

    /// <summary>What the column of facings needs beyond what a facing takes, where it holds words such as a level.</summary>
    public double WideFacing(SheetSection section) => Math.Max(0, section.Lines.Select(l => l.Facing?.Length ?? 0).DefaultIfEmpty(0).Max() - UsualFacing) * Letter * Body;

    private double Depth(ValueList<SheetNote> notes, double width) => notes.Sum(n => Lines(n.Kind + ": " + n.Words, width) * 0.92);

    private double Lines(string words, double width) => words.Length == 0
        ? 0
        : Math.Ceiling(words.Length * Letter * Body / Math.Max(width, 60)) * Line * Body;
}
