using Scuff.Analysis.Planning;
using Scuff.App.Programmes;

namespace Tests.App;

public sealed class EveningChangeTests
{
    private static readonly EveningPlan Planned = EveningPlan.Empty with { Programme = Line.Programme(Line.Of("d1", 0), Line.Of("d2", 1), Line.Of("d3", 2, otherId: "d4")) };

    [Fact]
    public void A_dance_is_pinned_once_and_no_longer_forbidden()
    {
        EveningPlan plan = EveningChange.Pin(EveningChange.Forbid(Planned, "d1"), "d1", 0, 1);
        plan = EveningChange.Pin(plan, "d1", 0, 2);

        Assert.Equal([new EveningPin { Kind = EveningPinKind.At, DanceId = "d1", Stretch = 0, Place = 2 }], plan.Pins);
        Assert.Empty(EveningChange.Unpin(plan, "d1").Pins);
    }

    [Fact]
    public void A_dance_that_is_pinned_to_that_place_takes_the_place_it_leaves()
    {
        EveningPlan plan = EveningChange.Pin(EveningChange.Pin(Planned, "d1", 0, 0), "d2", 0, 0);

        Assert.Contains(new EveningPin { Kind = EveningPinKind.At, DanceId = "d2", Stretch = 0, Place = 0 }, plan.Pins);
        Assert.Contains(new EveningPin { Kind = EveningPinKind.At, DanceId = "d1", Stretch = 0, Place = 1 }, plan.Pins);
    }

    [Fact]
    public void Two_that_share_the_floor_move_together()
    {
        EveningPlan plan = EveningChange.Pin(Planned, "d3", 0, 0);

        Assert.Contains(new EveningPin { Kind = EveningPinKind.Split, DanceId = "d3", OtherId = "d4" }, plan.Pins);
        Assert.Empty(EveningChange.Unpin(plan, "d3").Pins);
    }

    [Fact]
    public void A_forbidden_dance_is_not_pinned_any_more_and_may_be_allowed_again()
    {
        EveningPlan plan = EveningChange.Forbid(EveningChange.Must(Planned, "d1"), "d1");

        Assert.Equal([EveningPinKind.Never], plan.Pins.Select(p => p.Kind));
        Assert.Empty(EveningChange.Allow(plan, "d1").Pins);
        Assert.Equal([EveningPinKind.Somewhere], EveningChange.Must(plan, "d1").Pins.Select(p => p.Kind));
    }

    [Fact]
    public void A_dance_has_one_song_until_any_will_do()
    {
        EveningPlan plan = EveningChange.Song(EveningChange.Song(Planned, "d1", "tide"), "d1", "ebb");

        Assert.Equal("ebb", Assert.Single(plan.Pins).SongKey);
        Assert.Empty(EveningChange.Song(plan, "d1", "").Pins);
    }

    [Fact]
    public void Each_who_asks_counts()
    {
        EveningPlan plan = EveningChange.Request(EveningChange.Request(EveningChange.Forbid(Planned, "d9"), "d9"), "d9");

        Assert.Equal([new EveningRequest { DanceId = "d9", People = 2 }], plan.Requests);
        Assert.Empty(plan.Pins);
        Assert.Empty(EveningChange.Unrequest(plan, "d9").Requests);
    }

    [Theory]
    [InlineData(ProgrammeMissedKind.NoSong, false)]
    [InlineData(ProgrammeMissedKind.NotThere, false)]
    [InlineData(ProgrammeMissedKind.WorthLess, true)]
    public void She_can_insist_where_it_could_be(ProgrammeMissedKind kind, bool canInsist) => Assert.Equal(canInsist, EveningChange.CanInsist(kind));
}
