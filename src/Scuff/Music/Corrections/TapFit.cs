namespace Scuff.Music.Corrections;

/// <summary>
/// A row of beats through taps: the taps are numbered, and each beat lies on the straight line of least squares through the taps around it; taps that
/// are far from their line are left out. Up to 17 taps make one line, more of them follow a band that drifts.
/// </summary>
internal static class TapFit
{
    // Nobody taps faster: 400 a minute. What is quicker is one finger bouncing.
    private const double Quickest = 0.15;

    private const int Around = 8;

    // People tap within about 30 ms of where they mean to; what is further off than thrice the middle error, and than this, was a slip.
    private const double Slip = 0.06;

    /// <summary>The beats from the first tap to the last, evenly numbered, rising; empty for fewer than two taps.</summary>
    public static double[] BeatsOf(IEnumerable<double> seconds)
    {
        List<double> taps = [];
        foreach (double tap in seconds.Where(s => double.IsFinite(s) && s >= 0).Order())
        {
            if (taps.Count == 0 || tap - taps[^1] >= Quickest)
            {
                taps.Add(tap);
            }
        }

        if (taps.Count < 2)
        {
            return [];
        }

        List<(int Number, double Seconds)> kept = Numbered(taps);
        for (int round = 0; round < 4 && kept.Count > 3; round++)
        {
            double[] errors = [.. kept.Select(t => Math.Abs(t.Seconds - LineAt(kept, t.Number)))];
            double limit = Math.Max(Slip, 3 * 1.4826 * errors.Order().ElementAt(errors.Length / 2));
            int before = kept.Count;
            kept = [.. kept.Where((_, i) => errors[i] <= limit)];
            if (kept.Count == before)
            {
                break;
            }
        }

        double[] beats = [.. Enumerable.Range(kept[0].Number, kept[^1].Number - kept[0].Number + 1).Select(n => LineAt(kept, n))];
        for (int i = 1; i < beats.Length; i++)
        {
            if (beats[i] <= beats[i - 1])
            {
                return [];
            }
        }

        return beats;
    }

    private static List<(int Number, double Seconds)> Numbered(List<double> taps)
    {
        double[] gaps = [.. taps.Zip(taps.Skip(1), (a, b) => b - a).Order()];
        double period = gaps[gaps.Length / 2];
        List<(int Number, double Seconds)> numbered = [(0, taps[0])];
        foreach (double tap in taps.Skip(1))
        {
            double gap = tap - numbered[^1].Seconds;
            int steps = (int)Math.Min(Math.Round(gap / period), 10_000);
            if (steps == 0)
            {
                continue;
            }

            numbered.Add((numbered[^1].Number + steps, tap));

            // follows a band that gains or loses, slowly enough not to follow a slip
            period += 0.1 * ((gap / steps) - period);
        }

        return numbered;
    }

    // The line through the taps around a number, read at that number.
    private static double LineAt(List<(int Number, double Seconds)> taps, int number)
    {
        int near = taps.FindIndex(t => t.Number >= number);
        near = near < 0 ? taps.Count - 1 : near;
        int most = Math.Min(taps.Count, (2 * Around) + 1);
        int first = Math.Clamp(near - Around, 0, taps.Count - most);
        double meanNumber = 0;
        double meanSeconds = 0;
        for (int i = first; i < first + most; i++)
        {
            meanNumber += (double)taps[i].Number / most;
            meanSeconds += taps[i].Seconds / most;
        }

        double up = 0;
        double along = 0;
        for (int i = first; i < first + most; i++)
        {
            up += (taps[i].Number - meanNumber) * (taps[i].Seconds - meanSeconds);
            along += (taps[i].Number - meanNumber) * (taps[i].Number - meanNumber);
        }

        return along == 0 ? meanSeconds : meanSeconds + (up / along * (number - meanNumber));
    }
}
