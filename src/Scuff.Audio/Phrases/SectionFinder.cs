using Scuff.Audio.Bars;

namespace Scuff.Audio.Phrases;

/// <summary>
/// Where the sections begin: at counts 1, where the ear heard a start, preferring lengths that songs have (block
/// matching with a price on lengths, as Marmoret, Cohen and Bimbot do, 2020 to 2023).
/// </summary>
internal static class SectionFinder
{
    // A boundary is worth calling from a logit of -3.5 on where the lengths on both sides are liked (made songs of other seeds).
    private const double Worth = 3.5;

    // A verse or a chorus lasts some twenty seconds, whatever the tempo: eight bars of a ballad, sixteen of a polka (common practice, no source). Seconds, and
    // how far in logarithms one standard deviation is.
    private const double UsualSeconds = 20;

    private const double SpreadOfSeconds = 0.35;

    // What an unusual length costs at most: music that plainly changes is believed.
    private const double MostUnusual = 2;

    // Long sections are commoner than short ones.
    private const double LongPart = 0.5;

    // What a section of fewer than four bars costs, and one of fewer than eight.
    private const double VeryShort = 2;

    private const double Short = 0.6;

    // Longest section, in counts to eight.
    private const int Longest = 32;

    /// <summary>Where sections begin, rising; the first count 1 is the first of them. Empty without a count 1.</summary>
    /// <param name="counts">The count of every beat.</param>
    /// <param name="beats">The beats in seconds.</param>
    public static SectionStart[] Find(CountRow counts, double[] beats)
    {
        int[] ones = [.. Enumerable.Range(0, counts.Counts.Length).Where(i => counts.Counts[i] == 1)];
        if (ones.Length == 0)
        {
            return [];
        }

        int n = ones.Length;
        double[] best = new double[n + 1];
        double[] before = new double[n + 1];
        int[] from = new int[n + 1];
        Array.Fill(best, double.NegativeInfinity);
        best[0] = 0;
        for (int end = 1; end <= n; end++)
        {
            before[end] = double.NegativeInfinity;
            for (int start = Math.Max(0, end - Longest); start < end; start++)
            {
                double section = Score(start, end);
                before[end] = Either(before[end], before[start] + section);
                if (best[start] + section > best[end])
                {
                    (best[end], from[end]) = (best[start] + section, start);
                }
            }
        }

        // all ways to divide the track weigh in on how sure each beginning is: from here to the end, as above from the beginning to here
        double[] after = new double[n + 1];
        for (int start = n - 1; start >= 0; start--)
        {
            after[start] = double.NegativeInfinity;
            for (int end = start + 1; end <= Math.Min(n, start + Longest); end++)
            {
                after[start] = Either(after[start], Score(start, end) + after[end]);
            }
        }

        List<SectionStart> starts = [];
        for (int end = n; end > 0; end = from[end])
        {
            int start = from[end];
            starts.Add(new SectionStart(ones[start], start == 0 ? SurenessOf(counts.Start[ones[0]]) : Math.Exp(before[start] + after[start] - before[n])));
        }

        starts.Reverse();
        return [.. starts];

        double Score(int start, int end)
        {
            if (end == n)
            {
                return start == 0 ? 0 : counts.Start[ones[start]] + Worth;
            }

            // an intro is as long as it likes
            double length = Liking(ones[end] - ones[start], counts.BeatsInBar) - (start == 0 ? 0 : Unusual(beats[ones[end]] - beats[ones[start]]));
            return (start == 0 ? 0 : counts.Start[ones[start]] + Worth) + length;
        }
    }

    // The logarithm of a sum of which the logarithms are given.
    private static double Either(double a, double b) => double.IsNegativeInfinity(a) ? b : Math.Max(a, b) + Math.Log(1 + Math.Exp(-Math.Abs(a - b)));

    private static double SurenessOf(float logit) => 1 / (1 + Math.Exp(-logit));

    // Songs are built in fours of bars, and eights of them most of all (common practice; see the trade's notes on phrases).
    private static double Liking(int beats, int beatsInBar)
    {
        double bars = (double)beats / beatsInBar;
        double liking = beats % beatsInBar != 0 ? -2 : bars % 8 == 0 ? 0.7 : bars % 4 == 0 ? 0 : bars % 2 == 0 ? -0.7 : -1.4;
        return liking - (bars < 4 ? VeryShort : bars < 8 ? Short : 0);
    }

    // What a length far from the usual costs, at most so much.
    private static double Unusual(double seconds)
    {
        double far = Math.Log(seconds / UsualSeconds) / SpreadOfSeconds;
        return Math.Min(far * far / 2, MostUnusual) * (far > 0 ? LongPart : 1);
    }
}
