using Scuff.Audio.Rhythm;
using Scuff.Audio.Signals;
using Scuff.Music;

namespace Tests.Audio.Rhythm;

/// <summary>The ratio of the halves of a beat is read from where the notes between beats lie.</summary>
public sealed class SwingMeterTests
{
    // the long half over the short: place / (1 - place), so that triplets, two thirds against one, are 2:1
    [Theory]
    [InlineData(0.5, 1)]
    [InlineData(0.6, 1.5)]
    [InlineData(2 / 3.0, 2)]
    public void A_note_between_beats_gives_its_ratio(double place, double ratio)
    {
        double[] beats = MadeHearing.Beats(60);
        (Estimate<double> swing, bool isCompound) = Of(beats, [place]);
        Assert.InRange(swing.Value, ratio * 0.93, ratio * 1.07);
        Assert.True(swing.Confidence > 0.5, "the clicks are clear");
        Assert.False(isCompound);
    }

    [Fact]
    public void Notes_on_both_thirds_are_compound()
    {
        (Estimate<double> swing, bool isCompound) = Of(MadeHearing.Beats(60), [1 / 3.0, 2 / 3.0]);
        Assert.True(isCompound);
        Assert.InRange(swing.Value, 1.85, 2.15);
    }

    [Fact]
    public void Nothing_between_beats_says_nothing()
    {
        (Estimate<double> swing, bool isCompound) = Of(MadeHearing.Beats(60), []);
        Assert.InRange(swing.Confidence, 0, 0.1);
        Assert.False(isCompound);
    }

    [Fact]
    public void Too_few_beats_say_nothing()
        => Assert.Equal(new Estimate<double>(1, 0), Of(MadeHearing.Beats(7), [0.6]).Ratio);

    private static (Estimate<double> Ratio, bool IsCompound) Of(double[] beats, double[] places)
    {
        double[] clicks = [.. beats.SelectMany(b => places.Prepend(0).Select(p => b + (0.5 * p)))];
        return SwingMeter.Of(Hearing.Spectrum(MadeSounds.Clicks(clicks, beats[^1] + 1)), beats);
    }
}
