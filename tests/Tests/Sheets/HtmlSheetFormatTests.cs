using System.Text.RegularExpressions;
using System.Xml.Linq;
using Scuff.Sheets;
using Scuff.Sheets.Formats;

namespace Tests.Sheets;

public sealed class HtmlSheetFormatTests
{
    private const string Evil = "<script>alert('x')</script> & \" onload=\"x\" </style></title> ]]>";

    [Fact]
    public void Nothing_that_is_written_can_become_markup()
    {
        string html = SheetSamples.Draw(SheetSamples.FullOf(Evil), "html");

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("alert('x')", html, StringComparison.Ordinal);
        Assert.DoesNotContain("onload=\"", html, StringComparison.Ordinal);
        XDocument page = Parse(html);
        Assert.Equal(Evil, page.Descendants("h1").Single().Value);
        Assert.Equal(Evil, page.Descendants("title").Single().Value);

        // every place that shows a harmless word shows these words too, whole and as text
        XDocument harmless = Parse(SheetSamples.Draw(SheetSamples.FullOf("lantern"), "html"));
        Assert.Equal(Regex.Count(harmless.Root!.Value, "[lL]antern"), Regex.Count(page.Root!.Value, Regex.Escape(Evil)));
    }

    [Fact]
    public void Control_characters_and_broken_pairs_do_not_reach_the_page()
    {
        string html = SheetSamples.Draw(SheetSamples.FullOf("a\0b\u0007c\uD83Dd\u001Be 🎵"), "html");

        Assert.Equal("abcde 🎵", Parse(html).Descendants("h1").Single().Value);
    }

