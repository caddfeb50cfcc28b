using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Scuff.Audio.Signals;

namespace Scuff.Audio.Beats;

/// <summary>
/// The row of beats that agrees best with what the ear heard: a dynamic programme over time and beat length, as Ellis
/// (2007) has it, with the length as a state as in the bar-pointer models (Krebs, Böck and Widmer 2015).
/// </summary>
internal static class BeatPath
{
    // Beats from 240 a minute down to 45; frames are hundredths of a second.
    private const int Shortest = 25;

    private const int Longest = 134;

    // What the ear is surest of counts for no more than this; a lone wrong answer must not bend the whole row.
    private const float Surest = 4.5f;

    // A length may change by this part from one beat to the next.
    private const double MostChange = 0.12;

    // 3 % from one beat to the next costs about one and a half, 10 % more than a beat's whole evidence.
    private const double Stiffness = 1500;

    // What every second of music costs that is left without beats at either end.
    private const double PerSecondLeft = 2;

    /// <summary>The best row of beats whose lengths stay within the limits, in seconds; empty where nothing was heard.</summary>
    /// <param name="heard">The beat logits, [steps].</param>
    /// <param name="first">The music begins here, in seconds.</param>
    /// <param name="last">The music ends here, in seconds.</param>
    /// <param name="shortest">No beat is shorter, in seconds.</param>
    /// <param name="longest">No beat is longer, in seconds.</param>
    public static BeatRow Find(float[] heard, double first, double last, double shortest = 0.25, double longest = 1.34)
        => Search(Evidence(heard), first, last, shortest, longest);

    /// <summary>Logits at 50 steps a second to 100 frames, by straight lines; none counts for more than a lone answer may.</summary>
    public static float[] Evidence(float[] heard)
    {
        float[] evidence = new float[heard.Length * 2];
        for (int i = 0; i < evidence.Length; i++)
        {
            double at = Math.Clamp((i - 0.5) / 2, 0, Math.Max(0, heard.Length - 1));
            int k = (int)at;
            float right = heard[Math.Min(k + 1, heard.Length - 1)];
            evidence[i] = Math.Clamp((float)(heard[k] + ((right - heard[k]) * (at - k))), -Surest, Surest);
        }

        return evidence;
    }

