using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Scuff.Sheets;
using Tests.Prose;

namespace Tests.Sheets;

/// <summary>What Scuff writes as Markdown, read by a Markdown reader of others.</summary>
public sealed class MarkdownSheetFormatTests
{
    // with everything switched on that could make something of her words (but smileys, which are letters on every sheet)
    private static readonly MarkdownPipeline Reader = new MarkdownPipelineBuilder().UseAdvancedExtensions().UseEmojiAndSmiley(enableSmileys: false).UseAutoLinks().Build();

    // The plain reader knows tables and no HTML, as many places do where people paste.
    private static readonly MarkdownPipeline PlainReader = new MarkdownPipelineBuilder().UsePipeTables().DisableHtml().Build();

    public static TheoryData<string> Demo => [.. SeedTexts.Demo.Select(d => d.Name)];

    public static TheoryData<string> Hostile =>
    [
        "# no heading", "- no list", "+ no list", "* no list", "1. no list", "12) no list", "> no quote", "| no | cell |", "**no** _bold_ ~~gone~~",
        "[no](http://link.example)", "![no](picture.png)", "<b>no</b> <script>alert(1)</script> <!-- no -->", "http://link.example www.link.example me@link.example",
        "`no code`", "```", "---", "===", "&amp; &#38; &copy;", "\\*", ":smile: :-)", "$a$ ^b^ ~c~ {#id .class}", "    four spaces", "[^1] [ ] [x]",
        "a|b", "ends with #", "שלום *עולם*", "🌊 *sea*", "line\nbreak\r\n# and heading", "ends with \\", "2024-25: 3&4, 5&6; 7&8", "\\|", "|", "--- | ---", "++ins++ ==mark== \"\"x\"\"",
    ];

    [Fact]
    public void A_sheet_has_its_headings_in_order_and_a_table_for_each_section()
    {
        MarkdownDocument page = Markdown.Parse(SheetSamples.Draw(SheetSamples.Build(SheetSamples.Lantern), "markdown"), PlainReader);

        Assert.Equal(
            [
                "1 Tin Lantern", "2 Music", "2 Section 1: box with shuffles", "2 Section 2: rock, quarter, behind side cross",
                "2 Section 3: vine, kick ball change", "2 Section 4: rocking chair, scuff", "2 Tag “Lamps”, 4 counts",
                "2 On “Harbour Lights Out” by The Demo Band", "2 Ending",
            ],
            page.Descendants<HeadingBlock>().Select(h => $"{h.Level} {Words(h.Inline!)}").Where(h => h != "2 The walls"));
        Table[] tables = [.. page.Descendants<Table>()];
        Assert.Equal(5, tables.Length);
        Assert.Equal(
            [["Counts", "Steps", "Facing after"], ["1-2", "rock R back, recover L", "12:00"], ["3-4", "step R forward, pivot 1/4 left", "9:00"], ["5-6", "cross R over L, step L to side", "9:00"], ["7&8", "step R behind L, step L to side, cross R over L", "9:00"]],
            Rows(tables[1]));
        Assert.Equal(["Counts", "Steps"], Rows(tables[4])[0]);
        Assert.Contains(page.Descendants<ListItemBlock>(), i => Words(i) == "7&8, easier: triple step in place R");
        Assert.Contains(page.Descendants<ListItemBlock>(), i => Words(i) == "7&8, style: small steps; let the hip settle on the closing foot");
        Assert.Contains(page.Descendants<EmphasisInline>(), e => Words(e) == "9:00" && e.DelimiterCount == 2);
    }

