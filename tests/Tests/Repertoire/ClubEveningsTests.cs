using Scuff.Repertoire;

namespace Tests.Repertoire;

public sealed class ClubEveningsTests : IDisposable
{
    private static readonly ClubEvening Social = new() { Title = "Harvest social", Date = new DateOnly(2026, 9, 12), Place = "The net loft", Plan = "{}" };

    private readonly ClubHouse _house = new();

    private ClubEvenings Evenings => _house.Club.Evenings;

    public void Dispose() => _house.Dispose();

    [Fact]
    public void An_evening_is_kept_as_it_was_said()
    {
        ClubEvening kept = Kept(Evenings.Save(Social, 0));

        Assert.Equal(Social with { Id = kept.Id, Revision = 1 }, kept);
        Assert.Equal(kept, _house.Reopen().Evenings.Get(kept.Id));
        Assert.Equal(new EveningRow(kept.Id, kept.Title, kept.Date, kept.Starts, 180, kept.Place, null, 1), Assert.Single(Evenings.List()));
        Assert.Null(Evenings.Get("e99"));
        Assert.Null(Evenings.Get("harvest"));
    }

    [Fact]
    public void Someone_elses_programme_is_never_written_over_unseen()
    {
        ClubEvening first = Kept(Evenings.Save(Social, 0));
        ClubEvening second = Kept(Evenings.Save(first with { Plan = "mine" }, 1));

        Assert.Equal(2, second.Revision);
        Assert.Equal(new EveningOutcome.Changed(second), Evenings.Save(first with { Plan = "theirs" }, 1));
        Assert.Equal(second, Evenings.Get(first.Id));

        // the answer was lost and the same is sent again
        Assert.Equal(new EveningOutcome.Saved(second), Evenings.Save(first with { Plan = "mine" }, 1));
        Assert.Equal(3, Kept(Evenings.Save(first with { Plan = "theirs" }, 2)).Revision);
        Assert.True(Evenings.Remove(first.Id));
        Assert.False(Evenings.Remove(first.Id));
        Assert.IsType<EveningOutcome.Gone>(Evenings.Save(first, 3));
        Assert.IsType<EveningOutcome.Gone>(Evenings.Save(first with { Id = "harvest" }, 3));
    }

    [Fact]
    public void Evenings_come_latest_first_and_by_days()
    {
        foreach (int day in new[] { 3, 20, 11 })
        {
            Evenings.Save(Social with { Date = new DateOnly(2026, 9, day) }, 0);
        }

        Assert.Equal([20, 11, 3], Evenings.List().Select(e => e.Date.Day));
        Assert.Equal([11], Evenings.List(new DateOnly(2026, 9, 4), new DateOnly(2026, 9, 19)).Select(e => e.Date.Day));
    }

    [Fact]
    public void An_evening_outlives_its_class()
    {
        ClubClass held = _house.Club.Book.SaveClass(new ClubClass { Title = "Monday" });
        ClubEvening kept = Kept(Evenings.Save(Social with { ClassId = held.Id }, 0));
        Assert.Equal(held.Id, Evenings.Get(kept.Id)!.ClassId);

        _house.Club.Book.RemoveClass(held.Id);

        Assert.Null(Evenings.Get(kept.Id)!.ClassId);
        Assert.Equal("There is no such class any more.", Refused(Social with { ClassId = held.Id }));
    }

    [Fact]
    public void What_cannot_be_an_evening_is_refused_in_a_sentence()
    {
        Assert.Equal("An evening needs a title.", Refused(Social with { Title = "" }));
        Assert.Equal("An evening cannot last 0 minutes: it lasts from 1 minute to a day, which has 1440.", Refused(Social with { Minutes = 0 }));
        Assert.Equal("The book knows the years 1900 to 2199, and 9999-12-31 is in none of them.", Refused(Social with { Date = DateOnly.MaxValue }));
        Assert.Empty(Evenings.List());
    }

    private static ClubEvening Kept(EveningOutcome outcome) => Assert.IsType<EveningOutcome.Saved>(outcome).Evening;

    private string Refused(ClubEvening evening) => Assert.Throws<ClubTrouble>(() => Evenings.Save(evening, 0)).Message;
}
