using Scuff.Analysis;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Languages;
using Tests.Golden;

namespace Tests.Sheets;

public sealed class CallerNotesSheetTests
{
    [Fact]
    public void Whole_notes_look_as_they_were_last_read_and_approved()
    {
        SheetModel sheet = Build(EveningSamples.Small);

        foreach (ISheetFormat format in SheetFormats.All.Where(f => f.IsText))
        {
            GoldenFile.Matches("harbour-social-notes" + format.Extension, SheetSamples.WithoutFonts(SheetSamples.Draw(sheet, format.Name)));
        }
    }

    [Fact]
    public void The_first_words_are_the_name_with_its_level_counts_and_walls()
        => Assert.Equal("“Tin Lantern, improver, 32 counts, 4 walls.”", Note(LinesOf(EveningSamples.Small)[1], "say"));

    [Fact]
    public void Tags_and_restarts_stand_with_wall_facing_and_count()
    {
        SheetLine line = LinesOf(EveningSamples.Small)[1];
        SheetModel sheet = SheetBuilder.Build(EveningSamples.Dances["tin-lantern"]);

        // word for word what the sheet of the dance says, so that nobody calls one thing and reads another
        SheetBreak[] breaks = [.. sheet.Breaks, .. sheet.Tracks.SelectMany(t => t.Breaks)];
        Assert.NotEmpty(breaks);
        Assert.All(breaks, b => Assert.Contains(new SheetNote(b.Where, b.What), line.Notes));
    }

    [Fact]
    public void A_dance_without_a_break_says_so()
        => Assert.Equal("no tag and no restart", Note(LinesOf(EveningSamples.Small)[0], "breaks"));

    [Fact]
    public void Of_a_song_that_the_sheet_does_not_know_no_breaks_are_claimed()
    {
        EveningPaper paper = EveningSamples.Of("Other", 30, [EveningSamples.Dance("tin-lantern") with { Song = "Some Other Song" }]);
        SheetLine line = Assert.Single(LinesOf(paper));

        Assert.Equal("told in the sheet for other songs only; listen where this one breaks", Note(line, "breaks"));
        Assert.Equal("weight on the left foot", Note(line, "start"));
    }

    [Fact]
    public void The_artist_behind_a_title_does_not_hide_the_song()
    {
        EveningPaper paper = EveningSamples.Of("Same", 30, [EveningSamples.Dance("tin-lantern") with { Song = "Harbour Lights Out, The Demo Band", Artist = "" }]);

        Assert.Equal("intro 32 counts (about 17.1 seconds), weight on the left foot", Note(Assert.Single(LinesOf(paper)), "start"));
    }

    [Fact]
    public void A_phrased_dance_has_the_order_of_its_parts()
    {
        EveningPaper paper = EveningSamples.Of("Phrased", 30, [EveningSamples.Dance("market-day")]);

        Assert.StartsWith("A · ", Note(Assert.Single(LinesOf(paper)), "order"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_start_is_told_in_counts_and_by_the_foot()
    {
        Assert.Equal("intro 32 counts (about 17.1 seconds), weight on the left foot", Note(LinesOf(EveningSamples.Small)[1], "start"));
        Assert.Equal("“Harbour Lights Out” by The Demo Band, 112 bpm", Note(LinesOf(EveningSamples.Small)[1], "song"));
    }

    [Fact]
    public void Before_the_music_stands_how_long_there_is_to_speak()
    {
        EveningLine dance = EveningSamples.Small.Lines[0];
        string time = Note(LinesOf(EveningSamples.Small)[0], "time");

        Assert.StartsWith($"{EveningSamples.Between} s to say it", time, StringComparison.Ordinal);
        Assert.EndsWith(EveningSamples.Small.ClockAt(dance.Seconds), time, StringComparison.Ordinal);
    }

    [Fact]
    public void Why_it_stands_there_and_her_own_words_are_told_as_given()
    {
        SheetLine line = LinesOf(EveningSamples.Small)[1];

        Assert.Equal("Four people asked for it. It was not danced for nine weeks.", Note(line, "why here"));
        Assert.Equal("mind the tag on wall 2", Note(line, "note"));
    }

    [Fact]
    public void A_split_floor_is_announced_with_both_dances_and_tells_each_of_them()
    {
        EveningLine split = EveningSamples.Small.Lines[4];
        SheetLine line = LinesOf(EveningSamples.Small)[4];

        Assert.Contains(split.Title, Note(line, "say"), StringComparison.Ordinal);
        Assert.Contains(split.OtherTitle, Note(line, "say"), StringComparison.Ordinal);
        Assert.Contains(line.Notes, n => n.Kind == split.Title);
        Assert.Contains(line.Notes, n => n.Kind == split.OtherTitle);
    }

    [Fact]
    public void Of_a_dance_without_a_sheet_nothing_is_claimed()
    {
        EveningPaper paper = EveningSamples.Of("Visit", 30, [EveningSamples.Dance("market-day") with { DanceId = "gone", Title = "A Visitor's Dance" }]);

        SheetLine line = Assert.Single(LinesOf(paper));

        Assert.Contains(line.Notes, n => n.Words == "the club has no sheet of it");
        Assert.DoesNotContain(line.Notes, n => n.Kind is "breaks" or "start");
    }

    [Fact]
    public void What_to_take_care_of_stands_there_once_and_names_its_dances()
    {
        SheetModel sheet = Build(EveningSamples.Social);

        Assert.Equal(sheet.Cautions.Count, sheet.Cautions.Distinct().Count());
        string jumps = Assert.Single(sheet.Cautions, c => c.StartsWith("Jumps", StringComparison.Ordinal));
        foreach ((string name, DanceAnalysis dance) in EveningSamples.Dances)
        {
            Assert.Equal(
                dance.Cautions.Any(c => c.Kind == Scuff.Analysis.Cautions.CautionKind.Jumps),
                jumps.Contains(dance.Dance.Title, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Every_line_of_a_long_evening_has_its_box_its_time_and_its_words()
    {
        SheetLine[] lines = LinesOf(EveningSamples.Social);

        Assert.Equal(EveningSamples.Social.Lines.Select(l => EveningSamples.Social.ClockAt(l.StartSeconds)), lines.Select(l => l.Counts));
        Assert.All(lines, l => Assert.True(l.HasBox && l.Title.Length > 0 && l.Notes.Count > 0, l.Title));
        Assert.All(lines.SelectMany(l => l.Notes), n => Assert.True(n.Kind.Length > 0 && n.Words.Length > 0));
    }

    [Fact]
    public void Every_language_and_format_can_print_it()
    {
        foreach (string code in SheetLanguage.Codes)
        {
            SheetModel sheet = CallerNotesSheet.Of(EveningSamples.Small, EveningSamples.Dances, new SheetChoices { Language = code });
            foreach (ISheetFormat format in SheetFormats.All)
            {
                using MemoryStream drawn = new();
                format.Write(sheet, drawn);
                Assert.True(drawn.Length > 0, $"{format.Name} in {code}");
            }
        }
    }

    private static SheetModel Build(EveningPaper paper) => CallerNotesSheet.Of(paper, EveningSamples.Dances, SheetChoices.Usual);

    private static SheetLine[] LinesOf(EveningPaper paper) => [.. Build(paper).Parts.SelectMany(p => p.Sections).SelectMany(s => s.Lines)];

    private static string Note(SheetLine line, string kind) => Assert.Single(line.Notes, n => n.Kind == kind).Words;
}
