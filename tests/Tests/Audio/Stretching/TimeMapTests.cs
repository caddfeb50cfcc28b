using Scuff.Audio.Stretching;

namespace Tests.Audio.Stretching;

public sealed class TimeMapTests
{
    [Fact]
    public void A_speed_of_eight_tenths_plays_the_eighth_second_at_ten()
    {
        TimeMap map = TimeMap.AtSpeed(0.8);

        Assert.Equal(10, map.PlayedAt(8), 9);
        Assert.Equal(8, map.SourceAt(10), 9);
        Assert.Equal(-1, map.PlayedAt(-0.8), 9);
    }

    [Fact]
    public void Between_two_places_it_goes_evenly_and_outside_at_the_pace_next_to_it()
    {
        TimeMap map = TimeMap.Of([new(1, 2), new(2, 4), new(4, 5)]);

        Assert.Equal(3, map.PlayedAt(1.5), 9);
        Assert.Equal(4.5, map.PlayedAt(3), 9);
        Assert.Equal(0, map.PlayedAt(0), 9);
        Assert.Equal(6, map.PlayedAt(6), 9);
        Assert.Equal(3, map.SourceAt(4.5), 9);
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(4.5)]
    [InlineData(double.NaN)]
    [InlineData(-1)]
    public void A_speed_that_no_music_bears_is_refused(double speed) => Assert.Throws<ArgumentOutOfRangeException>(() => TimeMap.AtSpeed(speed));

    [Fact]
    public void Places_that_do_not_rise_are_refused()
    {
        Assert.Throws<ArgumentException>(() => TimeMap.Of([new(1, 1)]));
        Assert.Throws<ArgumentException>(() => TimeMap.Of([new(1, 1), new(1, 2)]));
        Assert.Throws<ArgumentException>(() => TimeMap.Of([new(1, 2), new(2, 1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => TimeMap.Of([new(0, 0), new(10, 1)]));
    }

    [Fact]
    public void Only_a_map_that_changes_nothing_is_plain()
    {
        Assert.True(TimeMap.AtSpeed(1).IsPlain);
        Assert.False(TimeMap.AtSpeed(1.01).IsPlain);
        Assert.False(TimeMap.Of([new(0, 1), new(1, 2)]).IsPlain);
    }
}
