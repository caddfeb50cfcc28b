using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats.Pdf;
using Scuff.Sheets.Languages;
using Tests.Prose;

namespace Tests.Sheets.Pdf;

public sealed class SheetLayoutTests
{
    public static TheoryData<string> Demo => PdfSamples.Demo;

    public static TheoryData<string> Hard => [.. PdfSamples.Hard().Select(h => h.Name)];

    [Theory]
    [MemberData(nameof(Demo))]
    public void Everything_of_a_demo_dance_stands_within_the_margins_and_on_nothing_else(string name)
    {
        foreach (SheetChoices way in PdfSamples.Ways)
        {
            Judge(PdfSamples.Layout(name, way), $"{name}, {way.Paper}, large {way.IsLarge}, card {way.IsCard}");
        }
    }

    [Theory]
    [MemberData(nameof(Hard))]
    public void Everything_of_a_hard_sheet_stands_within_the_margins_and_on_nothing_else(string name)
    {
        SheetModel sheet = PdfSamples.Hard().Single(h => h.Name == name).Sheet;
        foreach (SheetChoices way in PdfSamples.Ways)
        {
            Judge(SheetLayout.Of(sheet with { Paper = way.Paper, IsLarge = way.IsLarge, IsCard = way.IsCard }), $"{name}, {way.Paper}, large {way.IsLarge}, card {way.IsCard}");
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void Everything_of_a_lesson_plan_stands_within_the_margins_and_on_nothing_else(string name)
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(SeedTexts.Demo.Single(d => d.Name == name).Text));
        foreach (SheetChoices way in PdfSamples.Ways.Where(w => !w.IsCard))
        {
            LessonPlan plan = analysis.Lesson(new LessonOptions { Minutes = 30, ForKnees = true, ForBeginners = true });
            Judge(SheetLayout.Of(LessonSheet.Of(analysis, plan, true, way)), $"the plan of {name}, {way.Paper}, large {way.IsLarge}");
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void A_caller_s_card_of_a_demo_dance_has_one_side(string name)
    {
        foreach (SheetChoices way in PdfSamples.Ways.Where(w => w is { IsCard: true, IsLarge: false }))
        {
            Assert.Single(PdfSamples.Layout(name, way).Pages);
        }
    }

    [Theory]
    [InlineData(2, 1)]
    [InlineData(4, 1)]
    [InlineData(6, 2)]
    [InlineData(8, 2)]
    [InlineData(16, 4)]
    public void So_many_eights_go_on_so_many_pages(int eights, int pages)
    {
        foreach (string language in SheetLanguage.Codes)
        {
            foreach (Paper paper in Enum.GetValues<Paper>())
            {
                SheetLayout layout = SheetLayout.Of(PdfSamples.Build(PdfSamples.Eights(eights), new SheetChoices { Paper = paper, Language = language }));

                Assert.True(layout.Pages.Count <= pages, $"{eights} eights in {language} on {paper} take {layout.Pages.Count} pages");
                Judge(layout, $"{eights} eights in {language} on {paper}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void An_ordinary_demo_dance_of_32_counts_goes_on_one_page_and_one_of_64_on_two(string name)
    {
        foreach (string language in SheetLanguage.Codes)
        {
            SheetModel sheet = PdfSamples.Club(name, new SheetChoices { Language = language });
            int counted = sheet.Parts.Sum(p => p.Sections.Count);
            SheetLayout layout = SheetLayout.Of(sheet);

            Assert.True(layout.Pages.Count <= (counted <= 4 ? 1 : counted <= 8 ? 2 : 3), $"{name} in {language} takes {layout.Pages.Count} pages");
            Judge(layout, $"{name} in {language}");
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void A_heading_stands_with_what_it_heads(string name)
    {
        foreach (SheetChoices way in PdfSamples.Ways.Where(w => !w.IsCard))
        {
            SheetLayout layout = PdfSamples.Layout(name, way);
            foreach (PlacedPage page in layout.Pages)
            {
                Assert.False(Content(page).Last().Owner!.Name.StartsWith('H'), $"{name}: a heading ends a page");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void A_section_that_fits_on_a_page_is_not_cut(string name)
    {
        foreach (SheetChoices way in PdfSamples.Ways)
        {
            SheetLayout layout = PdfSamples.Layout(name, way);
            IEnumerable<IGrouping<Tag, int>> tables = layout.Pages
                .SelectMany((page, i) => page.Boxes.Select(b => (Table: TableOf(b), Page: i)))
                .Where(t => t.Table is not null)
                .GroupBy(t => t.Table!, t => t.Page);

            Assert.All(tables, t => Assert.Single(t.Distinct()));
        }
    }

    [Fact]
    public void The_head_of_the_columns_stands_again_where_a_table_goes_on()
    {
        SheetModel sheet = PdfSamples.Hard().Single(h => h.Name == "a hundred options on a line").Sheet;

        SheetLayout layout = SheetLayout.Of(sheet);

        Assert.True(layout.Pages.Count > 2, "the table was to be longer than a page");
        foreach (PlacedPage page in layout.Pages.Where(p => p.Boxes.Any(b => TableOf(b) is not null)))
        {
            Assert.Single(page.Boxes.OfType<PageBox.Type>(), t => string.Concat(t.Line.Runs.Select(r => r.Words)).Trim() == sheet.Labels.FacingAfter);
        }
    }

    [Fact]
    public void The_heads_of_counts_and_steps_stand_apart()
    {
        SheetModel sheet = PdfSamples.Build(PdfSamples.Eights(2));
        SheetLayout layout = SheetLayout.Of(sheet with { Labels = sheet.Labels with { Counts = "Tiempos", Steps = "Pasos" } });

        PageBox.Type[] heads = [.. layout.Pages[0].Boxes.OfType<PageBox.Type>().Where(t => t.Owner is { Name: "TH", Scope: "Column" })];

        Assert.InRange(heads[1].X - heads[0].X - heads[0].Width, 0.9 * layout.Size.Body, 2 * layout.Size.Body);
    }

    [Fact]
    public void A_short_dance_is_printed_in_the_largest_size_and_a_full_one_in_a_smaller()
    {
        SheetModel small = PdfSamples.Build(PdfSamples.Eights(1));
        SheetModel full = PdfSamples.Build(PdfSamples.Eights(4));

        Assert.Equal(PrintSize.For(small)[0], SheetLayout.Of(small).Size);
        Assert.True(SheetLayout.Of(full).Size.Body < PrintSize.For(full)[0].Body);
        Assert.All(PrintSize.For(full), s => Assert.InRange(s.Body, 9, 11));
    }

    [Fact]
    public void Large_print_has_no_type_of_steps_below_16_points()
    {
        SheetModel large = PdfSamples.Build(PdfSamples.Eights(8), new SheetChoices { IsLarge = true });

        Assert.InRange(SheetLayout.Of(large).Size.Body, 16, 30);
    }

    private static IEnumerable<PageBox> Content(PlacedPage page) => page.Boxes.Where(b => b.Owner is not null);

    private static Tag? TableOf(PageBox box) => box.Owner?.Path.FirstOrDefault(t => t.Name == "Table");

    // A tenth of a point is less than a printer's dot.
    private static void Judge(SheetLayout layout, string what)
    {
        PageShape shape = layout.Shape;
        for (int p = 0; p < layout.Pages.Count; p++)
        {
            PageBox[] boxes = [.. layout.Pages[p].Boxes.OrderBy(b => b.Y)];
            for (int i = 0; i < boxes.Length; i++)
            {
                PageBox box = boxes[i];
                bool isInside = box.X >= PageShape.Margin - 0.1
                    && box.Y >= PageShape.Top - 0.1
                    && box.X + box.Width <= shape.Width - PageShape.Margin + 0.1
                    && box.Y + box.Height <= shape.Height - PageShape.Top + 0.1;
                Assert.True(isInside, $"{what}, page {p + 1}: outside the margins: {Told(box)}");
                for (int j = i + 1; j < boxes.Length && boxes[j].Y < box.Y + box.Height - 0.1; j++)
                {
                    PageBox other = boxes[j];
                    bool overlaps = box.X < other.X + other.Width - 0.1 && other.X < box.X + box.Width - 0.1 && box.Height > 0.1 && other.Height > 0.1;
                    Assert.False(overlaps, $"{what}, page {p + 1}: one on the other: {Told(box)} and {Told(other)}");
                }
            }
        }
    }

    private static string Told(PageBox box) => box is PageBox.Type type
        ? $"“{string.Concat(type.Line.Runs.Select(r => r.Words))}” at {box.X:F1}, {box.Y:F1}"
        : $"{box.GetType().Name} at {box.X:F1}, {box.Y:F1}, {box.Width:F1} by {box.Height:F1}";
}
