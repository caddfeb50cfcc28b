using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Formats.Pdf;
using Scuff.Sheets.Languages;
using Tests.Golden;

namespace Tests.Sheets;

public sealed class ProgrammeSheetTests
{
    public static TheoryData<Paper> Papers => [.. Enum.GetValues<Paper>()];

    [Fact]
    public void Whole_programmes_look_as_they_were_last_read_and_approved()
    {
        SheetModel sheet = ProgrammeSheet.Of(EveningSamples.Small, SheetChoices.Usual);

        foreach (ISheetFormat format in SheetFormats.All.Where(f => f.IsText))
        {
            GoldenFile.Matches("harbour-social-programme" + format.Extension, SheetSamples.WithoutFonts(SheetSamples.Draw(sheet, format.Name)));
        }
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void An_evening_of_forty_lines_goes_on_one_page(Paper paper)
    {
        Assert.Equal(40, EveningSamples.Social.Lines.Count);

        SheetLayout layout = SheetLayout.Of(ProgrammeSheet.Of(EveningSamples.Social, new SheetChoices { Paper = paper }));

        Assert.Single(layout.Pages);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void A_short_programme_is_printed_larger_than_a_long_one(Paper paper)
    {
        SheetChoices choices = new() { Paper = paper };
        SheetLayout small = SheetLayout.Of(ProgrammeSheet.Of(EveningSamples.Small, choices));
        SheetLayout large = SheetLayout.Of(ProgrammeSheet.Of(EveningSamples.Social, choices));

        Assert.Single(small.Pages);
        Assert.True(small.Size.Body > large.Size.Body, $"{small.Size.Body} points, the long one {large.Size.Body}");
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Large_print_is_sixteen_points_or_more(Paper paper)
    {
        foreach (EveningPaper evening in (EveningPaper[])[EveningSamples.Small, EveningSamples.Social])
        {
            SheetLayout layout = SheetLayout.Of(ProgrammeSheet.Of(evening, new SheetChoices { Paper = paper, IsLarge = true }));

            Assert.InRange(layout.Size.Body, 16, 24);
            Assert.InRange(layout.Pages.Count, 1, 3);
        }
    }

    [Fact]
    public void Every_line_has_its_time_its_dances_its_song_and_its_level()
    {
        SheetLine[] lines = LinesOf(EveningSamples.Small);

        Assert.Equal("19:30", lines[0].Counts);
        Assert.Equal(("First Tide", "“Low Water Lullaby” by The Slipway Six"), (lines[0].Title, lines[0].Words));
        Assert.Equal("absolute beginner", lines[0].Facing);
        Assert.Equal("Lesson: Capstan Stomp, 15 min", lines[2].Title);
        Assert.Equal("Rest, 10 min", lines[5].Title);
        Assert.Null(lines[5].Facing);
    }

    [Fact]
    public void A_split_floor_names_both_dances_with_their_levels()
    {
        SheetLine split = LinesOf(EveningSamples.Small)[4];
        EveningLine line = EveningSamples.Small.Lines[4];

        Assert.StartsWith($"{line.Title} (", split.Title, StringComparison.Ordinal);
        Assert.Contains($" and {line.OtherTitle} (", split.Title, StringComparison.Ordinal);
        Assert.Equal("split floor", split.Facing);
    }

    [Fact]
    public void The_parts_of_a_class_stand_under_their_headings()
    {
        EveningPaper paper = EveningSamples.Of("Tuesday Beginners", 60,
        [
            EveningSamples.Dance("first-tide") with { Heading = "Warm-up" },
            EveningSamples.Dance("market-day") with { Heading = "Revision" },
            EveningSamples.Dance("gangplank"),
        ]);

        SheetSection[] sections = [.. ProgrammeSheet.Of(paper, SheetChoices.Usual).Parts.SelectMany(p => p.Sections)];

        Assert.Equal(["Warm-up", "Revision"], sections.Select(s => s.Heading));
        Assert.Equal([1, 2], sections.Select(s => s.Lines.Count));
    }

    [Fact]
    public void A_date_is_told_in_the_language_of_the_sheet()
    {
        Assert.Equal("Saturday, 28 November 2026, Boathouse Hall", ProgrammeSheet.Of(EveningSamples.Small, SheetChoices.Usual).ByLine);
        Assert.Equal("28. November 2026, Boathouse Hall", ProgrammeSheet.Of(EveningSamples.Small, new SheetChoices { Language = "de" }).ByLine);
    }

    [Fact]
    public void Every_language_can_print_it()
    {
        foreach (string code in SheetLanguage.Codes)
        {
            SheetModel sheet = ProgrammeSheet.Of(EveningSamples.Social, new SheetChoices { Language = code });

            Assert.Equal(EveningSamples.Social.Lines.Count, sheet.Parts.SelectMany(p => p.Sections).Sum(s => s.Lines.Count));
        }
    }

    [Fact]
    public void Titles_may_hold_anything_in_every_format()
    {
        foreach (string words in App.Handouts.HandoutSamples.Hostile)
        {
            EveningPaper paper = EveningSamples.Of(words, 60, [EveningSamples.Dance("first-tide") with { Title = words, Song = words, Artist = words, Heading = words }]);
            SheetModel sheet = ProgrammeSheet.Of(paper with { Place = words }, SheetChoices.Usual);

            Assert.DoesNotContain("<tags>", SheetSamples.Draw(sheet, "html"), StringComparison.Ordinal);
            Assert.InRange(SheetLayout.Of(sheet).Pages.Count, 1, 4);
            using MemoryStream drawn = new();
            SheetFormats.Find("docx")!.Write(sheet, drawn);
            using WordprocessingDocument read = WordprocessingDocument.Open(drawn, isEditable: false);
            Assert.Empty(new OpenXmlValidator(FileFormatVersions.Microsoft365).Validate(read, TestContext.Current.CancellationToken).Select(e => e.Description));
        }
    }

    [Fact]
    public void An_evening_without_lines_is_a_sheet_all_the_same()
    {
        SheetModel sheet = ProgrammeSheet.Of(EveningSamples.Small with { Lines = default }, SheetChoices.Usual);

        foreach (ISheetFormat format in SheetFormats.All)
        {
            using MemoryStream drawn = new();
            format.Write(sheet, drawn);
            Assert.True(drawn.Length > 0, format.Name);
        }
    }

    [Fact]
    public void A_language_that_there_is_not_is_refused()
        => Assert.Throws<ArgumentException>(() => ProgrammeSheet.Of(EveningSamples.Small, new SheetChoices { Language = "xx" }));

    private static SheetLine[] LinesOf(EveningPaper paper) => [.. ProgrammeSheet.Of(paper, SheetChoices.Usual).Parts.SelectMany(p => p.Sections).SelectMany(s => s.Lines)];
}
