using CsCheck;
using Scuff.Repertoire;
using Scuff.Repertoire.Storage;

namespace Tests.Repertoire.Storage;

public sealed class ThinningTests
{
    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Of_the_last_day_all_stay()
        => Assert.Empty(Spent(Monday.AddDays(1), Monday, Monday.AddMinutes(1), Monday.AddMinutes(2)));

    [Fact]
    public void After_a_day_the_last_of_every_hour_stays()
        => Assert.Equal([Monday, Monday.AddMinutes(59)], Spent(Monday.AddDays(3), Monday, Monday.AddMinutes(59), Monday.AddMinutes(59.5), Monday.AddMinutes(60)));

    [Fact]
    public void After_eight_days_the_last_of_every_day_stays()
        => Assert.Equal([Monday.AddHours(1)], Spent(Monday.AddDays(20), Monday.AddHours(1), Monday.AddHours(23), Monday.AddHours(25)));

    [Fact]
    public void After_three_months_the_last_of_every_week_stays()
        => Assert.Equal([Monday, Monday.AddDays(5)], Spent(Monday.AddDays(120), Monday, Monday.AddDays(5), Monday.AddDays(6.9), Monday.AddDays(7)));

    [Fact]
    public void What_goes_does_not_depend_on_how_often_it_is_done()
        => Gen.Int[0, 300 * 24 * 60].Array[0, 60].Select(Gen.Int[0, 100].Array[1, 6]).Sample((minutes, looks) =>
        {
            DateTimeOffset[] saved = [.. minutes.Distinct().Order().Select(m => Monday.AddMinutes(m))];
            DateTimeOffset end = Monday.AddDays(300);
            List<DateTimeOffset> often = [.. saved];
            foreach (DateTimeOffset look in looks.Select(d => end.AddDays(d)).Order())
            {
                often = [.. often.Except(Thinning.Spent(often, t => t, look))];
            }

            DateTimeOffset last = end.AddDays(looks.Max());
            return often.SequenceEqual(saved.Except(Thinning.Spent(saved, t => t, last)));
        });

    [Fact]
    public void A_dance_that_was_edited_every_hour_for_a_year_keeps_few_versions_and_all_named_ones()
    {
        using ClubHouse house = new();
        string id = house.Club.Dances.Add("0", "page").Id;
        int named = 0;
        for (int hour = 1; hour <= 365 * 4; hour++)
        {
            house.Clock.GoOn(TimeSpan.FromHours(6));
            Assert.IsType<SaveOutcome.Saved>(house.Club.Dances.Save(id, $"{hour}", hour, "page"));
            if (hour % 500 == 0)
            {
                named = house.Club.Dances.KeepVersion(id, "kept")!.Number;
            }
        }

        IReadOnlyList<DanceVersion> versions = [.. house.Club.Dances.Versions(id)];

        // 4 of the last day, 28 of the week before, 84 days, 39 weeks, and 2 named: a boundary more or less
        Assert.InRange(versions.Count(v => v.Name.Length == 0), 150, 160);
        Assert.Equal(2, versions.Count(v => v.Name == "kept"));
        Assert.Equal("1000", house.Club.Dances.VersionText(id, named));
    }

    private static IEnumerable<DateTimeOffset> Spent(DateTimeOffset now, params DateTimeOffset[] saved) => Thinning.Spent(saved, t => t, now).Order();
}
