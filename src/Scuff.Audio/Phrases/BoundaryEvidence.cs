namespace Scuff.Audio.Phrases;

/// <summary>
/// How likely a section begins on each beat: what the ear heard, how much the colour of the music changes (Foote 2000),
/// and whether music begins here that is heard elsewhere too and not already before (the idea of the structure features of
/// Serrà and others, 2012).
/// </summary>
internal static class BoundaryEvidence
{
    // Logistic regression on made songs of other seeds than any that is scored, half of them of our own band.
    private const double HeardWeight = 1.13;

    private const double ColourWeight = 1.7;

    private const double BeginsWeight = 7.5;

    private const double AlikeWeight = -3.3;

    private const double Bias = -0.6;

    // Bars on either side that are compared.
    private const int Bars = 4;

    // Likeness below this is no likeness.
    private const double Unlike = 0.3;

    /// <summary>A logit for each beat, [beats].</summary>
    /// <param name="start">What the ear heard of a start at each beat, [beats].</param>
    /// <param name="beatsInBar">Beats in a bar.</param>
    /// <param name="features">What the beats sound like.</param>
    /// <param name="likeness">How alike stretches of the track are.</param>
    public static float[] Of(float[] start, int beatsInBar, BeatFeatures features, SelfLikeness likeness)
    {
        int beats = start.Length;
        int far = Bars * beatsInBar;
        float[] evidence = new float[beats];
        for (int at = 0; at < beats; at++)
        {
            int reach = Math.Min(Math.Min(at, beats - at), far);
            if (reach < beatsInBar)
            {
                evidence[at] = start[at];
                continue;
            }

            double change = 1 - Cosine(Mean(features.Colour, at - reach, at), Mean(features.Colour, at, at + reach));
            double begins = 0;
            double alike = -1;
            for (int other = Math.Max(reach, at - SelfLikeness.Farthest); other <= Math.Min(beats - reach, at + SelfLikeness.Farthest); other++)
            {
                if (Math.Abs(at - other) < far)
                {
                    continue;
                }

                double after = likeness.Between(at, other, reach);
                begins = Math.Max(begins, after - Math.Max(likeness.Between(at - reach, other - reach, reach), Unlike));
                alike = Math.Max(alike, after);
            }

            evidence[at] = (float)((HeardWeight * start[at]) + (ColourWeight * change) + (BeginsWeight * begins) + (AlikeWeight * alike) + Bias);
        }

        return evidence;
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
