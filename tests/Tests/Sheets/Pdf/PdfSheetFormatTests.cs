using System.Diagnostics;
using System.Globalization;
using Scuff.Repertoire.Files;
using Scuff.Sheets;
using Scuff.Sheets.Drawings;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Formats.Pdf;
using Tests.App;
using UglyToad.PdfPig.Tokens;

namespace Tests.Sheets.Pdf;

public sealed class PdfSheetFormatTests
{
    public static TheoryData<string> Demo => PdfSamples.Demo;

    public static TheoryData<string> Hard => [.. PdfSamples.Hard().Select(h => h.Name)];

    [Theory]
    [MemberData(nameof(Demo))]
    public void A_reader_of_another_make_reads_the_words_of_the_sheet_in_their_order(string name)
    {
        foreach (SheetChoices way in (SheetChoices[])[new(), new() { IsLarge = true, Paper = Paper.Letter }, new() { IsCard = true }])
        {
            SheetModel sheet = PdfSamples.Club(name, way);
            using PdfReading reading = new(PdfSamples.Draw(sheet));

            Assert.Equal(PdfReading.Bare(string.Concat(WordsOf(sheet))), WithoutHeads(reading.Content(), sheet.Labels));
        }
    }

    [Fact]
    public void A_sheet_with_everything_is_read_back_in_order()
    {
        SheetModel sheet = SheetSamples.FullOf("low tide") with
        {
            Cautions = ["Mind the wet stones."],
            Changes = ["The rock became a mambo."],
            DiagramKey = [new SheetSign(PdfSamples.TestDrawing(10, 10), "a sign")],
        };
        using PdfReading reading = new(PdfSamples.Draw(sheet));

        Assert.Equal(PdfReading.Bare(string.Concat(WordsOf(sheet))), WithoutHeads(reading.Content(), sheet.Labels));
    }

    [Theory]
    [MemberData(nameof(Hard))]
    public void Nothing_of_a_hard_sheet_is_lost_and_nothing_stands_twice(string name)
    {
        SheetModel sheet = PdfSamples.Hard().Single(h => h.Name == name).Sheet;
        using PdfReading reading = new(PdfSamples.Draw(sheet));

        // where a line of steps goes on over a page, what stands beside it on the first page is read first
        Assert.Equal(
            PdfReading.Bare(string.Concat(WordsOf(sheet))).Order(),
            WithoutHeads(reading.Content(), sheet.Labels).Order());
    }

