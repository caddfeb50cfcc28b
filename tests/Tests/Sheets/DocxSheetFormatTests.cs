using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using Scuff.Analysis;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Drawings;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Languages;
using Tests.Prose;

namespace Tests.Sheets;

/// <summary>The document for word processors, read by libraries of others.</summary>
public sealed class DocxSheetFormatTests
{
    private static readonly XNamespace W = "http://schemas.openxmlformats.org/wordprocessingml/2006/main";
    private static readonly XNamespace Wp = "http://schemas.openxmlformats.org/drawingml/2006/wordprocessingDrawing";
    private static readonly XNamespace Mc = "http://schemas.openxmlformats.org/markup-compatibility/2006";

    public static TheoryData<string> Demo => [.. SeedTexts.Demo.Select(d => d.Name)];

    public static TheoryData<string> Hostile =>
    [
        "", " ", "<w:p/> & \" ' ]]>", "\0\u0001\u001F\u007F\u0085", "\uD83D", "\uDE00\uD83D", "\uFFFE\uFFFF", "line\nbreak\ttab", "🌊🩰 sea", "שלום עולם 12 (ab)",
        "الذراعان إلى الأسفل", "海の前で", "नमस्ते", "{0} {1} {2}", new string('x', 3000), "a" + new string('\u0301', 200), "PAGE NUMPAGES", "\u200B\u202E\u2066",
    ];

    [Theory]
    [MemberData(nameof(Demo))]
    public void A_club_dance_makes_a_valid_document(string name)
    {
        DanceAnalysis dance = DanceAnalysis.Of(DanceReader.Read(SeedTexts.Demo.First(d => d.Name == name).Text));

        AssertValid(Draw(SheetBuilder.Build(dance)));
        AssertValid(Draw(SheetBuilder.Build(dance, new SheetChoices { IsCard = true })));
    }

    [Fact]
    public void Large_print_makes_a_valid_document_too()
        => AssertValid(Draw(SheetBuilder.Build(Lantern, new SheetChoices { IsLarge = true, Paper = Paper.Letter })));

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Hostile_words_make_a_valid_document_and_are_kept_as_far_as_it_can_hold_them(string words)
    {
        SheetModel sheet = SheetSamples.FullOf(words) with { Changes = [words], Cautions = [words], WallPicture = Box(words), DiagramKey = [new SheetSign(Box(words), words)] };
        byte[] document = Draw(sheet);

        AssertValid(document);
        string safe = Said(words);
        Assert.All(Paragraphs(document, "Title"), p => Assert.Equal(safe, Text(p)));
        Assert.All(Paragraphs(document, "Steps"), p => Assert.Equal(safe, Text(p)));
        Assert.NotEmpty(Paragraphs(document, "Steps"));
    }

    [Fact]
    public void A_sheet_without_anything_is_a_valid_document()
        => AssertValid(Draw(new SheetModel { Title = "Untitled dance", Parts = [new SheetPart("", [new SheetSection("Section 1", [], [])])] }));

    [Fact]
    public void The_text_reads_in_the_order_of_the_sheet_and_in_its_styles()
    {
        SheetModel sheet = Bare(SheetSamples.Build(SheetSamples.Lantern)) with { Changes = ["Level: improver, was beginner."] };

        Assert.Equal(
            [
                "Title: Tin Lantern", "Subtitle: by Scuff demo",
                "Facts: An improver cha cha: 32\u00a0counts, 4\u00a0walls. Each wall starts a quarter turn to the left of the last. Start with the weight on the left foot. Version\u00a02.",
                "Key: " + sheet.Key,
                "Heading1: What changed", "ListBullet: Level: improver, was beginner.",
                "Heading1: Music", "Normal: “Harbour Lights Out” by The Demo Band · 112\u00a0bpm, intro 32\u00a0counts (about 17.1\u00a0seconds).",
                "Heading1: Section 1: box with shuffles", "TableHead: Counts", "TableHead: Steps", "TableHead: Facing after",
                "Count: 1-2", "Steps: step R to side, step L together", "Facing: 12:00",
                "Count: 3&4", "Steps: shuffle R forward", "Facing: 12:00",
                "Count: 5-6", "Steps: step L to side, step R together", "Facing: 12:00",
                "Count: 7&8", "Steps: shuffle L back", "Note: Style: small steps; let the hip settle on the closing foot", "Facing: 12:00",
                "Heading1: Section 2: rock, quarter, behind side cross",
            ],
            Told(Draw(sheet)).Take(26));
        Assert.Contains("Option: Easier, 7&8: triple step in place R", Told(Draw(sheet)));
        Assert.Equal(
            ["Heading1: Ending", "ListBullet: Wall 9 (starts at 12:00), after 8 counts, facing 12:00: step R forward, pivot 1/2 left, stomp R together, ending at 6:00", "End: "],
            Told(Draw(sheet)).TakeLast(3));
    }

