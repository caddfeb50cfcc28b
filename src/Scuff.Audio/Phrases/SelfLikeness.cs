namespace Scuff.Audio.Phrases;

/// <summary>
/// How alike any two stretches of a track are beat for beat, by pitch: between -1 and 1. Stretches up to
/// <see cref="Farthest"/> beats apart are known, so that memory grows with the length of the track and not with its square.
/// </summary>
internal sealed class SelfLikeness
{
    /// <summary>Beats between two stretches at most: more than any one song has, so that only whole evenings are cut off.</summary>
    public const int Farthest = 1024;

    // [distance][beat]: the likeness of each beat before this one to the one so far after it, added up; any stretch is one difference.
    private readonly float[][] _sums;

    private SelfLikeness(float[][] sums) => _sums = sums;

    /// <summary>Compares all beats.</summary>
    public static SelfLikeness Of(BeatFeatures features)
    {
        int beats = features.Chroma.Length;
        float[][] sums = new float[Math.Min(beats, Farthest + 1)][];
        for (int distance = 0; distance < sums.Length; distance++)
        {
            float[] row = sums[distance] = new float[beats - distance + 1];
            for (int a = 0; a + distance < beats; a++)
            {
                int b = a + distance;
                row[a + 1] = row[a] + (0.5f * (BeatFeatures.Cosine(features.Chroma[a], features.Chroma[b]) + BeatFeatures.Cosine(features.Pitches[a], features.Pitches[b])));
            }
        }

        return new SelfLikeness(sums);
    }

    /// <summary>The mean likeness of the beats from one and from another on; both stretches lie within the track.</summary>
    /// <param name="a">The first beat of one.</param>
    /// <param name="b">The first beat of the other, no farther than <see cref="Farthest"/>.</param>
    /// <param name="length">Beats of each.</param>
    public double Between(int a, int b, int length)
    {
        float[] row = _sums[Math.Abs(a - b)];
        int first = Math.Min(a, b);
        return (row[first + length] - row[first]) / length;
    }
}
