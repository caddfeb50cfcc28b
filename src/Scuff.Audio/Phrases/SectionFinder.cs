using Scuff.Audio.Bars;

namespace Scuff.Audio.Phrases;

/// <summary>
/// Where the sections begin: at counts 1, where the ear heard a start, preferring lengths that songs have (block
/// matching with a price on lengths, as Marmoret, Cohen and Bimbot do, 2020 to 2023).
/// </summary>
internal static class SectionFinder
{
    // A logit of -0.4 is where a boundary is worth calling if one wants as few missed as false.
    private const double Worth = 1.2;

    // Longest section, in counts to eight.
    private const int Longest = 32;

    /// <summary>Beats on which sections begin, rising; the first count 1 is the first of them. Empty without a count 1.</summary>
    public static int[] Find(CountRow counts)
    {
        int[] ones = [.. Enumerable.Range(0, counts.Counts.Length).Where(i => counts.Counts[i] == 1)];
        if (ones.Length == 0)
        {
            return [];
        }

        int n = ones.Length;
        double[] best = new double[n + 1];
        int[] from = new int[n + 1];
        Array.Fill(best, double.NegativeInfinity);
        best[0] = 0;
        for (int end = 1; end <= n; end++)
        {
            int endBeat = end < n ? ones[end] : counts.Counts.Length;
            for (int start = Math.Max(0, end - Longest); start < end; start++)
            {
                double here = start == 0 ? 0 : counts.Start[ones[start]] + Worth;
                double score = best[start] + here + Liking(endBeat - ones[start], counts.BeatsInBar, end == n);
                if (score > best[end])
                {
                    (best[end], from[end]) = (score, start);
                }
            }
        }

        List<int> starts = [];
        for (int end = n; end > 0; end = from[end])
        {
            starts.Add(ones[from[end]]);
        }

        starts.Reverse();
        return [.. starts];
    }

    // Songs are built in fours of bars, and eights of them most of all (common practice; see the trade's notes on phrases).
    private static double Liking(int beats, int beatsInBar, bool isLast)
    {
        if (isLast)
        {
            return 0;
        }

        double bars = (double)beats / beatsInBar;
        double liking = beats % beatsInBar != 0 ? -2 : bars % 8 == 0 ? 0.7 : bars % 4 == 0 ? 0 : bars % 2 == 0 ? -0.7 : -1.4;
        return bars < 4 ? liking - 2 : liking;
    }
}
