namespace Tests.Repertoire;

public sealed class ClubSettingsTests
{
    [Fact]
    public void A_setting_is_there_until_it_is_taken_away()
    {
        using ClubHouse house = new();
        Assert.Null(house.Club.Settings.Get("theme"));

        house.Club.Settings.Set("theme", "dark");
        house.Club.Settings.Set("theme", "light");
        house.Reopen();
        Assert.Equal("light", house.Club.Settings.Get("theme"));

        house.Club.Settings.Set("theme", null);
        house.Club.Settings.Set("theme", null);
        Assert.Null(house.Club.Settings.Get("theme"));
    }

    [Theory]
    [InlineData("")]
    [InlineData(".folder")]
    public void The_clubs_own_settings_are_out_of_reach(string name)
    {
        using ClubHouse house = new();

        Assert.Throws<ArgumentException>(() => house.Club.Settings.Get(name));
        Assert.Throws<ArgumentException>(() => house.Club.Settings.Set(name, "x"));
    }
}
