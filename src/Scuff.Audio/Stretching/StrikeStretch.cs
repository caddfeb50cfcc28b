using System.Runtime.CompilerServices;

namespace Scuff.Audio.Stretching;

/// <summary>
/// Moves strikes to where the map has them. Around each attack the sound is copied as it is, in one piece, so that it stays sharp and lands on its
/// sample; what lies between is laid down again in short overlapping windows, closer or wider apart. After Driedger, Müller and Ewert, Improving
/// time-scale modification of music signals using harmonic-percussive separation (2014); the copying of the attacks is ours.
/// </summary>
internal static class StrikeStretch
{
    private const double WindowSeconds = 0.0116;

    // an attack is looked for in steps of this length
    private const double StepSeconds = 0.0007;

    // it is this much louder, in power, than what sounded in the steps before it
    private const double Louder = 6;
    private const int StepsBefore = 24;

    // the parting of strikes and tones leaves a breath of sound ahead of an attack: where the rise is steepest within this time is the attack itself
    private const double Steepest = 0.025;

    // a step that rises by this share of the steepest belongs to the attack
    private const double StillRising = 0.2;

    // copied whole: from so long before to so long after the first step of an attack
    private const double Before = 0.002;
    private const double After = 0.010;

    // attacks closer than this are one
    private const double Closest = 0.02;

    // what is this far below the loudest of the whole, in power, strikes nobody
    private const double Faintest = 1e-5;

    /// <summary>Adds the moved strikes to the outputs.</summary>
    public static void AddTo(
        float[] left, float[] right, int rate, Func<double, double> sourceAt, Func<double, double> playedAt, float[] outLeft, float[] outRight, CancellationToken cancel)
    {
        int hop = (int)Math.Round(WindowSeconds * rate / 2);
        float[] window = StrikeFilter.Hann(2 * hop);
        List<(double From, double Until, int Shift)> copied = [];
        foreach (int attack in Attacks(left, right, rate))
        {
            int played = (int)Math.Round(playedAt(attack));
            double from = played - (Before * rate) - hop;
            if (copied.Count > 0 && copied[^1].Until > from)
            {
                copied[^1] = copied[^1] with { Until = from };
            }

            copied.Add((from, played + (After * rate) + hop, attack - played));
        }

        int zone = 0;
        for (int centre = 0; centre < outLeft.Length + hop; centre += hop)
        {
            if (centre % (1024 * hop) == 0)
            {
                cancel.ThrowIfCancellationRequested();
            }

            while (zone < copied.Count && copied[zone].Until < centre)
            {
                zone++;
            }

            Lay(left, right, SourceOf(copied, zone, centre, sourceAt) - hop, outLeft, outRight, centre - hop, window);
        }
    }

    private static int SourceOf(List<(double From, double Until, int Shift)> copied, int zone, int centre, Func<double, double> sourceAt)
    {
        if (zone < copied.Count && centre >= copied[zone].From)
        {
            return centre + copied[zone].Shift;
        }

        // between the pieces that are copied, evenly from the end of one to the beginning of the next
        if (zone == 0 || zone == copied.Count)
        {
            double off = zone == 0 || copied.Count == 0 ? 0 : copied[^1].Until + copied[^1].Shift - sourceAt(copied[^1].Until);

            // behind the last, what was copied ahead of the map is given back within the time it took
            double since = zone == 0 ? 0 : centre - copied[^1].Until;
            double length = zone == 0 ? 1 : copied[^1].Until - copied[^1].From;
            return (int)Math.Round(sourceAt(centre) + (off * Math.Max(0, 1 - (since / length))));
        }

        (_, double from, int shift) = copied[zone - 1];
        (double until, _, int next) = copied[zone];
        double share = (centre - from) / (until - from);
        return (int)Math.Round(from + shift + (share * (until + next - from - shift)));
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Lay(float[] left, float[] right, int source, float[] outLeft, float[] outRight, int to, float[] window)
    {
        int first = Math.Max(0, Math.Max(-to, -source));
        int until = Math.Min(window.Length, Math.Min(outLeft.Length - to, left.Length - source));
        for (int i = first; i < until; i++)
        {
            outLeft[to + i] += left[source + i] * window[i];
            outRight[to + i] += right[source + i] * window[i];
        }
    }

    // The first samples of the attacks, rising.
    private static List<int> Attacks(float[] left, float[] right, int rate)
    {
        int step = Math.Max(1, (int)Math.Round(StepSeconds * rate));
        double[] power = new double[left.Length / step];
        double loudest = 0;
        for (int b = 0; b < power.Length; b++)
        {
            double sum = 0;
            for (int i = b * step; i < (b + 1) * step; i++)
            {
                sum += (left[i] * left[i]) + (right[i] * right[i]);
            }

            power[b] = sum / step;
            loudest = Math.Max(loudest, power[b]);
        }

        int reach = (int)(Steepest / StepSeconds);
        List<int> attacks = [];
        double before = 0;
        int last = int.MinValue / 2;
        for (int b = 1; b < power.Length; b++)
        {
            before += power[b - 1] - (b > StepsBefore ? power[b - 1 - StepsBefore] : 0);
            if (power[b] > Louder * Math.Max(0, before) / StepsBefore && power[b] > Faintest * loudest && b - last > Closest / StepSeconds)
            {
                last = FirstOf(power, b, Math.Min(power.Length, b + reach));
                attacks.Add(last * step);

                // the sum begins anew behind the attack, or its own breath would count again
                int next = Math.Min(power.Length - 1, last + 1);
                before = 0;
                for (int i = Math.Max(0, next - StepsBefore); i < next; i++)
                {
                    before += power[i];
                }

                b = next;
            }
        }

        return attacks;
    }

    private static int FirstOf(double[] power, int from, int until)
    {
        int steepest = from;
        for (int b = from; b < until; b++)
        {
            if (power[b] - power[b - 1] > power[steepest] - power[steepest - 1])
            {
                steepest = b;
            }
        }

        double rise = StillRising * (power[steepest] - power[steepest - 1]);
        while (steepest > from && power[steepest - 1] - power[steepest - 2] > rise)
        {
            steepest--;
        }

        return steepest;
    }
}
