using Scuff.Audio.Ears;

namespace Tests.Audio.Ears;

/// <summary>The quick product of rows and a table is the plain one.</summary>
public sealed class ProductTests
{
    [Theory]
    [InlineData(1, 1, 1, 8)]
    [InlineData(4, 3, 5, 16)]
    [InlineData(7, 2, 9, 24)]
    [InlineData(9, 16, 16, 32)]
    [InlineData(13, 1, 30, 40)]
    [InlineData(6, 64, 64, 64)]
    public void It_adds_what_a_plain_loop_adds(int rows, int stride, int length, int width)
    {
        const int start = 3;
        Random random = new(rows);
        float[] x = Drawn(start + ((rows - 1) * stride) + length);
        float[] table = Drawn(length * width);
        float[] sums = Drawn(rows * width);
        double[] expected = [.. sums.Select(s => (double)s)];
        for (int r = 0; r < rows; r++)
        {
            for (int o = 0; o < width; o++)
            {
                for (int i = 0; i < length; i++)
                {
                    expected[(r * width) + o] += (double)x[start + (r * stride) + i] * table[(i * width) + o];
                }
            }
        }

        Product.Add(x, start, stride, rows, length, table, width, sums);
        Assert.All(sums.Zip(expected), p => Assert.Equal(p.Second, p.First, 1e-5));

        float[] Drawn(int count) => [.. Enumerable.Range(0, count).Select(_ => (float)((2 * random.NextDouble()) - 1))];
    }

    [Theory]
    [InlineData(27, 16, 160, 32)]
    [InlineData(72, 3, 9, 16)]
    [InlineData(13, 48, 48, 48)]
    [InlineData(9, 5, 7, 24)]
    public void However_wide_the_machine_adds_the_answer_is_the_same_to_the_last_bit(int rows, int stride, int length, int width)
    {
        Random random = new(length);
        float[] x = [.. Enumerable.Range(0, ((rows - 1) * stride) + length).Select(_ => (float)random.NextDouble())];
        float[] table = [.. Enumerable.Range(0, length * width).Select(_ => (float)random.NextDouble() - 0.5f)];
        float[] sums = [.. Enumerable.Range(0, rows * width).Select(_ => (float)random.NextDouble())];
        float[] expected = [.. sums];
        for (int r = 0; r < rows; r++)
        {
            for (int o = 0; o < width; o++)
            {
                for (int i = 0; i < length; i++)
                {
                    expected[(r * width) + o] = MathF.FusedMultiplyAdd(x[(r * stride) + i], table[(i * width) + o], expected[(r * width) + o]);
                }
            }
        }

        Product.Add(x, 0, stride, rows, length, table, width, sums);
        Assert.Equal(expected, sums);
    }

    [Fact]
    public void A_row_beyond_the_end_is_refused()
        => Assert.ThrowsAny<ArgumentException>(() => Product.Add(new float[10], 0, 4, 4, 4, new float[64], 16, new float[64]));
}
