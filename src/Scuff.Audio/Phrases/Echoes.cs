namespace Scuff.Audio.Phrases;

/// <summary>
/// Where the music sounds the same, the same is true: what is heard at one beat is weighed together with what is heard at the beats whose
/// surroundings are alike, so that a bar told well in one verse is told in all (the idea behind the structure features of Serrà and others, 2012).
/// </summary>
internal static class Echoes
{
    // Beats on either side that must be alike: two bars in all. Four bars smear what stands next to a bar too many.
    private const int Reach = 4;

    // Likeness below this is none.
    private const double Unlike = 0.5;

    /// <summary>Each value, and with the given weight those of the beats that it is like: [beats].</summary>
    /// <param name="values">Logits, [beats].</param>
    /// <param name="weight">What a beat that is exactly alike counts against the beat itself.</param>
    /// <param name="likeness">How alike stretches of the track are.</param>
    public static float[] Joined(float[] values, double weight, SelfLikeness likeness)
    {
        float[] joined = [.. values];
        for (int at = Reach; at + Reach <= values.Length; at++)
        {
            int first = Math.Max(Reach, at - SelfLikeness.Farthest);
            int last = Math.Min(values.Length - Reach, at + SelfLikeness.Farthest);
            double sum = 0;
            double all = 0;
            for (int other = first; other <= last; other++)
            {
                double alike = Math.Abs(at - other) < 2 * Reach ? 0 : Around(at, other);
                bool isTop = alike > Unlike && (other == first || Around(at, other - 1) < alike) && (other == last || Around(at, other + 1) <= alike);
                if (isTop)
                {
                    double part = (alike - Unlike) / (1 - Unlike);
                    sum += part * values[other];
                    all += part;
                }
            }

            joined[at] = (float)((values[at] + (weight * sum)) / (1 + (weight * all)));
        }

        return joined;

        double Around(int a, int b) => likeness.Between(a - Reach, b - Reach, 2 * Reach);
    }
}
