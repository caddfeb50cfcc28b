using Scuff.Audio.Beats;

namespace Tests.Audio.Beats;

/// <summary>A row of beats runs through what was heard, and on where something was not.</summary>
public sealed class BeatPathTests
{
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.5)]
    [InlineData(0.517)]
    [InlineData(0.9)]
    public void A_steady_pulse_is_found_to_a_hundredth_of_a_second(double length)
    {
        double[] pulses = [.. Enumerable.Range(0, 30).Select(i => 0.6 + (i * length))];
        Same(pulses, Find(pulses, pulses), 0.01);
    }

    [Fact]
    public void A_beat_that_was_not_heard_is_there_all_the_same()
    {
        double[] pulses = [.. Enumerable.Range(0, 30).Select(i => 0.6 + (i * 0.5))];
        Same(pulses, Find([.. pulses.Where((_, i) => i != 13)], pulses), 0.015);
    }

    [Fact]
    public void A_false_beat_between_two_bends_nothing()
    {
        double[] pulses = [.. Enumerable.Range(0, 30).Select(i => 0.6 + (i * 0.5))];
        Same(pulses, Find([.. pulses, pulses[13] + 0.22], pulses), 0.015);
    }

    [Theory]
    [InlineData(1.05)]
    [InlineData(0.95)]
    public void A_change_of_tempo_by_a_twentieth_is_followed(double factor)
    {
        double[] pulses = [.. Enumerable.Range(0, 40).Select(i => 0.6 + (i <= 20 ? 0.5 * i : 10 + (0.5 * factor * (i - 20))))];
        Same(pulses, Find(pulses, pulses), 0.03);
    }

    [Theory]
    [InlineData(0.9, 1.1, 1)]
    [InlineData(0.45, 0.55, 0.5)]
    public void Within_limits_the_same_pulse_is_counted_at_its_own_or_at_double_length(double shortest, double longest, double expected)
    {
        double[] pulses = [.. Enumerable.Range(0, 40).Select(i => 0.6 + (i * 0.5))];
        double[] beats = BeatPath.Find(MadeHearing.Pulses(pulses, 21), 0.5, 20.3, shortest, longest).Seconds;
        Assert.All(beats.Zip(beats.Skip(1)), p => Assert.InRange(p.Second - p.First, expected * 0.97, expected * 1.03));
        Assert.InRange(beats.Length, (int)(18 / expected), (int)(21 / expected));
    }

    [Fact]
    public void The_row_at_the_pulse_scores_above_the_row_at_double_of_it()
    {
        float[] heard = MadeHearing.Pulses(Enumerable.Range(0, 40).Select(i => 0.6 + (i * 0.5)), 21);
        Assert.True(BeatPath.Find(heard, 0.5, 20.3, 0.45, 0.55).Score > BeatPath.Find(heard, 0.5, 20.3, 0.25, 0.27).Score);
    }

    [Fact]
    public void Where_no_beat_was_heard_there_is_no_row()
    {
        // a lone beat costs less than none and is no row: a listener asks for eight
        Assert.InRange(BeatPath.Find(MadeHearing.Pulses([], 20), 0, 20).Seconds.Length, 0, 1);
        Assert.Empty(BeatPath.Find([], 0, 0).Seconds);
        Assert.Empty(BeatPath.Find(MadeHearing.Pulses([0.1], 0.3), 0, 0.3).Seconds);
    }

    [Fact]
    public void No_beat_stands_outside_the_music()
    {
        double[] pulses = [.. Enumerable.Range(0, 40).Select(i => 0.6 + (i * 0.5))];
        double[] beats = BeatPath.Find(MadeHearing.Pulses(pulses, 21), 5.05, 15.3).Seconds;
        Assert.InRange(beats[0], 5.05, 5.65);
        Assert.InRange(beats[^1], 14.5, 15.35);
    }

    private static double[] Find(double[] heard, double[] beats)
        => BeatPath.Find(MadeHearing.Pulses(heard, beats[^1] + 1), beats[0] - 0.1, beats[^1] + 0.2).Seconds;

    private static void Same(double[] expected, double[] found, double within)
    {
        Assert.Equal(expected.Length, found.Length);
        Assert.All(found.Zip(expected), p => Assert.Equal(p.Second, p.First, within));
    }
}
