using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

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
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static SelfLikeness Of(BeatFeatures features)
    {
        int beats = features.Chroma.Length;
        Vector256<float>[][] rows = [.. features.Chroma.Zip(features.Pitches, RowOf)];
        float[][] sums = new float[Math.Min(beats, Farthest + 1)][];
        for (int distance = 0; distance < sums.Length; distance++)
        {
            float[] row = sums[distance] = new float[beats - distance + 1];
            for (int a = 0; a + distance < beats; a++)
            {
                Vector256<float>[] one = rows[a];
                Vector256<float>[] other = rows[a + distance];
                Vector256<float> sum = Vector256<float>.Zero;
                for (int i = 0; i < one.Length && i < other.Length; i++)
                {
                    sum = Vector256.FusedMultiplyAdd(one[i], other[i], sum);
                }

                row[a + 1] = row[a] + (0.5f * Vector256.Sum(sum));
            }
        }

        return new SelfLikeness(sums);
    }

    // What a beat is compared by, one after the other, with nothing behind it up to a whole vector.
    private static Vector256<float>[] RowOf(float[] chroma, float[] pitches)
    {
        Vector256<float>[] row = new Vector256<float>[(chroma.Length + pitches.Length + Vector256<float>.Count - 1) / Vector256<float>.Count];
        Span<float> numbers = MemoryMarshal.Cast<Vector256<float>, float>(row.AsSpan());
        chroma.CopyTo(numbers);
        pitches.CopyTo(numbers[chroma.Length..]);
        return row;
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
