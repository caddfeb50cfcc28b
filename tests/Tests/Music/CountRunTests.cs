using Scuff;
using Scuff.Music;

namespace Tests.Music;

public sealed class CountRunTests
{
    [Fact]
    public void Counts_run_to_eight_and_begin_anew_where_told()
    {
        ValueList<TrackBeat> beats = CountRun.Lay([.. Enumerable.Range(0, 16).Select(i => i * 0.5)], Meter.Four, [2, 14]);

        Assert.Equal([7, 8, 1, 2, 3, 4, 5, 6, 7, 8, 1, 2, 3, 4, 1, 2], beats.Select(b => b.Count));
        Assert.Equal([3, 4, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2], beats.Select(b => b.BarPosition));
        Assert.Equal([2, 14], CountRun.RestartsIn(beats, Meter.Four));
    }

    [Fact]
    public void A_waltz_is_counted_in_sixes()
    {
        ValueList<TrackBeat> beats = CountRun.Lay([0, 1, 2, 3, 4, 5, 6, 7], Meter.Three, []);

        Assert.Equal([1, 2, 3, 4, 5, 6, 1, 2], beats.Select(b => b.Count));
        Assert.Equal([1, 2, 3, 1, 2, 3, 1, 2], beats.Select(b => b.BarPosition));
    }

    [Fact]
    public void An_eight_that_is_cut_short_is_odd_and_the_last_one_never_is()
    {
        TrackMap map = Maps.Steady(0, 0.5, 20, 16, 3);

        Assert.Equal([new OddEight(16, 4, 8)], OddEight.In(map));
    }
}