    /// <summary>The same from evidence, [frames], as <see cref="Evidence"/> makes it.</summary>
    /// <param name="evidence">The evidence.</param>
    /// <param name="first">The music begins here, in seconds.</param>
    /// <param name="last">The music ends here, in seconds.</param>
    /// <param name="shortest">No beat is shorter, in seconds.</param>
    /// <param name="longest">No beat is longer, in seconds.</param>
    /// <param name="perSecondLeft">What every second of music costs that is left without beats at either end.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static BeatRow Search(
        float[] evidence, double first, double last, double shortest = 0.25, double longest = 1.34, double perSecondLeft = PerSecondLeft)
    {
        int from = Math.Clamp((int)(first * Hearing.FramesPerSecond), 0, evidence.Length);
        int to = Math.Clamp((int)Math.Ceiling(last * Hearing.FramesPerSecond), from, evidence.Length);
        int low = Math.Clamp((int)Math.Round(shortest * Hearing.FramesPerSecond), Shortest, Longest);
        int high = Math.Clamp((int)Math.Round(longest * Hearing.FramesPerSecond), low, Longest);
        int lengths = high - low + 1;
        int frames = to - from;
        if (frames < 2 * low)
        {
            return BeatRow.None;
        }

        double[][] change = [.. Enumerable.Range(low, lengths).Select(now => Costs(now, low, high))];
        int[] firstBefore = [.. Enumerable.Range(low, lengths).Select(now => LowestBefore(now, low))];

        // a beat looks back no farther than the longest one, so scores are kept for that long only
        int kept = high + 1;
        float[] score = new float[(kept * lengths) + Vector256<double>.Count];
        short[] before = new short[frames * lengths];
        double perFrame = perSecondLeft / Hearing.FramesPerSecond;
        int bestFrame = 0;
        int bestLength = 0;
        double best = double.NegativeInfinity;
        for (int t = 0; t < frames; t++)
        {
            double leftAfter = (frames - 1 - t) * perFrame;
            float here = evidence[from + t];
            for (int l = 0; l < lengths; l++)
            {
                double top = -t * perFrame;
                int chosen = -1;
                int previous = t - (low + l);
                if (previous >= 0)
                {
                    (top, int k) = Best(score.AsSpan((previous % kept * lengths) + firstBefore[l]), change[l], top);
                    chosen = k < 0 ? k : firstBefore[l] + k;
                }

                double total = top + here;
                score[(t % kept * lengths) + l] = (float)total;
                before[(t * lengths) + l] = (short)chosen;
                if (total - leftAfter > best)
                {
                    (best, bestFrame, bestLength) = (total - leftAfter, t, l);
                }
            }
        }

        List<int> beats = [];
        for (int t = bestFrame, l = bestLength; l >= 0;)
        {
            beats.Add(from + t);
            int earlier = before[(t * lengths) + l];
            t -= low + l;
            l = earlier;
        }

        beats.Reverse();
        return new BeatRow([.. Smoothed(beats, evidence)], best);
    }

    // The first of the scores that is highest once its cost is taken off, and which; -1 where none is above the floor.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (double Top, int Index) Best(ReadOnlySpan<float> scores, double[] costs, double floor)
    {
        // there are as many costs as fill the lanes; the last of the scores is touched before the loop trusts that
        int lanes = Vector256<double>.Count;
        _ = scores[costs.Length - 1];
        ref float from = ref MemoryMarshal.GetReference(scores);
        ref double off = ref MemoryMarshal.GetArrayDataReference(costs);
        Vector256<double> top = Vector256.Create(floor);
        Vector256<double> chosen = Vector256.Create(-1.0);
        Vector256<double> index = Vector256.Create(0.0, 1, 2, 3);
        for (int k = 0; k < costs.Length; k += lanes)
        {
            Vector256<double> s = Vector256.WidenLower(Vector128.LoadUnsafe(ref from, (nuint)k).ToVector256Unsafe()) - Vector256.LoadUnsafe(ref off, (nuint)k);
            Vector256<double> isHigher = Vector256.GreaterThan(s, top);
            top = Vector256.ConditionalSelect(isHigher, s, top);
            chosen = Vector256.ConditionalSelect(isHigher, index, chosen);
            index += Vector256.Create((double)lanes);
        }

        // the highest of the lanes, and of those that have it the first
        Vector256<double> most = Vector256.Max(top, Vector256.Shuffle(top, Vector256.Create(2L, 3, 0, 1)));
        most = Vector256.Max(most, Vector256.Shuffle(most, Vector256.Create(1L, 0, 3, 2)));
        Vector256<double> at = Vector256.ConditionalSelect(Vector256.Equals(top, most), chosen, Vector256.Create(double.PositiveInfinity));
        at = Vector256.Min(at, Vector256.Shuffle(at, Vector256.Create(2L, 3, 0, 1)));
        at = Vector256.Min(at, Vector256.Shuffle(at, Vector256.Create(1L, 0, 3, 2)));
        return (most[0], (int)at[0]);
    }

    private static int LowestBefore(int now, int low) => Math.Max(low, (int)Math.Ceiling(now * (1 - MostChange))) - low;

    // What each length before one costs; as many as fill the lanes, and those that are too many cost more than can be.
    private static double[] Costs(int now, int low, int high)
    {
        int first = LowestBefore(now, low) + low;
        int last = Math.Min(high, (int)Math.Floor(now * (1 + MostChange)));
        int lanes = Vector256<double>.Count;
        double[] costs = new double[(last - first + lanes) / lanes * lanes];
        costs.AsSpan().Fill(double.PositiveInfinity);
        for (int earlier = first; earlier <= last; earlier++)
        {
            // half a frame either way is the grid's own roughness and costs nothing
            double difference = Math.Max(0, Math.Abs(now - earlier) - 0.5);
            double ratio = difference / now;
            costs[earlier - first] = Stiffness * ratio * ratio;
        }

        return costs;
    }

    // Every beat to the top of its own peak, then the whole row drawn a little straighter: hundredths of a second are
    // rougher than what dancers hear. Least squares with a price on bends (Whittaker 1923).
    private static double[] Smoothed(List<int> beats, float[] evidence)
    {
        const double Bend = 2;
        int n = beats.Count;
        double[] measured = [.. beats.Select(b => TopNear(b, evidence))];
        if (n < 4)
        {
            return [.. measured.Select(m => m / Hearing.FramesPerSecond)];
        }

        double[] solved = Banded.Smooth(measured, Bend);
        return [.. solved.Select(m => m / Hearing.FramesPerSecond)];
    }

    private static double TopNear(int frame, float[] evidence)
    {
        int top = frame;
        for (int i = Math.Max(1, frame - 2); i <= Math.Min(evidence.Length - 2, frame + 2); i++)
        {
            if (evidence[i] > evidence[top])
            {
                top = i;
            }
        }

        if (top <= 0 || top >= evidence.Length - 1)
        {
            return top;
        }

        (float a, float b, float c) = (evidence[top - 1], evidence[top], evidence[top + 1]);
        float curve = a - (2 * b) + c;
        return curve < -1e-6f ? top + Math.Clamp(0.5 * (a - c) / curve, -0.5, 0.5) : top;
    }
}
