using Scuff.App.Clubs;
using Scuff.Repertoire;
using Tests.House;

namespace Tests.App;

public sealed class DemoClubFillTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "scuff-demo-" + Path.GetRandomFileName());

    [Fact]
    public void The_demo_club_begins_with_one_dance_and_goes_on_where_it_was_stopped()
    {
        int all = Directory.GetFiles(Path.Combine(Repository.Root, "demo/dances"), "*.dance").Length;
        using Club club = Club.Open(_folder, TimeProvider.System, new DanceFactReader());

        Assert.True(DemoClub.Begin(club));
        Assert.Equal(1, Count(club));
        Assert.True(DemoClub.Begin(club));
        DemoClub.Fill(club, new DateOnly(2026, 11, 29));
        Assert.Equal(all, Count(club));
        Assert.False(DemoClub.Begin(club));

        // what she has thrown away stays away
        club.Dances.Remove(club.Dances.Search(new DanceQuery { Take = 1 }).Rows[0].Id);
        Assert.False(DemoClub.Begin(club));
        Assert.Equal(all - 1, Count(club));
        Assert.Equal("Tin Lantern", club.Dances.Get(club.Settings.Get(ClubPlace.LastDanceSetting)!)!.Row.Facts.Title);
    }

    [Fact]
    public void A_club_of_her_own_is_left_as_it_is()
    {
        using Club club = Club.Open(_folder, TimeProvider.System, new DanceFactReader());
        club.Dances.Add("Mine\n", "page");

        Assert.False(DemoClub.Begin(club));
        Assert.Equal(1, Count(club));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static int Count(Club club) => club.Dances.Search(new DanceQuery { Take = 1 }).Total;
}
