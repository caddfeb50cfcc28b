using Scuff.Audio.Ears;

namespace Tests.Audio.Ears;

/// <summary>A filter made tile by tile is the filter made tap by tap.</summary>
public sealed class TileFilterTests
{
    private const int Inputs = 16;

    private const int Width = 24;

    [Theory]
    [InlineData(2, 6)]
    [InlineData(3, 5)]
    [InlineData(4, 4)]
    [InlineData(5, 3)]
    [InlineData(6, 2)]
    [InlineData(2, 7)]
    [InlineData(4, 5)]
    [InlineData(6, 3)]
    [InlineData(7, 2)]
    public void It_adds_what_the_plain_filter_adds(int outputs, int taps)
    {
        TileFilter filter = new(outputs, taps);
        Random random = new((outputs * 10) + taps);
        float[] x = Drawn(random, filter.Points * Inputs);
        float[] weights = Drawn(random, taps * Inputs * Width);
        float[] sums = Drawn(random, outputs * Width);
        double[] expected = [.. sums.Select(s => (double)s)];
        for (int o = 0; o < outputs; o++)
        {
            for (int k = 0; k < taps; k++)
            {
                for (int i = 0; i < Inputs * Width; i++)
                {
                    expected[(o * Width) + (i % Width)] += (double)x[((o + k) * Inputs) + (i / Width)] * weights[(k * Inputs * Width) + i];
                }
            }
        }

        Assert.Equal(outputs + taps - 1, filter.Points);
        float[] tables = filter.Tables(weights);
        float[] points = new float[filter.Points * Inputs];
        float[] products = new float[filter.Points * Width];
        filter.Spread(x, 0, Inputs, Inputs, points, 0, Inputs);
        for (int p = 0; p < filter.Points; p++)
        {
            Product.Add(points, p * Inputs, Inputs, 1, Inputs, tables.AsSpan(p * Inputs * Width, Inputs * Width), Width, products.AsSpan(p * Width));
        }

        filter.Gather(products, 0, Width, Width, sums, 0, Width);
        Assert.All(sums.Zip(expected), p => Assert.Equal(p.Second, p.First, 1e-4));
    }

    [Theory]
    [InlineData(1, 7)]
    [InlineData(7, 1)]
    [InlineData(3, 4)]
    [InlineData(5, 5)]
    public void Tiles_that_need_other_points_are_refused(int outputs, int taps)
        => Assert.ThrowsAny<ArgumentOutOfRangeException>(() => new TileFilter(outputs, taps));

    [Fact]
    public void A_tile_beyond_the_end_is_refused()
    {
        TileFilter filter = new(4, 5);
        float[] enough = new float[8 * 8];
        Assert.ThrowsAny<ArgumentException>(() => filter.Spread(new float[63], 0, 8, 8, enough, 0, 8));
        Assert.ThrowsAny<ArgumentException>(() => filter.Spread(enough, 0, 8, 8, new float[63], 0, 8));
        Assert.ThrowsAny<ArgumentException>(() => filter.Gather(new float[63], 0, 8, 8, enough, 0, 8));
        Assert.ThrowsAny<ArgumentException>(() => filter.Gather(enough, 0, 8, 8, new float[31], 0, 8));
    }

    private static float[] Drawn(Random random, int count) => [.. Enumerable.Range(0, count).Select(_ => (float)((2 * random.NextDouble()) - 1))];
}
