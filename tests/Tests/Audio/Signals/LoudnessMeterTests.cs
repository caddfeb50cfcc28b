using Scuff.Audio.Signals;
using Scuff.Music;

namespace Tests.Audio.Signals;

/// <summary>Loudness is the root mean square in decibels, and music lasts as long as it sounds.</summary>
public sealed class LoudnessMeterTests
{
    [Fact]
    public void A_full_sine_is_three_decibels_below_full_scale()
    {
        // the mean square of a sine of amplitude 1 is one half
        LoudnessCurve curve = LoudnessMeter.Of(MadeSounds.Tone(2, 1000, 1));
        Assert.All(curve.Decibels.Take(curve.Decibels.Count - 1), d => Assert.Equal(-3.01, d, 0.05));
        Assert.Equal(2, curve.Decibels.Count / curve.PerSecond, 0.06);
    }

    [Fact]
    public void Silence_is_at_the_floor_and_sounds_never()
    {
        LoudnessCurve curve = LoudnessMeter.Of(new MonoAudio(new float[Hearing.Rate], Hearing.Rate));
        Assert.All(curve.Decibels, d => Assert.Equal(LoudnessMeter.Floor, d));
        Assert.Equal((0, 0), LoudnessMeter.Sounding(curve));
        Assert.Equal((0, 0), LoudnessMeter.Sounding(LoudnessMeter.Of(new MonoAudio([], Hearing.Rate))));
    }

    [Fact]
    public void Music_between_silences_begins_and_ends_where_it_sounds()
    {
        float[] samples = [.. new float[Hearing.Rate], .. MadeSounds.Tone(3, 440, 0.4).Samples, .. new float[2 * Hearing.Rate]];
        (double first, double last) = LoudnessMeter.Sounding(LoudnessMeter.Of(new MonoAudio(samples, Hearing.Rate)));
        Assert.InRange(first, 0.9, 1.0);
        Assert.InRange(last, 4.0, 4.1);
    }

    [Fact]
    public void The_gain_makes_a_quiet_copy_as_loud_as_a_loud_one()
    {
        MonoAudio loud = MadeSounds.Noise(4, 0.5, 2);
        MonoAudio quiet = new([.. loud.Samples.Select(s => s / 64)], Hearing.Rate);
        Assert.Equal(64, Hearing.GainOf(quiet) / Hearing.GainOf(loud), 1e-3);
        Assert.Equal(1, Hearing.GainOf(new MonoAudio(new float[500], Hearing.Rate)));
        Assert.Equal(1, Hearing.GainOf(new MonoAudio([], Hearing.Rate)));
    }

    [Theory]
    [InlineData(100)]
    [InlineData(440)]
    [InlineData(5000)]
    public void A_tone_is_loudest_in_its_own_band(double hertz)
    {
        Spectrogram spectrum = Hearing.Spectrum(MadeSounds.Tone(1, hertz, 0.3));
        int top = spectrum[spectrum.Frames / 2].IndexOf(spectrum[spectrum.Frames / 2].ToArray().Max());
        int nearest = Enumerable.Range(0, spectrum.Bands).MinBy(b => Math.Abs(spectrum.BandHertz[b] - hertz));
        Assert.InRange(top, nearest - 1, nearest + 1);
        Assert.All(spectrum.BandHertz.Zip(spectrum.BandHertz.Skip(1)), p => Assert.True(p.First < p.Second));
    }

    [Fact]
    public void Frames_stand_a_hundredth_of_a_second_apart()
    {
        Assert.Equal(101, Hearing.Spectrum(MadeSounds.Tone(1, 440, 0.3)).Frames);
        Assert.Equal(0, Hearing.Spectrum(new MonoAudio([], Hearing.Rate)).Frames);
    }
}
