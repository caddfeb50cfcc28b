using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Stretching;

/// <summary>
/// The median of 17 numbers, eight rows at once, by comparisons that are always the same. Batcher's odd-even merge sort (1968), without the exchanges
/// that the middle does not depend on.
/// </summary>
internal static class MedianNetwork
{
    /// <summary>How many numbers the median is of.</summary>
    public const int Count = 17;

    private static readonly (byte Low, byte High)[] Exchanges = Make();

    /// <summary>The median of each lane. The rows are in disorder afterwards.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static Vector256<float> Of(Span<Vector256<float>> rows)
    {
        ref Vector256<float> first = ref rows[..Count][0];
        foreach ((byte low, byte high) in Exchanges)
        {
            ref Vector256<float> a = ref Unsafe.Add(ref first, low);
            ref Vector256<float> b = ref Unsafe.Add(ref first, high);
            Vector256<float> least = Vector256.MinNative(a, b);
            b = Vector256.MaxNative(a, b);
            a = least;
        }

        return Unsafe.Add(ref first, Count / 2);
    }

    // The network of 32 without what would compare beyond the last, which would all be infinite and stay where they are.
    private static (byte Low, byte High)[] Make()
    {
        const int whole = 32;
        List<(byte Low, byte High)> all = [];
        for (int p = 1; p < whole; p *= 2)
        {
            for (int k = p; k >= 1; k /= 2)
            {
                for (int j = k % p; j + k < whole; j += 2 * k)
                {
                    for (int i = 0; i < Math.Min(k, whole - j - k); i++)
                    {
                        if ((i + j) / (2 * p) == (i + j + k) / (2 * p) && i + j + k < Count)
                        {
                            all.Add(((byte)(i + j), (byte)(i + j + k)));
                        }
                    }
                }
            }
        }

        HashSet<byte> needed = [Count / 2];
        List<(byte Low, byte High)> kept = [];
        for (int i = all.Count - 1; i >= 0; i--)
        {
            (byte low, byte high) = all[i];
            if (needed.Contains(low) || needed.Contains(high))
            {
                needed.Add(low);
                needed.Add(high);
                kept.Add(all[i]);
            }
        }

        kept.Reverse();
        return [.. kept];
    }
}
