namespace Scuff.Audio.Evaluation;

/// <summary>Pairs of moments and what is counted from them.</summary>
internal static class Agreement
{
    // times are given to the tenth of a millisecond: what is exactly at the limit counts, however it was rounded
    private const double Rounding = 1e-9;

    /// <summary>
    /// The largest number of one-to-one pairs not further apart than the tolerance. For two rising rows, always taking the first
    /// possible partner from the left is best.
    /// </summary>
    public static int Pairs(ReadOnlySpan<double> truth, ReadOnlySpan<double> answer, double tolerance)
    {
        int i = 0;
        int j = 0;
        int pairs = 0;
        while (i < truth.Length && j < answer.Length)
        {
            double off = answer[j] - truth[i];
            if (Math.Abs(off) <= tolerance + Rounding)
            {
                pairs++;
                i++;
                j++;
            }
            else if (off < 0)
            {
                j++;
            }
            else
            {
                i++;
            }
        }

        return pairs;
    }

    /// <summary>Harmonic mean of hits over answers (precision) and hits over truths (recall); 1 if there is nothing on either side.</summary>
    public static double F(double hits, double truths, double answers)
    {
        if (truths == 0 && answers == 0)
        {
            return 1;
        }

        double precision = answers > 0 ? hits / answers : 0;
        double recall = truths > 0 ? hits / truths : 0;
        return precision + recall > 0 ? 2 * precision * recall / (precision + recall) : 0;
    }

    /// <summary>Index of the item nearest to a moment, the earlier of two equally near; the row is rising and not empty.</summary>
    public static int Nearest(ReadOnlySpan<double> row, double moment)
    {
        int at = row.BinarySearch(moment);
        if (at >= 0)
        {
            return at;
        }

        int after = ~at;
        return after == 0 ? 0
            : after == row.Length ? row.Length - 1
            : moment - row[after - 1] <= row[after] - moment ? after - 1
            : after;
    }
}
