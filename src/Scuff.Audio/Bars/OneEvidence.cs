using Scuff.Audio.Ears;
using Scuff.Audio.Phrases;

namespace Scuff.Audio.Bars;

/// <summary>
/// How likely each beat is the one of a bar: what the ear heard, and how much the chord changes there against the beats before.
/// Chords change on ones in nearly all dance music, which tells 1 from 3 where the drums do not.
/// </summary>
internal static class OneEvidence
{
    // Logistic regression on made songs of other seeds than any that is scored, half of them of our own band.
    private const double HeardWeight = 0.97;

    private const double QuickWeight = 1.3;

    private const double SlowWeight = -0.3;

    private const double Bias = -0.4;

    private const int Pitches = 12;

    /// <summary>A logit for each beat, [beats].</summary>
    public static float[] Of(Activations heard, double[] beats, BeatFeatures features)
    {
        float[] one = CountPath.Near(heard.One, beats);
        double[] quick = ChangesOver(2, features);
        double[] slow = ChangesOver(4, features);
        for (int i = 0; i < one.Length; i++)
        {
            one[i] = (float)((HeardWeight * one[i]) + (QuickWeight * quick[i]) + (SlowWeight * slow[i]) + Bias);
        }

        return one;
    }

    // The square of how far the pitches of so many beats from here on are from those of as many before, against the track's mean.
    private static double[] ChangesOver(int reach, BeatFeatures features)
    {
        int beats = features.Chroma.Length;
        double[] changes = new double[beats];
        for (int at = reach; at + reach <= beats; at++)
        {
            for (int pitch = 0; pitch < Pitches; pitch++)
            {
                double difference = 0;
                for (int k = 0; k < reach; k++)
                {
                    difference += features.Chroma[at + k][pitch] - features.Chroma[at - 1 - k][pitch];
                }

                changes[at] += difference * difference;
            }
        }

        // too near an end to compare says nothing, which is what the mean says
        double mean = beats > 2 * reach ? changes.Sum() / (beats - (2 * reach) + 1) : 0;
        return [.. changes.Select((c, at) => mean < 1e-9 || at < reach || at + reach > beats ? 1 : c / mean)];
    }
}
