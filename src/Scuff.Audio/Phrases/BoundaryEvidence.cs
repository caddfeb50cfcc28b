namespace Scuff.Audio.Phrases;

/// <summary>
/// How likely a section begins on each beat: what the ear heard, how much the colour of the music changes (Foote 2000), whether music begins here that is
/// heard elsewhere too and not already before, or ends here that goes on elsewhere (the idea of the structure features of Serrà and others, 2012), and
/// what the ear heard at the beats from which eight bars sound the same: a verse begins where the other verses do.
/// </summary>
internal static class BoundaryEvidence
{
    /// <summary>What speaks for a start, in the order of <see cref="Weights"/>; the last is always 1.</summary>
    public static IReadOnlyList<string> Clues { get; } = ["heard", "colour near", "colour far", "begins", "ends", "echo", "echoed", "bias"];

    /// <summary>Logistic regression on made songs of other seeds than any that is scored, two thirds of them of our own band (<c>bench</c>, "weigh").</summary>
    public static IReadOnlyList<double> Weights { get; } = [1.1, 1.8, 1.2, 7.3, 2.9, 0.97, 0.5, -6.1];

    // Bars on either side that are compared.
    private const int Bars = 4;

    // Bars that must sound the same for what was heard at one place to count at another: a verse, not one round of its chords.
    private const int EchoBars = 8;

    // Likeness below this is no likeness.
    private const double Unlike = 0.3;

    private const double Unechoed = 0.4;

    // A place that is so much less alike than the most alike one counts a third of it.
    private const double Sharpness = 0.03;

    // What speaks against hearing echoes, in echoes.
    private const double EchoDoubt = 0.3;

    /// <summary>A logit for each beat, [beats].</summary>
    /// <param name="start">What the ear heard of a start at each beat, [beats].</param>
    /// <param name="beatsInBar">Beats in a bar.</param>
    /// <param name="features">What the beats sound like.</param>
    /// <param name="likeness">How alike stretches of the track are.</param>
    public static float[] Of(float[] start, int beatsInBar, BeatFeatures features, SelfLikeness likeness)
    {
        float[] evidence = new float[start.Length];
        for (int at = 0; at < start.Length; at++)
        {
            evidence[at] = CluesAt(at, start, beatsInBar, features, likeness) is double[] clues ? (float)clues.Zip(Weights, (c, w) => c * w).Sum() : start[at];
        }

        return evidence;
    }

    /// <summary>What speaks for a start at a beat, [clues]; null so near the end of the track that only what was heard there tells.</summary>
    /// <param name="at">The beat.</param>
    /// <param name="start">What the ear heard of a start at each beat, [beats].</param>
    /// <param name="beatsInBar">Beats in a bar.</param>
    /// <param name="features">What the beats sound like.</param>
    /// <param name="likeness">How alike stretches of the track are.</param>
    public static double[]? CluesAt(int at, float[] start, int beatsInBar, BeatFeatures features, SelfLikeness likeness)
    {
        int beats = start.Length;
        int far = Bars * beatsInBar;
        int room = Math.Min(at, beats - at);
        int reach = Math.Min(room, far);
        if (reach < beatsInBar)
        {
            return null;
        }

        double begins = 0;
        double ends = 0;
        for (int other = Math.Max(reach, at - SelfLikeness.Farthest); other <= Math.Min(beats - reach, at + SelfLikeness.Farthest); other++)
        {
            if (Math.Abs(at - other) < far)
            {
                continue;
            }

            double after = likeness.Between(at, other, reach);
            double before = likeness.Between(at - reach, other - reach, reach);
            begins = Math.Max(begins, after - Math.Max(before, Unlike));
            ends = Math.Max(ends, before - Math.Max(after, Unlike));
        }

        (double echo, double echoed) = EchoOf(start, at, EchoBars * beatsInBar, likeness);
        return [start[at], Change(reach), Change(Math.Min(room, 2 * far)), begins, ends, echo, echoed, 1];

        double Change(int span) => 1 - Cosine(Mean(features.Colour, at - span, at), Mean(features.Colour, at, at + span));
    }

    // What the ear heard where the music is the same for so long from there on, the most alike places counting most; and how much such music there is, 0 to 1.
    private static (double Echo, double Echoed) EchoOf(float[] start, int at, int most, SelfLikeness likeness)
    {
        int length = Math.Min(most, start.Length - at);
        int first = Math.Max(0, at - SelfLikeness.Farthest);
        int last = Math.Min(start.Length - length, at + SelfLikeness.Farthest);
        double[] alike = new double[Math.Max(0, last - first + 1)];
        double best = -1;
        for (int i = 0; i < alike.Length; i++)
        {
            alike[i] = Math.Abs(first + i - at) < most ? -1 : likeness.Between(at, first + i, length);
            best = Math.Max(best, alike[i]);
        }

        double sum = 0;
        double all = EchoDoubt;
        for (int i = 0; i < alike.Length; i++)
        {
            if (alike[i] > Unechoed && (i == 0 || alike[i - 1] <= alike[i]) && (i + 1 == alike.Length || alike[i + 1] <= alike[i]))
            {
                double part = (alike[i] - Unechoed) / (1 - Unechoed) * Math.Exp((alike[i] - best) / Sharpness);
                sum += part * start[first + i];
                all += part;
            }
        }

        return (sum / all, 1 - (EchoDoubt / all));
    }

    private static double[] Mean(float[][] rows, int from, int to)
    {
        double[] mean = new double[rows[from].Length];
        for (int i = from; i < to; i++)
        {
            for (int k = 0; k < mean.Length; k++)
            {
                mean[k] += rows[i][k] / (to - from);
            }
        }

        return mean;
    }

    private static double Cosine(double[] a, double[] b)
    {
        double product = 0;
        double lengthA = 0;
        double lengthB = 0;
        for (int i = 0; i < a.Length; i++)
        {
            product += a[i] * b[i];
            lengthA += a[i] * a[i];
            lengthB += b[i] * b[i];
        }

        return product / Math.Sqrt(Math.Max(1e-9, lengthA * lengthB));
    }
}
