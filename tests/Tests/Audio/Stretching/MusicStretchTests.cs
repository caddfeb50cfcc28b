using Scuff.Audio.Songs;
using Scuff.Audio.Stretching;

namespace Tests.Audio.Stretching;

public sealed class MusicStretchTests
{
    private const int Rate = 44_100;
    private const double Seconds = 8;

    // what a listener hears as out of time begins at some 10 ms (trade notes on music, section 5)
    private const double MostOff = 0.003;

    private static readonly double[] Chord = [110, 220, 331.7, 523.3];
    private static readonly float[] Strike = [.. Enumerable.Range(0, 1500).Select(i => (float)(Math.Exp(-i / 300.0) * Math.Sin(2 * Math.PI * 900 * i / Rate)))];

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.6)]
    [InlineData(0.75)]
    [InlineData(0.9)]
    [InlineData(1.1)]
    [InlineData(1.25)]
    public void Strikes_over_a_chord_land_where_the_speed_puts_them(double speed)
    {
        double[] times = StrikeTimes();

        StereoSound played = MusicStretch.Stretch(Music(times), TimeMap.AtSpeed(speed));

        Assert.InRange(played.Seconds, (Seconds / speed) - 0.001, (Seconds / speed) + 0.001);
        Assert.All(times, t => Assert.InRange(Measured.Lag(played.Left, Rate, Strike, t / speed), -MostOff, MostOff));
    }

    [Fact]
    public void Strikes_follow_a_map_that_slows_down_and_speeds_up()
    {
        double[] times = StrikeTimes();
        TimeMap map = TimeMap.Of([new(0, 0.5), new(2, 3), new(4, 4.8), new(5, 6.5), new(8, 9.2)]);

        StereoSound played = MusicStretch.Stretch(Music(times), map, 9.5);

        Assert.Equal(9.5, played.Seconds, 3);
        Assert.All(times, t => Assert.InRange(Measured.Lag(played.Left, Rate, Strike, map.PlayedAt(t)), -MostOff, MostOff));
    }

    [Fact]
    public void Strikes_stay_as_sharp_and_loud_as_they_were()
    {
        double[] times = StrikeTimes();

        StereoSound played = MusicStretch.Stretch(Music(times, chord: 0), TimeMap.AtSpeed(0.7));

        foreach (double time in times)
        {
            int at = (int)Math.Round(time / 0.7 * Rate);
            double before = Measured.Rms(played.Left.AsSpan(at - 1200, 1000));
            double within = Measured.Rms(played.Left.AsSpan(at, 500));
            Assert.InRange(within / (0.7 * Measured.Rms(Strike.AsSpan(0, 500))), 0.85, 1.15);
            Assert.InRange(before / within, 0, 0.1);
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.8)]
    [InlineData(1.25)]
    public void Tones_keep_their_pitch_and_their_level(double speed)
    {
        StereoSound played = MusicStretch.Stretch(Music([]), TimeMap.AtSpeed(speed));

        ReadOnlySpan<float> middle = played.Left.AsSpan(Rate, 4 * Rate);
        foreach (double hertz in Chord)
        {
            Assert.InRange(Measured.Cents(middle, Rate, hertz), -5, 5);
            Assert.InRange(Measured.Amplitude(middle, Rate, hertz), 0.1 * 0.9, 0.1 * 1.1);
        }
    }

    [Fact]
    public void Left_stays_left_and_right_stays_right()
    {
        float[] left = [.. Enumerable.Range(0, 3 * Rate).Select(i => (float)(0.3 * Math.Sin(2 * Math.PI * 440 * i / Rate)))];
        float[] right = [.. Enumerable.Range(0, 3 * Rate).Select(i => (float)(0.3 * Math.Sin(2 * Math.PI * 660 * i / Rate)))];

        StereoSound played = MusicStretch.Stretch(new StereoSound(left, right, Rate), TimeMap.AtSpeed(0.8));

        ReadOnlySpan<float> middle = played.Left.AsSpan(Rate, Rate);
        Assert.InRange(Measured.Amplitude(middle, Rate, 440), 0.28, 0.32);
        Assert.InRange(Measured.Amplitude(middle, Rate, 660), 0, 0.003);
        Assert.InRange(Measured.Amplitude(played.Right.AsSpan(Rate, Rate), Rate, 440), 0, 0.003);
    }

    [Fact]
    public void At_its_own_speed_every_sample_is_the_same()
    {
        StereoSound music = Music(StrikeTimes());

        StereoSound played = MusicStretch.Stretch(music, TimeMap.AtSpeed(1));

        Assert.Equal(music.Left, played.Left);
        Assert.Equal(music.Right, played.Right);
    }

    [Fact]
    public void The_same_music_gives_the_same_samples()
    {
        StereoSound music = Music(StrikeTimes());

        Assert.Equal(MusicStretch.Stretch(music, TimeMap.AtSpeed(0.8)).Left, MusicStretch.Stretch(music, TimeMap.AtSpeed(0.8)).Left);
    }

    [Fact]
    public void Silence_a_breath_of_sound_and_nothing_at_all_come_through()
    {
        Assert.Empty(MusicStretch.Stretch(new StereoSound([], [], Rate), TimeMap.AtSpeed(0.8)).Left);
        Assert.All(MusicStretch.Stretch(new StereoSound(new float[Rate], new float[Rate], Rate), TimeMap.AtSpeed(0.8)).Left, s => Assert.Equal(0, s));
        Assert.All(MusicStretch.Stretch(new StereoSound([0.5f], [0.5f], Rate), TimeMap.AtSpeed(0.8)).Left, s => Assert.True(float.IsFinite(s)));
    }

    private static double[] StrikeTimes()
    {
        Random random = new(3);
        List<double> times = [];
        for (double t = 0.4; t < Seconds - 0.4; t += 0.16 + (0.12 * random.NextDouble()))
        {
            times.Add(t);
        }

        return [.. times];
    }

    private static StereoSound Music(double[] strikes, double chord = 0.1)
    {
        float[] samples = new float[(int)(Seconds * Rate)];
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = (float)(chord * Chord.Sum(h => Math.Sin(2 * Math.PI * h * i / Rate)));
        }

        foreach (double time in strikes)
        {
            int at = (int)Math.Round(time * Rate);
            for (int i = 0; i < Strike.Length; i++)
            {
                samples[at + i] += 0.7f * Strike[i];
            }
        }

        return new StereoSound(samples, samples, Rate);
    }
}
