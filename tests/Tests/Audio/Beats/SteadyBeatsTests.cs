using Scuff.Audio.Beats;

namespace Tests.Audio.Beats;

/// <summary>
/// A row of beats keeps one level and one side, though the ears went over to another for a stretch; what music does do (another tempo, a held note) it follows.
/// </summary>
public sealed class SteadyBeatsTests
{
    [Theory]
    [InlineData(40, 60)]
    [InlineData(20, 36)]
    [InlineData(70, 100)]
    public void Beats_heard_off_the_beat_for_a_stretch_are_put_back(int from, int to)
    {
        double[] beats = Row(100, 0.5);
        double[] heard = [.. beats.Select((b, i) => i >= from && i < to ? b + 0.25 : b)];
        AllNear(beats, SteadyBeats.Find(Heard(heard), 0.5, beats[^1] + 0.2).Seconds);
    }

    [Fact]
    public void The_side_that_most_of_the_song_speaks_for_is_kept_though_it_begins_on_the_other()
    {
        double[] beats = Row(100, 0.5);
        double[] heard = [.. beats.Select((b, i) => i < 30 ? b + 0.25 : b)];
        double[] found = SteadyBeats.Find(Heard(heard), 0.5, beats[^1] + 0.2).Seconds;
        AllNear(beats[2..], found);
    }

    [Fact]
    public void Three_beats_heard_as_two_for_a_stretch_are_three_again()
    {
        double[] beats = Row(121, 0.6);
        double[] heard = [.. beats[..72], .. Enumerable.Range(0, 33).Select(i => beats[72] + (0.9 * i))];
        AllNear(beats, SteadyBeats.Find(Heard(heard), 0.5, beats[^1] + 0.2).Seconds);
    }

    [Fact]
    public void Halves_heard_as_beats_for_a_stretch_are_halves_again()
    {
        double[] beats = Row(120, 0.8);
        double[] heard = [.. beats.SelectMany((b, i) => i < 70 ? [b] : new[] { b, b + 0.4 })];
        AllNear(beats, SteadyBeats.Find(Heard(heard), 0.5, beats[^1] + 0.6).Seconds);
    }

    [Fact]
    public void After_a_note_held_for_two_and_a_half_beats_the_beat_goes_on_where_it_is_heard()
    {
        double[] beats = [.. Row(60, 0.7), .. Row(60, 0.7).Select(b => b + (59 * 0.7) + 1.75)];
        double[] found = SteadyBeats.Find(Heard(beats), 0.5, beats[^1] + 0.2).Seconds;
        Assert.All(beats.Where((_, i) => i is < 56 or > 64), b => Assert.Contains(found, f => Math.Abs(f - b) < 0.03));
    }

    [Theory]
    [InlineData(1.08)]
    [InlineData(0.92)]
    public void Another_tempo_in_the_bridge_is_followed(double factor)
    {
        double at = 0.6;
        double[] beats = [.. Enumerable.Range(0, 120).Select(i => at += i is > 40 and < 80 ? 0.5 * factor : 0.5)];
        double[] found = SteadyBeats.Find(Heard(beats), 0.5, beats[^1] + 0.2).Seconds;
        Assert.Equal(BeatPath.Find(Heard(beats), 0.5, beats[^1] + 0.2).Seconds, found);
        AllNear(beats, found);
    }

    [Fact]
    public void Where_no_beat_was_heard_there_is_no_row()
    {
        Assert.InRange(SteadyBeats.Find(MadeHearing.Pulses([], 20), 0, 20).Seconds.Length, 0, 1);
        Assert.Empty(SteadyBeats.Find([], 0, 0).Seconds);
    }

    private static double[] Row(int count, double length) => [.. Enumerable.Range(0, count).Select(i => 0.6 + (i * length))];

    private static float[] Heard(double[] seconds) => MadeHearing.Pulses(seconds, seconds[^1] + 1);

    // within the 70 ms that a beat is allowed where it is scored (MIREX beat tracking; Davies, Degara and Plumbley 2009)
    private static void AllNear(double[] expected, double[] found)
    {
        Assert.InRange(found.Length, expected.Length - 1, expected.Length + 2);
        Assert.All(expected, e => Assert.Contains(found, f => Math.Abs(f - e) < 0.07));
    }
}