    [Fact]
    public void The_feet_of_the_pages_are_no_part_of_the_content()
    {
        SheetModel sheet = PdfSamples.Build(PdfSamples.Eights(8).Replace("level:", "version: 3\nlevel:", StringComparison.Ordinal));
        using PdfReading reading = new(PdfSamples.Draw(sheet));

        Assert.Equal(2, reading.Pages);
        Assert.Contains("QuayWall·version3Page1of2", reading.Ornament(), StringComparison.Ordinal);
        Assert.Contains("QuayWall·version3Page2of2", reading.Ornament(), StringComparison.Ordinal);
        Assert.DoesNotContain("Page1of2", reading.Content(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void The_tags_tell_what_each_thing_is(string name)
    {
        SheetModel sheet = PdfSamples.Club(name);
        using PdfReading reading = new(PdfSamples.Draw(sheet));
        IReadOnlyList<(int Depth, string Name, DictionaryToken Element)> tree = reading.Tree();
        SheetSection[] sections = [.. sheet.Parts.SelectMany(p => p.Sections), .. sheet.Tags, .. sheet.Moves];
        int lists = (sheet.Breaks.Count > 0 ? 1 : 0) + sheet.Tracks.Count(t => t.Breaks.Count > 0) + (sheet.Endings.Count > 0 ? 1 : 0)
            + (sheet.Cautions.Count > 0 ? 1 : 0) + (sheet.Changes.Count > 0 ? 1 : 0) + (sheet.DiagramKey.Count > 0 ? 1 : 0);

        Assert.Equal((1, "Document"), (tree[0].Depth, tree[0].Name));
        Assert.Equal((2, "H1"), (tree[1].Depth, tree[1].Name));
        Assert.Equal(1, Count("H1"));
        Assert.Equal(sections.Length, Count("Table"));
        Assert.Equal(lists, Count("L"));
        Assert.Equal(Count("LI"), Count("LBody"));
        Assert.Equal(sections.Length + sheet.Parts.Count(p => p.Heading.Length > 0), sections.Length == 0 ? 0 : Count("H2") + Count("H3") - Others(sheet));

        // one head of columns on each page, and a row for each line
        int rows = sections.Sum(s => s.Lines.Count);
        Assert.InRange(Count("TR"), rows + 1, rows + reading.Pages);
        string[] scopes = [.. tree.Where(t => t.Name == "TH").Select(t => Scope(reading, t.Element))];
        Assert.Equal(rows, scopes.Count(s => s == "Row"));
        Assert.Equal(scopes.Length - rows, scopes.Count(s => s == "Column"));

        int Count(string tag) => tree.Count(t => t.Name == tag);
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void Every_picture_is_told_in_words_and_has_its_place(string name)
    {
        SheetModel sheet = PdfSamples.Club(name);
        using PdfReading reading = new(PdfSamples.Draw(sheet));
        IEnumerable<Drawing> pictures =
        [
            .. sheet.WallPicture is { } walls ? (Drawing[])[walls] : [],
            .. sheet.Parts.SelectMany(p => p.Sections).Concat(sheet.Tags).Concat(sheet.Moves).Where(s => s.Diagram is not null).Select(s => s.Diagram!),
        ];
        DictionaryToken[] figures = [.. reading.Tree().Where(t => t.Name == "Figure").Select(t => t.Element)];

        Assert.NotEmpty(figures);
        Assert.Equal(pictures.Select(p => p.Words), figures.Select(f => Words(reading, f, "Alt")));
        foreach (DictionaryToken figure in figures)
        {
            double[] box = [.. reading.Get<ArrayToken>(reading.Get<DictionaryToken>(figure, "A"), "BBox").Data.OfType<NumericToken>().Select(n => n.Double)];
            Assert.Equal(4, box.Length);
            Assert.True(box[0] < box[2] && box[1] < box[3] && box[1] >= PageShape.Top && box[3] <= 842 - PageShape.Top, string.Join(' ', box));
        }
    }

    [Fact]
    public void The_file_tells_its_language_its_title_and_that_it_is_tagged()
    {
        SheetModel sheet = PdfSamples.Build(PdfSamples.Eights(4)) with { Language = "da" };
        using PdfReading reading = new(PdfSamples.Draw(sheet));

        Assert.Equal("da", ((StringToken)reading.Catalog.Data["Lang"]).Data);
        Assert.Equal("Quay Wall", reading.Title);
        Assert.True(reading.Get<BooleanToken>(reading.Get<DictionaryToken>(reading.Catalog, "MarkInfo"), "Marked").Data);
        Assert.True(reading.Get<BooleanToken>(reading.Get<DictionaryToken>(reading.Catalog, "ViewerPreferences"), "DisplayDocTitle").Data);
    }

    [Fact]
    public void Only_parts_of_the_fonts_travel_and_none_is_left_to_the_machine()
    {
        byte[] file = PdfSamples.Draw(PdfSamples.Build(PdfSamples.Eights(4, "Tin Привет שלום")));
        using PdfReading reading = new(file);

        Assert.Equal(4, reading.Fonts.Count);
        Assert.All(reading.Fonts, f => Assert.Matches("^SCUFF[A-Z][+]", f));
        Assert.InRange(file.Length, 20_000, 400_000);
    }

    [Theory]
    [InlineData("Приветъ", "Приветъ")]
    [InlineData("Tin 港 Lantern", "Tin[U+6E2F]Lantern")]
    [InlineData("Café Čertovka", "CaféČertovka")]
    [InlineData("שלום", "םולש")]
    public void A_title_in_another_script_is_printed(string title, string seen)
    {
        SheetModel sheet = SheetSamples.Build("x") with { Title = title };
        using PdfReading reading = new(PdfSamples.Draw(sheet));

        Assert.StartsWith(seen, reading.Content(), StringComparison.Ordinal);
        Assert.Equal(title, reading.Title);
    }

    [Theory]
    [InlineData("港 שלום")]
    [InlineData("Tin 🎵 Lantern")]
    public void What_is_drawn_otherwise_than_written_is_spoken_as_written(string title)
    {
        SheetModel sheet = SheetSamples.Build("x") with { Title = title };
        using PdfReading reading = new(PdfSamples.Draw(sheet));

        DictionaryToken span = reading.Tree().First(t => t.Name == "Span").Element;

        Assert.Equal(title, Words(reading, span, "ActualText"));
    }

    // No face here has Chinese, Japanese or Korean letters: their numbers are printed, and the page says so.
    [Theory]
    [InlineData("港の灯台", true)]
    [InlineData("Ниже, ниже", false)]
    [InlineData("مرحبا 🎺 שלום", false)]
    [InlineData("Café “½” →", false)]
    public void Letters_that_no_face_has_are_owned_up_to(string title, bool isTold)
    {
        SheetModel sheet = SheetSamples.Build(title + SheetSamples.Lantern["Tin Lantern".Length..]);
        string told = string.Concat(SheetLayout.Of(sheet).Pages.SelectMany(p => p.Boxes).OfType<PageBox.Type>().SelectMany(t => t.Line.Runs).Select(r => r.Words));

        Assert.Equal(isTold, told.Contains("[U+", StringComparison.Ordinal));
        Assert.Equal(isTold, told.Contains(string.Concat(sheet.Labels.LettersMissing.Split(' ')[..4].Select((w, i) => i == 0 ? w : " " + w)), StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_sheet_gives_the_same_bytes()
    {
        SheetModel sheet = PdfSamples.Build(PdfSamples.Eights(8, "Tin Привет 🎵"));

        Assert.Equal(PdfSamples.Draw(sheet), PdfSamples.Draw(sheet));
        Assert.NotEqual(PdfSamples.Draw(sheet), PdfSamples.Draw(sheet with { Author = "Somebody else" }));
    }

    [Fact]
    public void The_same_bytes_come_out_of_another_process()
    {
        using ProgramRun run = new();
        run.Put("quay.dance", PdfSamples.Eights(4));
        string program = Path.Combine(AppContext.BaseDirectory, "Scuff.App.dll");
        ProcessStartInfo start = new("dotnet", [program, "sheet", "--format", "pdf", "--output", "made", "quay.dance"])
        {
            WorkingDirectory = run.Folder,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        using Process process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();

        Assert.Equal(PdfSamples.Draw(PdfSamples.Build(PdfSamples.Eights(4))), File.ReadAllBytes(Path.Combine(run.Folder, "made", "quay.pdf")));
    }

    [Fact]
    public void The_file_tells_nothing_of_when_and_where_it_was_made()
    {
        string file = System.Text.Encoding.Latin1.GetString(PdfSamples.Draw(PdfSamples.Build(PdfSamples.Eights(1))));

        Assert.DoesNotContain("CreationDate", file, StringComparison.Ordinal);
        Assert.DoesNotContain("CreateDate", file, StringComparison.Ordinal);
        Assert.DoesNotContain("ModifyDate", file, StringComparison.Ordinal);
    }

    [Fact]
    public void A_full_disk_leaves_the_old_sheet()
    {
        using ProgramRun run = new();
        run.Put("quay.pdf", "the old sheet");
        string path = Path.Combine(run.Folder, "quay.pdf");

        Assert.Throws<IOException>(() => WholeFile.Write(path, stream => new PdfSheetFormat().Write(PdfSamples.Build(PdfSamples.Eights(4)), new FullDisk(stream, 5_000))));

        Assert.Equal("the old sheet", run.Get("quay.pdf"));
        Assert.Single(Directory.GetFiles(run.Folder));
    }

    [Fact]
    public async Task The_file_is_in_order()
    {
        if (Environment.GetEnvironmentVariable("PATH")!.Split(Path.PathSeparator).All(f => !File.Exists(Path.Combine(f, "qpdf"))))
        {
            Assert.Skip("The program qpdf is not on this machine.");
        }

        using ProgramRun run = new();
        string path = Path.Combine(run.Folder, "quay.pdf");
        await File.WriteAllBytesAsync(path, PdfSamples.Draw(PdfSamples.Build(PdfSamples.Eights(8, "Tin Привет שלום 🎵"))), TestContext.Current.CancellationToken);
        using Process process = Process.Start(new ProcessStartInfo("qpdf", ["--check", path]) { RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false })!;
        string told = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        // 3 means warnings; the library leaves the checksum off its compressed streams, and nothing else may be amiss
        Assert.True(process.ExitCode is 0 or 3, told);
        Assert.All(
            told.Split('\n', StringSplitOptions.RemoveEmptyEntries),
            line => Assert.True(line.Contains("input stream is complete but output may still be valid", StringComparison.Ordinal) || line.StartsWith("qpdf: operation succeeded", StringComparison.Ordinal), line));
    }

    [Fact]
    public void It_is_offered_with_the_other_formats()
    {
        ISheetFormat format = SheetFormats.Find("pdf")!;

        Assert.Equal((".pdf", "application/pdf", false), (format.Extension, format.MediaType, format.IsText));
    }

    // The head of the columns is part of the first table of a page; where it falls is the layout's affair.
    private static string WithoutHeads(string content, SheetLabels labels)
    {
        string head = PdfReading.Bare(labels.Counts + labels.Steps);
        return content.Replace(head + PdfReading.Bare(labels.FacingAfter), "", StringComparison.Ordinal).Replace(head, "", StringComparison.Ordinal);
    }

    // Headings that head no section.
    private static int Others(SheetModel sheet) => new[]
    {
        sheet.Tracks.Count > 0, sheet.Sequence.Count > 0, sheet.Breaks.Count > 0, sheet.Endings.Count > 0, sheet.Notes.Count > 0,
        sheet.Cautions.Count > 0, sheet.Changes.Count > 0, sheet.DiagramKey.Count > 0,
    }.Count(b => b) + sheet.Tracks.Count(t => t.Breaks.Count > 0);

    private static string Scope(PdfReading reading, DictionaryToken cell)
        => reading.Get<NameToken>(reading.Get<DictionaryToken>(cell, "A"), "Scope").Data;

    private static string Words(PdfReading reading, DictionaryToken element, string name) => element.Data[name] switch
    {
        StringToken text => text.Data,
        HexToken hex => System.Text.Encoding.BigEndianUnicode.GetString([.. hex.Bytes]).TrimStart('\uFEFF'),
        _ => reading.Get<StringToken>(element, name).Data,
    };

    /// <summary>The words of a sheet in the order in which a teacher would read them aloud.</summary>
    private static IEnumerable<string> WordsOf(SheetModel sheet)
    {
        SheetLabels labels = sheet.Labels;
        yield return sheet.Title;
        if (sheet.ByLine.Length > 0)
        {
            yield return sheet.ByLine;
        }

        yield return string.Join(' ', sheet.Facts);
        yield return string.Join(" · ", sheet.Particulars.Select(Told));
        yield return sheet.Key;
        if (sheet.Tracks.Count > 0)
        {
            yield return labels.Music;
        }

        foreach (SheetTrack track in sheet.Tracks)
        {
            yield return track.Name + (track.Facts.Length > 0 ? " · " + track.Facts : "");
            if (track.Sequence.Count > 0)
            {
                yield return labels.Order + ": " + string.Join(" · ", track.Sequence);
            }

            yield return string.Join(' ', track.Notes.Select(Told));
        }

        if (sheet.Sequence.Count > 0)
        {
            yield return labels.OrderOfParts + " " + string.Join(" · ", sheet.Sequence);
        }

        foreach (SheetPart part in sheet.Parts)
        {
            yield return part.Heading;
            foreach (SheetSection section in part.Sections)
            {
                yield return ToldSection(section);
            }
        }

        foreach (SheetSection tag in sheet.Tags)
        {
            yield return ToldSection(tag);
        }

        if (sheet.Breaks.Count > 0)
        {
            yield return labels.Breaks + Told(sheet.Breaks);
        }

        foreach (SheetTrack track in sheet.Tracks.Where(t => t.Breaks.Count > 0))
        {
            yield return string.Format(CultureInfo.InvariantCulture, labels.OnTrack, track.Name) + Told(track.Breaks);
        }

        if (sheet.Endings.Count > 0)
        {
            yield return labels.Ending + Told(sheet.Endings);
        }

        foreach (SheetSection move in sheet.Moves)
        {
            yield return ToldSection(move);
        }

        if (sheet.Notes.Count > 0)
        {
            yield return labels.Notes + string.Join(' ', sheet.Notes.Select(Told));
        }

        if (sheet.Cautions.Count > 0)
        {
            yield return labels.Cautions + string.Join(' ', sheet.Cautions);
        }

        if (sheet.Changes.Count > 0)
        {
            yield return labels.Changes + string.Join(' ', sheet.Changes);
        }

        if (sheet.DiagramKey.Count > 0)
        {
            yield return labels.DiagramKey + string.Join(' ', sheet.DiagramKey.Select(s => s.Words));
        }

        static string ToldSection(SheetSection section) => section.Heading
            + string.Concat(section.Lines.Select(ToldLine))
            + string.Concat(section.Notes.Select(Told));

        static string ToldLine(SheetLine line) => line.Counts + line.Words
            + string.Concat(line.Notes.Select(Told))
            + string.Concat(line.Options.Select(o => Capital(o.Name) + ", " + o.Counts + ":" + o.Words))
            + line.Facing;
    }

    private static string Told(SheetNote note) => note.Kind.Length > 0 ? Capital(note.Kind) + ": " + note.Words : note.Words;

    private static string Told(IEnumerable<SheetBreak> breaks) => string.Concat(breaks.Select(b => " " + b.Where + ": " + b.What));

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    private sealed class FullDisk(Stream disk, int room) : Stream
    {
        private int _written;

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override void Flush() => disk.Flush();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count)
        {
            int fits = Math.Min(count, room - _written);
            disk.Write(buffer, offset, fits);
            _written += fits;
            if (fits < count)
            {
                throw new IOException("No space left on device", 28);
            }
        }
    }
}