    [Fact]
    public void The_page_stands_alone_and_says_its_language()
    {
        string html = SheetSamples.Draw(SheetSamples.FullOf("lantern"), "html");
        XElement root = Parse(html).Root!;

        Assert.StartsWith("<!DOCTYPE html>\n", html, StringComparison.Ordinal);
        Assert.Equal("en", root.Attribute("lang")!.Value);
        Assert.DoesNotContain("://", html, StringComparison.Ordinal);
        Assert.All(Regex.Matches(html, @"url\((.{22})"), m => Assert.Equal("data:font/woff2;base64", m.Groups[1].Value));
        Assert.DoesNotContain("@import", html, StringComparison.Ordinal);
        Assert.DoesNotContain(root.DescendantsAndSelf().Attributes(), a => a.Name.LocalName is "src" or "href");
        Assert.Contains("@media print", html, StringComparison.Ordinal);
        Assert.Contains("\"Atkinson Hyperlegible Next\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_of_the_facts_is_not_parted_from_what_it_counts()
    {
        SheetModel sheet = SheetSamples.FullOf("lantern") with { Facts = ["Baile en línea: 32 tiempos, 4 paredes."] };

        XElement facts = Parse(SheetSamples.Draw(sheet, "html")).Descendants("p").Single(p => p.Attribute("class")?.Value == "facts");

        Assert.Equal("Baile en línea: 32\u00A0tiempos, 4\u00A0paredes.", facts.Value);
    }

    [Fact]
    public void Every_section_is_a_table_with_a_caption_and_heads_with_a_scope()
    {
        SheetModel sheet = SheetSamples.FullOf("lantern");
        XElement root = Parse(SheetSamples.Draw(sheet, "html")).Root!;

        XElement[] tables = [.. root.Descendants("table")];
        Assert.Equal(sheet.Parts[0].Sections.Count + sheet.Tags.Count + sheet.Moves.Count, tables.Length);
        foreach (XElement table in tables)
        {
            Assert.NotEqual("", table.Element("caption")!.Value);
            Assert.All(table.Element("thead")!.Descendants("th"), th => Assert.Equal("col", th.Attribute("scope")!.Value));
            int columns = table.Element("thead")!.Descendants("th").Count();
            foreach (XElement row in table.Element("tbody")!.Elements("tr"))
            {
                Assert.Equal("row", row.Element("th")!.Attribute("scope")!.Value);
                Assert.Equal(columns, row.Elements().Count());
            }
        }

    }

    public static TheoryData<string> DemoDances => FootDiagramTests.DemoDances;

    // Every picture is either told in words or stands beside its words; and the whole page is well-formed, pictures and all.
    [Theory]
    [MemberData(nameof(DemoDances))]
    public void Pictures_are_told_in_words_and_no_name_is_given_twice(string file)
    {
        XElement root = Parse(SheetSamples.Draw(SheetBuilder.Build(FootDiagramTests.Analysed(file)), "html")).Root!;

        string[] ids = [.. root.Descendants().Attributes("id").Select(a => a.Value)];
        Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.Contains(root.Descendants("div"), d => d.Attribute("class")?.Value == "strip");
        foreach (XElement svg in root.Descendants("svg"))
        {
            Assert.NotNull(svg.Attribute("viewBox"));
            if (svg.Attribute("aria-hidden") is { } hidden)
            {
                Assert.Equal("true", hidden.Value);
                continue;
            }

            Assert.Equal("img", svg.Attribute("role")!.Value);
            Assert.Equal(svg.Attribute("aria-labelledby")!.Value, svg.Element("title")!.Attribute("id")!.Value);
            Assert.NotEqual("", svg.Element("title")!.Value);
        }

        foreach (XElement strip in root.Descendants("div").Where(d => d.Attribute("class")?.Value == "strip"))
        {
            Assert.Equal("img", strip.Attribute("role")!.Value);
            Assert.StartsWith("The feet in ", strip.Attribute("aria-label")!.Value, StringComparison.Ordinal);
            Assert.All(strip.Elements("svg"), svg => Assert.NotNull(svg.Attribute("aria-hidden")));
        }
    }

    [Fact]
    public void The_paper_and_the_size_of_print_are_as_chosen()
    {
        SheetModel sheet = SheetSamples.FullOf("lantern");

        Assert.Contains("size: A4;", SheetSamples.Draw(sheet, "html"), StringComparison.Ordinal);
        Assert.Contains("size: letter;", SheetSamples.Draw(sheet with { Paper = Paper.Letter }, "html"), StringComparison.Ordinal);
        Assert.Equal("large", Parse(SheetSamples.Draw(sheet with { IsLarge = true }, "html")).Root!.Attribute("class")!.Value);
        Assert.Null(Parse(SheetSamples.Draw(sheet, "html")).Root!.Attribute("class"));
    }

    [Fact]
    public void What_is_written_by_hand_finds_its_own_direction()
    {
        XElement root = Parse(SheetSamples.Draw(SheetSamples.FullOf("רציף"), "html")).Root!;

        Assert.All(
            root.Descendants().Where(e => e.Name.LocalName is "h1" or "h2" or "p" or "li" && e.Value.Contains("רציף", StringComparison.Ordinal)),
            e => Assert.Equal("auto", e.Attribute("dir")?.Value));
    }

    [Fact]
    public void Cautions_and_changes_stand_on_the_page()
    {
        XElement root = Parse(SheetSamples.Draw(SheetSamples.FullOf("lantern") with { Cautions = ["mind the step"], Changes = ["section 2 turns left now"] }, "html")).Root!;

        Assert.Contains(root.Descendants("li"), e => e.Value == "mind the step");
        Assert.Contains(root.Descendants("li"), e => e.Value == "section 2 turns left now");
        Assert.Contains(root.Descendants("h2"), e => e.Value == "Take care");
        Assert.Contains(root.Descendants("h2"), e => e.Value == "What changed");
    }

    [Fact]
    public void Only_colours_of_the_look_are_used_on_the_screen()
    {
        string html = SheetSamples.Draw(SheetSamples.FullOf("lantern"), "html");
        string screen = html[..html.IndexOf("@media print", StringComparison.Ordinal)];

        string[] known = [.. ((Look[])[Look.Light, Look.Dark]).SelectMany(l => (string[])[l.Paper, l.Floor, l.Ink, l.Soft, l.Line, l.Lamp, l.Buoy, l.Tide])];
        Assert.All(Regex.Matches(screen, "#[0-9A-Fa-f]{6}"), m => Assert.Contains(m.Value, known));
    }

    // The page is written so that it is well-formed XML too, which proves every element closed and every sign escaped.
    private static XDocument Parse(string html) => XDocument.Parse(
        html.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal)
            .Replace("<meta charset=\"utf-8\">", "", StringComparison.Ordinal)
            .Replace("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">", "", StringComparison.Ordinal)
            .Replace("<br>", " ", StringComparison.Ordinal),
        LoadOptions.PreserveWhitespace);
}
