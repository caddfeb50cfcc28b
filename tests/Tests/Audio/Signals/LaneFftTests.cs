using System.Runtime.Intrinsics;
using Scuff.Audio.Signals;

namespace Tests.Audio.Signals;

/// <summary>The quick transform is the plain one.</summary>
public sealed class LaneFftTests
{
    [Theory]
    [InlineData(64, 5)]
    [InlineData(1024, 40)]
    [InlineData(4096, 1000)]
    public void A_sine_of_amplitude_one_has_magnitude_one_at_its_bin(int size, int bin)
    {
        float[] sine = [.. Enumerable.Range(0, size * 2).Select(i => (float)Math.Sin(2 * Math.PI * bin * i / size))];
        Vector256<float>[] magnitudes = new Vector256<float>[size / 2];
        new LaneFft(size).Magnitudes(sine, 0, size / 8, magnitudes);
        for (int lane = 0; lane < LaneFft.Lanes; lane++)
        {
            Assert.Equal(1, magnitudes[bin][lane], 1e-4f);

            // the neighbours under a Hann window hold a half, those beyond nothing
            Assert.Equal(0.5, magnitudes[bin + 1][lane], 1e-4f);
            Assert.Equal(0, magnitudes[bin + 3][lane], 1e-4f);
        }
    }

    [Theory]
    [InlineData(8)]
    [InlineData(32)]
    [InlineData(256)]
    public void Eight_windows_of_noise_have_the_magnitudes_of_a_plain_transform(int size)
    {
        Random random = new(11);
        float[] samples = [.. Enumerable.Range(0, size + 100).Select(_ => (float)((2 * random.NextDouble()) - 1))];
        const int hop = 13;
        foreach (int start in (int[])[0, -size / 2, 30, 90])
        {
            Vector256<float>[] magnitudes = new Vector256<float>[size / 2];
            new LaneFft(size).Magnitudes(samples, start, hop, magnitudes);
            for (int lane = 0; lane < LaneFft.Lanes; lane++)
            {
                double[] expected = Plain(samples, start + (lane * hop), size);
                for (int k = 0; k < size / 2; k++)
                {
                    Assert.Equal(expected[k], magnitudes[k][lane], 1e-4);
                }
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    [InlineData(1000)]
    public void A_size_that_is_no_power_of_two_of_at_least_eight_is_refused(int size)
        => Assert.Throws<ArgumentOutOfRangeException>(() => new LaneFft(size));

    // the sum as the definition of the discrete Fourier transform has it, under a Hann window whose sum is two
    private static double[] Plain(float[] samples, int start, int size)
    {
        double[] window = [.. Enumerable.Range(0, size).Select(i => Math.Pow(Math.Sin(Math.PI * i / size), 2))];
        double sum = window.Sum();
        double[] magnitudes = new double[size / 2];
        for (int k = 0; k < magnitudes.Length; k++)
        {
            double re = 0;
            double im = 0;
            for (int i = 0; i < size; i++)
            {
                int at = start + i;
                double value = at >= 0 && at < samples.Length ? samples[at] * window[i] * 2 / sum : 0;
                re += value * Math.Cos(2 * Math.PI * k * i / size);
                im -= value * Math.Sin(2 * Math.PI * k * i / size);
            }

            magnitudes[k] = Math.Sqrt((re * re) + (im * im));
        }

        return magnitudes;
    }
}
