using Scuff.Audio.Bars;
using Scuff.Audio.Beats;
using Scuff.Audio.Ears;

namespace Tests.Audio.Bars;

/// <summary>Where the beats are heard as well between the beats, their ones tell which they are.</summary>
public sealed class SideOfBeatTests
{
    private const double Last = 34;

    [Fact]
    public void A_row_between_the_beats_goes_to_the_side_of_the_ones()
    {
        double[] beats = MadeHearing.Beats(64);
        BeatRow found = SideOfBeat.Find(new BeatRow(Between(beats), 0), OnBothSides(beats, ones: beats), 0, Last);
        Assert.All(found.Seconds, s => Assert.Contains(beats, b => Math.Abs(b - s) < 0.03));
        Assert.InRange(found.Seconds.Length, 60, 66);
    }

    [Fact]
    public void A_row_on_the_side_of_the_ones_stays()
    {
        double[] beats = MadeHearing.Beats(64);
        BeatRow row = new(beats, 0);
        Assert.Same(row, SideOfBeat.Find(row, OnBothSides(beats, ones: beats), 0, Last));
    }

    [Fact]
    public void Where_the_beats_are_clear_the_ones_have_no_say()
    {
        double[] beats = MadeHearing.Beats(64);
        Activations heard = MadeHearing.At(beats, [], []);
        Activations mistaken = heard with { One = MadeHearing.Pulses(Between(beats), Last), Eight = MadeHearing.Pulses(Between(beats), Last) };
        BeatRow row = new(beats, 0);
        Assert.Same(row, SideOfBeat.Find(row, mistaken, 0, Last));
    }

    [Fact]
    public void No_beats_stay_none() => Assert.Empty(SideOfBeat.Find(new BeatRow([], 0), MadeHearing.At(MadeHearing.Beats(8), [], []), 0, Last).Seconds);

    private static Activations OnBothSides(double[] beats, double[] ones)
    {
        double[] fours = [.. ones.Where((_, i) => i % 4 == 0)];
        double[] eights = [.. ones.Where((_, i) => i % 8 == 0)];
        return MadeHearing.At(beats, [], []) with
        {
            Beat = MadeHearing.Pulses(beats.Concat(Between(beats)), Last),
            One = MadeHearing.Pulses(fours, Last),
            Eight = MadeHearing.Pulses(eights, Last),
        };
    }

    private static double[] Between(double[] beats) => [.. beats.Zip(beats.Skip(1), (a, b) => (a + b) / 2)];
}
