using Scuff;
using Scuff.Analysis.Planning;
using Scuff.App.Handouts;
using Scuff.App.Programmes;
using Scuff.Dances;
using Scuff.Repertoire;
using Scuff.Sheets;

namespace Tests.App.Handouts;

public sealed class EveningPapersTests
{
    private static readonly ClubEvening Evening = new() { Id = "e1", Title = "Harbour Social", Date = new DateOnly(2026, 11, 28), Minutes = 45, Place = "Boathouse Hall" };

    private static readonly EveningProgramme Programme = new()
    {
        Stretches =
        [
            new EveningStretch { Kind = StretchKind.Dancing, Start = 0, Seconds = 900 },
            new EveningStretch { Kind = StretchKind.Lesson, Start = 900, Seconds = 1200, DanceId = "b" },
            new EveningStretch { Kind = StretchKind.Rest, Start = 2100, Seconds = 600 },
        ],
        Items =
        [
            new EveningItem
            {
                Stretch = 0, Place = 0, Start = 0, Seconds = 218, DanceId = "a", Title = "First Tide", Level = "beginner", OtherId = "b", OtherTitle = "Tin Lantern",
                OtherLevel = "improver", SongKey = "k1", SongTitle = "Low Water Lullaby, The Slipway Six", TrackId = "t1", SongSeconds = 178,
            },
            new EveningItem
            {
                Stretch = 0, Place = 1, Start = 218, Seconds = 240, DanceId = "b", Title = "Tin Lantern", Level = "improver", SongKey = "k2",
                SongTitle = "Harbour Lights Out", SongSeconds = 200,
            },
            new EveningItem { Stretch = 1, Place = 0, Start = 900, Seconds = 1200, DanceId = "b", Title = "Tin Lantern", Level = "improver" },
            new EveningItem { Stretch = 2, Place = 0, Start = 2100, Seconds = 600 },
        ],
    };

    private static readonly EveningWords Words = new("Proven.", [["because a"], ["because b", "and b"], [], []], ["common"], ["one could not be danced"]);

    [Fact]
    public void Every_item_of_a_programme_becomes_a_line_with_its_words()
    {
        EveningPaper paper = Of(Programme);

        Assert.Equal(("Harbour Social", "Boathouse Hall", 45), (paper.Title, paper.Place, paper.Minutes));
        Assert.Equal([EveningLineKind.Dance, EveningLineKind.Dance, EveningLineKind.Lesson, EveningLineKind.Rest], paper.Lines.Select(l => l.Kind));
        Assert.Equal(["First Tide", "Tin Lantern", "Tin Lantern", ""], paper.Lines.Select(l => l.Title));
        Assert.Equal([0, 218, 900, 2100], paper.Lines.Select(l => l.StartSeconds));
        Assert.Equal(["because a", "because b and b", "", ""], paper.Lines.Select(l => string.Join(' ', l.Reasons)));
        Assert.Equal(["common", "one could not be danced"], paper.Remarks);
    }

    [Fact]
    public void Two_dances_to_one_song_are_a_split_floor()
    {
        EveningLine line = Of(Programme).Lines[0];

        Assert.True(line.IsSplit);
        Assert.Equal(("Tin Lantern", Level.Improver), (line.OtherTitle, line.OtherLevel));
    }

    [Fact]
    public void A_song_is_called_as_its_track_calls_it_where_there_is_one()
    {
        ValueList<EveningLine> lines = Of(Programme).Lines;

        Assert.Equal(("Lullaby at Low Water", "Slipway Six", 178, "t1"), (lines[0].Song, lines[0].Artist, lines[0].SongSeconds, lines[0].TrackId));
        Assert.Equal(40, lines[0].LeadSeconds);
        Assert.Equal(("Harbour Lights Out", "", ""), (lines[1].Song, lines[1].Artist, lines[1].TrackId));
    }

    [Fact]
    public void Only_a_class_has_its_parts_named()
    {
        EveningProgramme lesson = Programme with { Stretches = [Programme.Stretches[0] with { Kind = StretchKind.WarmUp }, Programme.Stretches[1], Programme.Stretches[2]] };

        Assert.All(Of(Programme).Lines, l => Assert.Equal("", l.Heading));
        Assert.Equal(["Warm-up", "Warm-up", "Lesson", "Rest"], Of(lesson).Lines.Select(l => l.Heading));
    }

    [Fact]
    public void An_evening_without_a_programme_has_no_paper()
        => Assert.Throws<ArgumentException>(() => EveningPapers.Of(Evening, EveningPlan.Empty, Words, _ => null));

    private static EveningPaper Of(EveningProgramme programme) => EveningPapers.Of(
        Evening,
        EveningPlan.Empty with { Programme = programme },
        Words,
        id => id == "t1" ? new TrackFacts { Title = "Lullaby at Low Water", Artist = "Slipway Six" } : null);
}
