namespace Scuff.Audio.Evaluation;

/// <summary>
/// How well a row of beats agrees with another. All times in seconds, rising. Nothing is trimmed: for a dance the beginning counts.
/// </summary>
public static class BeatMeasures
{
    /// <summary>How far a beat may be off, in seconds, to be right: 70 ms either way (Dixon 2001 and 2007).</summary>
    public const double Tolerance = 0.07;

    private const double CemgilDeviation = 0.04;

    /// <summary>
    /// Harmonic mean of precision and recall, each beat used once (Dixon, "Evaluation of the audio beat tracking system BeatRoot",
    /// Journal of New Music Research 2007). 1 for two empty rows, 0 if only one is empty. Also measures downbeats and count ones.
    /// </summary>
    public static double F(ReadOnlySpan<double> truth, ReadOnlySpan<double> answer, double tolerance = Tolerance)
        => Agreement.F(Agreement.Pairs(truth, answer, tolerance), truth.Length, answer.Length);

    /// <summary>
    /// <see cref="F"/> after the best single correction that a person makes with one button: none, every other beat (from the first
    /// or the second), a beat more in each gap, or the middles of the gaps instead (ours).
    /// </summary>
    public static double CorrectedF(ReadOnlySpan<double> truth, ReadOnlySpan<double> answer)
    {
        double[] middles = Middles(answer);
        double best = Math.Max(F(truth, answer), F(truth, middles));
        best = Math.Max(best, Math.Max(F(truth, EveryOther(answer, 0)), F(truth, EveryOther(answer, 1))));
        return Math.Max(best, F(truth, Merged(answer, middles)));
    }

    /// <summary>
    /// The mean of a Gaussian of 40 ms over the distance of each true beat to the nearest answered one, over the mean of both
    /// lengths (Cemgil, Kappen, Desain and Honing, "On tempo tracking", Journal of New Music Research 2001). 0 if a row is empty.
    /// </summary>
    public static double Cemgil(ReadOnlySpan<double> truth, ReadOnlySpan<double> answer)
    {
        if (truth.IsEmpty || answer.IsEmpty)
        {
            return 0;
        }

        double sum = 0;
        foreach (double beat in truth)
        {
            double off = answer[Agreement.Nearest(answer, beat)] - beat;
            sum += Math.Exp(-(off * off) / (2 * CemgilDeviation * CemgilDeviation));
        }

        return sum / (0.5 * (truth.Length + answer.Length));
    }

    /// <summary>
    /// The continuity measures: a beat is right if its phase and its interval are within 17.5 % of the true interval
    /// (Hainsworth 2004; Klapuri, Eronen and Astola 2006). The allowed levels are the annotated one, the off-beat, the double, and
    /// the half from the first or the second beat (Davies, Degara and Plumbley, "Evaluation methods for musical audio beat
    /// tracking algorithms", 2009). All 0 if a row has fewer than two beats.
    /// </summary>
    public static Continuity Continuity(ReadOnlySpan<double> truth, ReadOnlySpan<double> answer)
    {
        if (truth.Length < 2)
        {
            return default;
        }

        double[] middles = Middles(truth);
        (double longest, double total) = RightRuns(truth, answer);
        double anyLongest = longest;
        double anyTotal = total;
        foreach (double[] level in (double[][])[middles, Merged(truth, middles), EveryOther(truth, 0), EveryOther(truth, 1)])
        {
            (double l, double t) = RightRuns(level, answer);
            anyLongest = Math.Max(anyLongest, l);
            anyTotal = Math.Max(anyTotal, t);
        }

        return new(longest, total, anyLongest, anyTotal);
    }

    // Share of right beats in the longest unbroken run, and in all, over the length of the longer row.
    private static (double Longest, double Total) RightRuns(ReadOnlySpan<double> truth, ReadOnlySpan<double> answer)
    {
        const double share = 0.175;
        if (truth.Length < 2 || answer.Length < 2)
        {
            return (0, 0);
        }

        bool[] used = new bool[truth.Length];
        int run = 0;
        int longest = 0;
        int right = 0;
        for (int i = 0; i < answer.Length; i++)
        {
            int k = Agreement.Nearest(truth, answer[i]);

            // the interval before, or the one after for a first beat
            bool after = i == 0 || k == 0;
            double trueInterval = after ? Interval(truth, k) : truth[k] - truth[k - 1];
            double interval = after ? Interval(answer, i) : answer[i] - answer[i - 1];
            bool isRight = !used[k]
                && Math.Abs(answer[i] - truth[k]) < share * trueInterval
                && Math.Abs(1 - (interval / trueInterval)) < share;
            used[k] |= isRight;
            run = isRight ? run + 1 : 0;
            right += isRight ? 1 : 0;
            longest = Math.Max(longest, run);
        }

        double length = Math.Max(truth.Length, answer.Length);
        return (longest / length, right / length);

        static double Interval(ReadOnlySpan<double> row, int i) => i + 1 < row.Length ? row[i + 1] - row[i] : row[i] - row[i - 1];
    }

    private static double[] Middles(ReadOnlySpan<double> row)
    {
        double[] middles = new double[Math.Max(0, row.Length - 1)];
        for (int i = 0; i < middles.Length; i++)
        {
            middles[i] = (row[i] + row[i + 1]) / 2;
        }

        return middles;
    }

    private static double[] EveryOther(ReadOnlySpan<double> row, int from)
    {
        double[] kept = new double[(row.Length - from + 1) / 2];
        for (int i = 0; i < kept.Length; i++)
        {
            kept[i] = row[from + (2 * i)];
        }

        return kept;
    }

    private static double[] Merged(ReadOnlySpan<double> row, ReadOnlySpan<double> middles)
    {
        double[] all = [.. row, .. middles];
        Array.Sort(all);
        return all;
    }
}
