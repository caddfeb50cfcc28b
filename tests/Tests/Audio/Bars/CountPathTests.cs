using Scuff.Audio.Bars;
using Scuff.Audio.Ears;

namespace Tests.Audio.Bars;

/// <summary>Counts run on, through a wrong one, and start anew where the music does.</summary>
public sealed class CountPathTests
{
    [Theory]
    [InlineData(4, 8)]
    [InlineData(3, 6)]
    public void Counts_follow_the_ones_of_bars_and_eights(int beatsInBar, int cycle)
    {
        int[] expected = [.. Enumerable.Range(0, 48).Select(i => (i % cycle) + 1)];
        CountRow right = Find(expected, beatsInBar);
        Assert.Equal(expected, right.Counts);
        Assert.Equal(beatsInBar, right.BeatsInBar);
        Assert.True(right.Score > Find(expected, 7 - beatsInBar, beatsInBar).Score, "the other meter agrees less");
    }

    [Fact]
    public void A_pickup_is_counted_before_the_first_one()
    {
        int[] expected = [7, 8, .. Enumerable.Range(0, 40).Select(i => (i % 8) + 1)];
        Assert.Equal(expected, Find(expected, 4).Counts);
    }

    [Fact]
    public void After_an_added_bar_the_count_begins_anew()
    {
        int[] expected = [.. Run(8), .. Run(8), .. Run(8), .. Run(4), .. Run(8), .. Run(8), .. Run(8), .. Run(8)];
        Assert.Equal(expected, Find(expected, 4).Counts);
    }

    [Fact]
    public void After_a_half_bar_before_a_section_the_count_begins_anew()
    {
        int[] expected = [.. Run(8), .. Run(8), .. Run(8), .. Run(6), .. Run(8), .. Run(8), .. Run(8), .. Run(8)];
        Assert.Equal(expected, Find(expected, 4, starts: [0, 30]).Counts);
    }

    [Fact]
    public void A_lone_wrong_one_changes_no_count()
    {
        int[] expected = [.. Enumerable.Range(0, 64).Select(i => (i % 8) + 1)];
        double[] beats = MadeHearing.Beats(64);
        int[] ones = [.. Enumerable.Range(0, 64).Where(i => i % 4 == 0), 22];
        int[] eights = [.. Enumerable.Range(0, 64).Where(i => i % 8 == 0), 36];
        Assert.Equal(expected, Found(beats, MadeHearing.At(beats, ones, eights), 4, Starts(64, [0])).Counts);
    }

    [Fact]
    public void The_nearest_logit_of_a_beat_is_looked_for_two_steps_around_and_kept_within_five()
    {
        float[] heard = new float[100];
        heard[50] = 9;
        heard[53] = 2;
        heard[80] = -9;
        Assert.Equal([5, 2, 0], CountPath.Near(heard, [Activations.SecondsOf(52), Activations.SecondsOf(54), Activations.SecondsOf(80)]));
        Assert.Equal([-5], CountPath.Near([-9, -9, -9], [0.0]));
    }

    private static IEnumerable<int> Run(int length) => Enumerable.Range(1, length);

    private static CountRow Find(int[] counts, int beatsInBar, int? heardInBar = null, int[]? starts = null)
    {
        int bar = heardInBar ?? beatsInBar;
        double[] beats = MadeHearing.Beats(counts.Length);
        int[] all = [.. Enumerable.Range(0, counts.Length)];
        Activations heard = MadeHearing.At(beats, all.Where(i => (counts[i] - 1) % bar == 0), all.Where(i => counts[i] == 1));
        return Found(beats, heard, beatsInBar, Starts(counts.Length, starts ?? [0]));
    }

    private static CountRow Found(double[] beats, Activations heard, int beatsInBar, float[] starts)
        => CountPath.Find(beats, beatsInBar, CountPath.Near(heard.One, beats), CountPath.Near(heard.Eight, beats), starts);

    private static float[] Starts(int beats, int[] at) => [.. Enumerable.Range(0, beats).Select(i => at.Contains(i) ? 3f : -3f)];
}
