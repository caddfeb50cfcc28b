using Scuff.Audio.Signals;

namespace Tests.Audio.Signals;

/// <summary>A change of rate keeps what can be kept, loses the rest, and moves nothing.</summary>
public sealed class ResamplerTests
{
    public static TheoryData<int, int> Rates() => new()
    {
        { 44_100, 22_050 },
        { 48_000, 22_050 },
        { 32_000, 22_050 },
        { 96_000, 22_050 },
        { 192_000, 22_050 },
        { 88_200, 22_050 },
        { 8_000, 22_050 },
        { 11_025, 22_050 },
        { 22_050, 44_100 },
        { 44_101, 22_050 },
        { 37_799, 22_050 },
    };

    [Theory]
    [MemberData(nameof(Rates))]
    public void A_tone_below_the_limit_keeps_its_strength_and_its_phase(int from, int to)
    {
        double limit = Math.Min(from, to) / 2.0;
        foreach (double hertz in (double[])[100, 0.3 * limit, 0.6 * limit, 0.85 * limit])
        {
            float[] heard = Resampler.Convert(Tone(hertz, from, from / 2), from, to);
            float[] expected = Tone(hertz, to, heard.Length);

            // 60 dB below: a thousandth of the strength, or of a radian
            Assert.InRange(Against(heard, expected), -300, -60);
        }
    }

    [Theory]
    [InlineData(44_100, 22_050)]
    [InlineData(48_000, 22_050)]
    [InlineData(96_000, 22_050)]
    [InlineData(192_000, 22_050)]
    [InlineData(44_101, 22_050)]
    public void A_tone_above_the_limit_is_80_decibels_down(int from, int to)
    {
        for (double hertz = to / 2.0; hertz < from / 2.0; hertz += from / 61.0)
        {
            float[] heard = Resampler.Convert(Tone(hertz, from, from / 2), from, to);
            float[] middle = heard[1_000..^1_000];
            double strength = Math.Sqrt(middle.Average(v => (double)v * v) * 2);

            Assert.InRange(20 * Math.Log10(strength + 1e-15), -300, -80);
        }
    }

    [Theory]
    [MemberData(nameof(Rates))]
    public void A_click_stays_where_it_is(int from, int to)
    {
        float[] click = new float[from];
        int at = from / 3;
        click[at] = 1;

        float[] heard = Resampler.Convert(click, from, to);

        // the middle of the energy: a click is as wide on both sides
        double energy = heard.Sum(v => (double)v * v);
        double middle = heard.Select((v, i) => i * (double)v * v).Sum() / energy;
        Assert.Equal((double)at / from, middle / to, 1e-6);
    }

    [Fact]
    public void Blocks_of_any_size_give_the_same_bits()
    {
        Random random = new(3);
        float[] samples = [.. Enumerable.Range(0, 20_000).Select(_ => (random.NextSingle() * 2) - 1)];
        foreach ((int from, int to) in ((int, int)[])[(44_100, 22_050), (48_000, 22_050), (44_101, 22_050), (8_000, 22_050)])
        {
            float[] whole = Resampler.Convert(samples, from, to);
            Resampler resampler = new(from, to);
            List<float> pieces = [];
            for (int at = 0; at < samples.Length;)
            {
                int count = Math.Min(random.Next(1, 700), samples.Length - at);
                pieces.AddRange(resampler.Push(samples.AsSpan(at, count)));
                at += count;
            }

            pieces.AddRange(resampler.Finish());

            Assert.Equal(whole, pieces);
            Assert.Equal((int)Math.Ceiling(samples.Length * (double)to / from), whole.Length);
        }
    }

    [Fact]
    public void The_same_rate_changes_nothing_and_no_samples_give_none()
    {
        Assert.Equal([0.5f, -0.5f], Resampler.Convert([0.5f, -0.5f], 44_100, 44_100));
        Assert.Empty(Resampler.Convert([], 44_100, 22_050));
        Assert.Single(Resampler.Convert([1f], 44_100, 22_050));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Resampler(0, 22_050));
    }

    private static float[] Tone(double hertz, int rate, int count)
        => [.. Enumerable.Range(0, count).Select(i => (float)Math.Sin((2 * Math.PI * hertz * i / rate) + 0.7))];

    // The difference in decibels, away from the ends, where the sound begins out of silence.
    private static double Against(float[] heard, float[] expected)
    {
        double wrong = 0;
        double all = 0;
        for (int i = 1_000; i < heard.Length - 1_000; i++)
        {
            wrong += (heard[i] - (double)expected[i]) * (heard[i] - (double)expected[i]);
            all += expected[i] * (double)expected[i];
        }

        return 10 * Math.Log10((wrong / all) + 1e-30);
    }
}
