namespace Scuff.Audio.Beats;

/// <summary>Least squares with a price on bends (Whittaker 1923), in time that grows with the length.</summary>
internal static class Banded
{
    /// <summary>
    /// The row b that makes Σ (m - b)² + price · Σ (b[i-1] - 2 b[i] + b[i+1])² smallest. Needs at least three values.
    /// </summary>
    public static double[] Smooth(IReadOnlyList<double> measured, double price)
    {
        int n = measured.Count;
        double[] diagonal = new double[n];
        double[] next = new double[n];
        double[] second = new double[n];
        Array.Fill(diagonal, 1);
        for (int i = 1; i + 1 < n; i++)
        {
            diagonal[i - 1] += price;
            diagonal[i] += 4 * price;
            diagonal[i + 1] += price;
            next[i - 1] -= 2 * price;
            next[i] -= 2 * price;
            second[i - 1] += price;
        }

        // a symmetric matrix of five bands, taken apart as lower · diagonal · upper
        double[] right = [.. measured];
        for (int i = 0; i < n; i++)
        {
            for (int k = 1; k <= 2 && i + k < n; k++)
            {
                double above = k == 1 ? next[i] : second[i];
                double factor = above / diagonal[i];
                diagonal[i + k] -= factor * above;
                if (k == 1 && i + 2 < n)
                {
                    next[i + 1] -= factor * second[i];
                }

                right[i + k] -= factor * right[i];
            }
        }

        for (int i = n - 1; i >= 0; i--)
        {
            double sum = right[i];
            sum -= i + 1 < n ? next[i] * right[i + 1] : 0;
            sum -= i + 2 < n ? second[i] * right[i + 2] : 0;
            right[i] = sum / diagonal[i];
        }

        return right;
    }
}