    [Fact]
    public void A_phrased_dance_has_its_sections_below_its_parts()
    {
        MarkdownDocument page = Markdown.Parse(SheetSamples.Draw(SheetSamples.Build(SheetSamples.Phrased), "markdown"), PlainReader);

        Assert.Equal(
            ["2 Part A, 16 counts", "3 Section 1", "3 Section 2", "2 Part B, 16 counts", "3 Section 1", "3 Section 2"],
            page.Descendants<HeadingBlock>().Select(h => $"{h.Level} {Words(h.Inline!)}").SkipWhile(h => h != "2 Part A, 16 counts").Take(6));
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Words_come_out_as_the_words_they_are(string words)
    {
        string drawn = SheetSamples.Draw(SheetSamples.FullOf(words), "markdown");
        string said = string.Join(' ', words.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
        foreach (MarkdownPipeline reader in (MarkdownPipeline[])[Reader, PlainReader])
        {
            MarkdownDocument page = Markdown.Parse(drawn, reader);

            Assert.Equal(said, Words(page.Descendants<HeadingBlock>().First().Inline!));
            Assert.Equal([said, said, "4:30"], Rows(page.Descendants<Table>().First())[1]);
            Assert.Contains(page.Descendants<ListItemBlock>(), i => Words(i).EndsWith(": " + said, StringComparison.Ordinal));
            Assert.DoesNotContain(page.Descendants<ParagraphBlock>(), p => p.Parent is QuoteBlock);
            Assert.Empty(page.Descendants<LinkInline>());
            Assert.Empty(page.Descendants<AutolinkInline>());
            Assert.Empty(page.Descendants<HtmlInline>());
            Assert.Empty(page.Descendants<HtmlBlock>());
            Assert.Empty(page.Descendants<CodeInline>());
            Assert.Empty(page.Descendants<CodeBlock>());
            Assert.Empty(page.Descendants<ThematicBreakBlock>());
            Assert.All(page.Descendants<EmphasisInline>(), e => Assert.Equal(2, e.DelimiterCount));
            Assert.All(page.Descendants<ListBlock>(), l => Assert.False(l.IsOrdered));
            Assert.Equal(3, page.Descendants<Table>().Count());
        }
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_title_is_bold_before_its_words_and_nothing_else(string words)
    {
        SheetModel full = SheetSamples.FullOf(words);
        SheetSection section = full.Parts[0].Sections[0];
        section = section with { Lines = [section.Lines[0] with { Title = words }] };
        string drawn = SheetSamples.Draw(full with { Parts = [new SheetPart("", [section])], Tags = default, Moves = default }, "markdown");
        string said = string.Join(' ', words.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
        foreach (MarkdownPipeline reader in (MarkdownPipeline[])[Reader, PlainReader])
        {
            Table table = Markdown.Parse(drawn, reader).Descendants<Table>().Single();

            Assert.Equal([said, said + " · " + said, "4:30"], Rows(table)[1]);
            Assert.Contains(table.Descendants<EmphasisInline>(), e => e.DelimiterCount == 2 && Words(e) == said);
            Assert.Empty(table.Descendants<HtmlInline>());
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void Every_line_of_a_club_dance_is_a_row(string name)
    {
        SheetModel sheet = SheetSamples.Build(SeedTexts.Demo.First(d => d.Name == name).Text);
        MarkdownDocument page = Markdown.Parse(SheetSamples.Draw(sheet, "markdown"), PlainReader);

        Assert.Equal(
            sheet.Parts.SelectMany(p => p.Sections).Concat(sheet.Tags).Concat(sheet.Moves).SelectMany(s => s.Lines).Select(l => (l.Counts, l.Words)),
            page.Descendants<Table>().SelectMany(t => Rows(t).Skip(1)).Select(r => (r[0], r[1])));
    }

    private static string[][] Rows(Table table) =>
        [.. table.OfType<TableRow>().Select(r => r.OfType<TableCell>().Select(Words).ToArray())];

    private static string Words(MarkdownObject block) => string.Concat(block.Descendants().OfType<Inline>().Select(i => i switch
    {
        LiteralInline literal => literal.Content.ToString(),
        HtmlEntityInline entity => entity.Transcoded.ToString(),
        LineBreakInline => " ",
        _ => "",
    }));
}