    // The broadest face that stands in for ours took 0.48 of the size of the steps a letter of a head (DejaVu Sans in LibreOffice).
    [Theory]
    [MemberData(nameof(SheetLanguageTests.Codes), MemberType = typeof(SheetLanguageTests))]
    public void The_head_over_the_counts_fits_its_column(string code)
    {
        SheetLanguage language = SheetLanguage.Find(code)!;
        byte[] document = Draw(SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(SheetSamples.Lantern)), new SheetChoices { Language = code }));
        double body = double.Parse(
            (string)Part(document, "word/styles.xml").Descendants(W + "docDefaults").Descendants(W + "sz").Single().Attribute(W + "val")!,
            CultureInfo.InvariantCulture) / 2;
        double[] widths =
        [
            .. Part(document, "word/document.xml").Descendants(W + "tbl").Where(t => t.Descendants(W + "tblHeader").Any())
                .Select(t => (double)t.Descendants(W + "gridCol").First().Attribute(W + "w")! / 20),
        ];

        Assert.NotEmpty(widths);
        Assert.All(widths, w => Assert.True(w > language.Labels.Counts.Length * 0.48 * body, $"{language.Labels.Counts} needs more than {w} points"));
    }

    [Fact]
    public void A_phrased_dance_has_its_sections_below_its_parts()
        => Assert.Equal(
            ["Heading1: Order of the parts", "Heading1: Part A, 16 counts", "Heading2: Section 1", "Heading2: Section 2", "Heading1: Part B, 16 counts", "Heading2: Section 1", "Heading2: Section 2", "Heading1: Tag “Gangway”, 4 counts"],
            Told(Draw(Bare(SheetSamples.Build(SheetSamples.Phrased) with { Cautions = [] }))).Where(t => t.StartsWith("Heading", StringComparison.Ordinal)));

    [Fact]
    public void Every_style_in_use_is_defined_and_based_on_normal()
    {
        byte[] document = Draw(SheetSamples.FullOf("words") with { DiagramKey = [new SheetSign(Box("x"), "x")], WallPicture = Box("y") });
        XElement styles = Part(document, "word/styles.xml");
        Dictionary<string, XElement> defined = styles.Elements(W + "style").ToDictionary(s => (string)s.Attribute(W + "styleId")!, StringComparer.Ordinal);
        string[] used = [.. Part(document, "word/document.xml").Descendants().Where(e => e.Name.LocalName is "pStyle" or "rStyle" or "tblStyle").Select(e => (string)e.Attribute(W + "val")!).Distinct()];

        Assert.All(used, u => Assert.Contains(u, defined.Keys));
        Assert.All((string[])["Title", "Heading1", "Heading2", "Count", "Steps", "Facing", "Note", "Option", "ListBullet", "SectionTable"], s => Assert.Contains(s, used));
        Assert.Equal(["0", "1"], styles.Descendants(W + "outlineLvl").Select(l => (string)l.Attribute(W + "val")!));
    }

    [Fact]
    public void A_section_is_a_table_whose_head_is_repeated_whose_rows_are_whole_and_whose_widths_are_set()
    {
        XElement body = Part(Draw(SheetSamples.Build(SheetSamples.Lantern)), "word/document.xml");
        XElement[] tables = [.. body.Descendants(W + "tbl").Where(t => t.Descendants(W + "tblHeader").Any())];

        // four sections; the one line of the tag tells itself
        Assert.Equal(4, tables.Length);
        Assert.Equal(5, body.Descendants(W + "tbl").Count(t => t.Descendants(W + "pStyle").Any(s => (string?)s.Attribute(W + "val") == "Count")));
        Assert.All(tables, t =>
        {
            XElement[] rows = [.. t.Elements(W + "tr")];
            int columns = t.Element(W + "tblGrid")!.Elements().Count();
            Assert.NotNull(rows[0].Element(W + "trPr")!.Element(W + "tblHeader"));
            Assert.All(rows, r => Assert.NotNull(r.Element(W + "trPr")!.Element(W + "cantSplit")));
            Assert.All(rows, r => Assert.Equal(columns, r.Elements(W + "tc").Count()));
            Assert.Equal(
                (int)t.Element(W + "tblPr")!.Element(W + "tblW")!.Attribute(W + "w")!,
                t.Element(W + "tblGrid")!.Elements().Sum(c => (int)c.Attribute(W + "w")!));
        });
    }

    [Theory]
    [InlineData(Paper.A4, 11906, 16838)]
    [InlineData(Paper.Letter, 12240, 15840)]
    public void The_paper_is_the_one_chosen(Paper paper, int width, int height)
    {
        XElement size = Part(Draw(SheetSamples.Build(SheetSamples.Lantern) with { Paper = paper }), "word/document.xml").Descendants(W + "pgSz").Single();

        Assert.Equal((width, height), ((int)size.Attribute(W + "w")!, (int)size.Attribute(W + "h")!));
    }

    [Fact]
    public void Large_print_is_at_least_sixteen_points()
    {
        XElement styles = Part(Draw(SheetSamples.Build(SheetSamples.Lantern) with { IsLarge = true }), "word/styles.xml");

        Assert.True((int)styles.Element(W + "docDefaults")!.Descendants(W + "sz").Single().Attribute(W + "val")! >= 32);
    }

    [Fact]
    public void Title_maker_and_language_stand_in_the_properties()
    {
        byte[] document = Draw(SheetSamples.Build(SheetSamples.Lantern) with { Language = "de" });
        using MemoryStream stream = new(document);
        using WordprocessingDocument read = WordprocessingDocument.Open(stream, false);

        Assert.Equal("Tin Lantern", read.PackageProperties.Title);
        Assert.Equal("Scuff demo", read.PackageProperties.Creator);
        Assert.Equal("de-DE", read.PackageProperties.Language);
        Assert.Equal("de-DE", (string)Part(document, "word/styles.xml").Descendants(W + "lang").Single().Attribute(W + "val")!);
    }

    [Fact]
    public void The_face_is_named_with_others_that_may_stand_in_for_it()
    {
        XElement font = Part(Draw(SheetSamples.Build(SheetSamples.Lantern)), "word/fontTable.xml").Elements().Single();

        Assert.Equal("Atkinson Hyperlegible Next", (string)font.Attribute(W + "name")!);
        Assert.Contains("Verdana", (string)font.Element(W + "altName")!.Attribute(W + "val")!, StringComparison.Ordinal);
    }

    [Fact]
    public void The_foot_of_the_page_counts_its_pages_by_fields()
    {
        XElement foot = Part(Draw(SheetSamples.Build(SheetSamples.Lantern)), "word/footer1.xml");

        Assert.Equal([" PAGE ", " NUMPAGES "], foot.Descendants(W + "fldSimple").Select(f => (string)f.Attribute(W + "instr")!));
        Assert.Equal("Tin Lantern · version 2Page 1 of 1", string.Concat(foot.Descendants(W + "t").Select(t => t.Value)));
    }

    [Fact]
    public void Words_from_right_to_left_run_so()
    {
        SheetModel sheet = SheetSamples.FullOf("שלום 12 abc");
        XElement body = Part(Draw(sheet), "word/document.xml");
        XElement title = body.Descendants(W + "p").First(p => StyleOf(p) == "Title");

        Assert.NotNull(title.Element(W + "pPr")!.Element(W + "bidi"));
        Assert.Equal(["שלום ", "12 abc"], title.Elements(W + "r").Select(r => r.Value));
        Assert.Equal([true, false], title.Elements(W + "r").Select(r => r.Element(W + "rPr")?.Element(W + "rtl") is not null));
        Assert.Empty(Part(Draw(SheetSamples.FullOf("sea")), "word/document.xml").Descendants(W + "bidi"));
    }

    [Fact]
    public void Pictures_are_shapes_with_their_words_for_whoever_does_not_see_them()
    {
        SheetModel sheet = SheetSamples.Build(SheetSamples.Lantern);
        XElement body = Part(Draw(sheet), "word/document.xml");
        XElement[] pictures = [.. body.Descendants(Wp + "docPr")];
        string[] words = [sheet.WallPicture!.Words, .. sheet.Parts.SelectMany(p => p.Sections).Select(s => s.Diagram!.Words)];

        Assert.Equal(words, pictures.Select(p => (string)p.Attribute("descr")!).Where(d => d.Length > 0));
        Assert.Equal(words, body.Descendants(Mc + "Fallback").Select(f => f.Value).Where(d => d.Length > 0));
        int[] ids = [.. body.Descendants().Where(e => e.Name.LocalName is "docPr" or "cNvPr").Select(e => (int)e.Attribute("id")!)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.Contains(body.Descendants(), e => e.Name.LocalName == "custGeom");
    }

    [Fact]
    public void A_curve_a_line_a_word_and_a_dashed_edge_are_drawn_where_they_belong()
    {
        Drawing drawing = new(
            40,
            30,
            [
                new DrawnShape.Outline([new PenStep.MoveTo(10, 5), new PenStep.LineTo(10, 25)], Tint.None, Tint.Line, 2, IsDashed: true),
                new DrawnShape.Outline([new PenStep.MoveTo(1, 2), new PenStep.CurveTo(3, 4, 5, 6, 7, 8), new PenStep.Close()], Tint.Ink, Tint.None),
                new DrawnShape.Label(20, 15, "½", 8, Anchor.End, IsBold: true),
            ],
            "words");
        XElement body = Part(Draw(new SheetModel { Title = "X", WallPicture = drawing }), "word/document.xml");
        XElement[] shapes = [.. body.Descendants().Where(e => e.Name.LocalName == "wsp")];

        // the first is the unseen frame
        Assert.Equal(4, shapes.Length);
        Assert.Equal([("off", 0L, 0L), ("ext", 508000L, 381000L)], Box(shapes[0]));
        Assert.Equal([("off", 127000L, 63500L), ("ext", 1L, 254000L)], Box(shapes[1]));
        Assert.Equal("25400", shapes[1].Descendants().Single(e => e.Name.LocalName == "ln").Attribute("w")!.Value);
        Assert.Single(shapes[1].Descendants(), e => e.Name.LocalName == "custDash");
        Assert.Equal(["0 0", "25400 25400", "50800 50800", "76200 76200"], shapes[2].Descendants().Where(e => e.Name.LocalName == "pt").Select(p => $"{p.Attribute("x")!.Value} {p.Attribute("y")!.Value}"));
        Assert.Equal("½", shapes[3].Value);
        Assert.Equal("right", shapes[3].Descendants(W + "jc").Single().Attribute(W + "val")!.Value);
        (string, long X, long Y)[] label = Box(shapes[3]);
        Assert.Equal(20 * 12700L, label[0].X + label[1].X);

        static (string, long X, long Y)[] Box(XElement shape) =>
        [
            .. shape.Descendants().First(e => e.Name.LocalName == "xfrm").Elements()
                .Select(e => (e.Name.LocalName, (long)e.Attributes().First(), (long)e.Attributes().Last())),
        ];
    }

    [Fact]
    public void The_same_sheet_gives_the_same_bytes()
    {
        SheetModel sheet = SheetSamples.Build(SheetSamples.Lantern);

        Assert.Equal(Draw(sheet), Draw(SheetSamples.Build(SheetSamples.Lantern)));
        using ZipArchive package = new(new MemoryStream(Draw(sheet)));
        Assert.All(package.Entries, e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime));
    }

    [Fact]
    public void A_word_processor_opens_it_and_its_pages_can_be_counted()
    {
        string? office = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "soffice"))
            .FirstOrDefault(File.Exists);
        Assert.SkipWhen(office is null, "LibreOffice (soffice) is not on this machine.");
        DirectoryInfo folder = Directory.CreateTempSubdirectory("scuff-docx-");
        try
        {
            foreach ((string name, SheetChoices choices, _) in Trials)
            {
                File.WriteAllBytes(Path.Combine(folder.FullName, name + ".docx"), Draw(SheetBuilder.Build(Lantern, choices)));
            }

            ProcessStartInfo start = new(office!) { WorkingDirectory = folder.FullName, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
            foreach (string argument in (string[])[$"-env:UserInstallation={new Uri(Path.Combine(folder.FullName, "profile"))}", "--headless", "--convert-to", "pdf", .. Trials.Select(t => t.Name + ".docx")])
            {
                start.ArgumentList.Add(argument);
            }

            using Process process = Process.Start(start)!;
            _ = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            _ = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            Assert.True(process.WaitForExit(TimeSpan.FromMinutes(3)), "LibreOffice did not come to an end.");
            foreach ((string name, _, int most) in Trials)
            {
                string pdf = File.ReadAllText(Path.Combine(folder.FullName, name + ".pdf"), System.Text.Encoding.Latin1);
                int pages = System.Text.RegularExpressions.Regex.Count(pdf, "/Type\\s*/Page\\b");
                Assert.InRange(pages, 1, most);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static DanceAnalysis Lantern { get; } = DanceAnalysis.Of(DanceReader.Read(SheetSamples.Lantern));

    // A 32-count dance fits one page, whatever face is at hand; a caller's card has one side.
    private static (string Name, SheetChoices Choices, int Most)[] Trials { get; } =
    [
        ("usual", SheetChoices.Usual, 1),
        ("bare", new SheetChoices { HasDiagrams = false }, 1),
        ("letter", new SheetChoices { Paper = Paper.Letter }, 2),
        ("card", new SheetChoices { IsCard = true }, 1),
        ("large", new SheetChoices { IsLarge = true }, 4),
    ];

    private static Drawing Box(string words) => new(
        20,
        20,
        [
            new DrawnShape.Outline([new PenStep.MoveTo(0, 0), new PenStep.LineTo(20, 0), new PenStep.LineTo(20, 20), new PenStep.Close()], Tint.Paper, Tint.Ink),
            new DrawnShape.Label(10, 10, words, 6),
        ],
        words);

    private static SheetModel Bare(SheetModel sheet) => sheet with
    {
        WallPicture = null,
        DiagramKey = [],
        Parts = [.. sheet.Parts.Select(p => p with { Sections = [.. p.Sections.Select(s => s with { Diagram = null })] })],
    };

    private static byte[] Draw(SheetModel sheet)
    {
        using MemoryStream drawn = new();
        SheetFormats.Find("docx")!.Write(sheet, drawn);
        return drawn.ToArray();
    }

    private static void AssertValid(byte[] document)
    {
        using MemoryStream stream = new(document);
        using WordprocessingDocument read = WordprocessingDocument.Open(stream, false);
        Assert.Empty(new OpenXmlValidator(FileFormatVersions.Microsoft365).Validate(read).Select(e => $"{e.Part?.Uri} {e.Path?.XPath}: {e.Description}"));
    }

    private static XElement Part(byte[] document, string name)
    {
        using ZipArchive package = new(new MemoryStream(document));
        using Stream part = package.GetEntry(name)!.Open();
        return XDocument.Load(part, LoadOptions.PreserveWhitespace).Root!;
    }

    private static IEnumerable<XElement> Paragraphs(byte[] document, string style)
        => Part(document, "word/document.xml").Descendants(W + "p").Where(p => StyleOf(p) == style);

    private static string StyleOf(XElement paragraph) => (string?)paragraph.Element(W + "pPr")?.Element(W + "pStyle")?.Attribute(W + "val") ?? "";

    // words of pictures are not words of the paragraph they stand in
    private static string Text(XElement paragraph) => string.Concat(paragraph.Elements(W + "r").Elements(W + "t").Select(t => t.Value));

    private static string[] Told(byte[] document)
        => [.. Part(document, "word/document.xml").Descendants(W + "p").Where(p => StyleOf(p).Length > 0).Select(p => $"{StyleOf(p)}: {Text(p)}")];

    // as an XML reader would hand it back
    private static string Said(string words)
    {
        System.Text.StringBuilder said = new();
        for (int i = 0; i < words.Length; i++)
        {
            if (char.IsHighSurrogate(words[i]) && i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]))
            {
                said.Append(words, i++, 2);
            }
            else if (words[i] is '\n' or '\t' or '\r' or '\u0085')
            {
                said.Append(' ');
            }
            else if (System.Xml.XmlConvert.IsXmlChar(words[i]) && !char.IsControl(words[i]))
            {
                said.Append(words[i]);
            }
        }

        return said.ToString();
    }
}
