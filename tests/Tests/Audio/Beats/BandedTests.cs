using Scuff.Audio.Beats;

namespace Tests.Audio.Beats;

/// <summary>The quick way to a smooth row gives the row that the definition asks for.</summary>
public sealed class BandedTests
{
    [Theory]
    [InlineData(3, 2)]
    [InlineData(4, 0.5)]
    [InlineData(9, 2)]
    [InlineData(25, 100)]
    public void It_solves_what_a_dense_solver_solves(int n, double price)
    {
        Random random = new(n);
        double[] measured = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble() * 10)];
        double[] expected = Dense(measured, price);
        Assert.All(Banded.Smooth(measured, price).Zip(expected), p => Assert.Equal(p.Second, p.First, 1e-9));
    }

    [Fact]
    public void A_straight_line_is_left_alone()
    {
        double[] line = [.. Enumerable.Range(0, 50).Select(i => 3 + (47.25 * i))];
        Assert.All(Banded.Smooth(line, 1000).Zip(line), p => Assert.Equal(p.Second, p.First, 1e-6));
    }

    [Fact]
    public void Without_a_price_nothing_is_changed()
        => Assert.Equal([5.0, 1, 8, 2, 2], Banded.Smooth([5, 1, 8, 2, 2], 0));

    // (I + price · DᵀD) b = m, D the second differences, by elimination
    private static double[] Dense(double[] measured, double price)
    {
        int n = measured.Length;
        double[,] matrix = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            matrix[i, i] = 1;
        }

        double[] bend = [1, -2, 1];
        for (int row = 0; row + 2 < n; row++)
        {
            for (int a = 0; a < 3; a++)
            {
                for (int b = 0; b < 3; b++)
                {
                    matrix[row + a, row + b] += price * bend[a] * bend[b];
                }
            }
        }

        double[] right = [.. measured];
        for (int i = 0; i < n; i++)
        {
            for (int k = i + 1; k < n; k++)
            {
                double factor = matrix[k, i] / matrix[i, i];
                for (int j = i; j < n; j++)
                {
                    matrix[k, j] -= factor * matrix[i, j];
                }

                right[k] -= factor * right[i];
            }
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < n; j++)
            {
                right[i] -= matrix[i, j] * right[j];
            }

            right[i] /= matrix[i, i];
        }

        return right;
    }
}
