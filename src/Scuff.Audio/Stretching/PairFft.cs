using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Stretching;

/// <summary>
/// The spectrum of two windows of real samples at once, one in the real and one in the imaginary part, and the way back. Cooley and Tukey 1965. What is
/// done to a bin k of both must be done, conjugated, to bin n - k. Not for several threads at once.
/// </summary>
internal sealed class PairFft
{
    private readonly int[] _reversed;
    private readonly float[][] _cos;
    private readonly float[][] _sin;

    /// <summary>Prepares transforms of <paramref name="size"/> samples, a power of two of at least 16.</summary>
    public PairFft(int size)
    {
        Size = size;
        Re = new float[size];
        Im = new float[size];
        int bits = int.Log2(size);
        _reversed = new int[size];
        for (int i = 0; i < size; i++)
        {
            _reversed[i] = (_reversed[i >> 1] >> 1) | ((i & 1) << (bits - 1));
        }

        _cos = new float[bits][];
        _sin = new float[bits][];
        for (int stage = 0; stage < bits; stage++)
        {
            int span = 1 << stage;
            _cos[stage] = [.. Enumerable.Range(0, span).Select(j => (float)Math.Cos(Math.PI * j / span))];
            _sin[stage] = [.. Enumerable.Range(0, span).Select(j => (float)Math.Sin(Math.PI * j / span))];
        }
    }

    /// <summary>Samples in a window.</summary>
    public int Size { get; }

    /// <summary>The first window, then the real part of the spectrum.</summary>
    public float[] Re { get; }

    /// <summary>The second window, then the imaginary part of the spectrum.</summary>
    public float[] Im { get; }

    /// <summary>From windows to their spectrum.</summary>
    public void Forward() => Transform(Re, Im);

    /// <summary>From a spectrum to the windows, larger by the size: the factor is left to the window that follows.</summary>
    public void Back() => Transform(Im, Re);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Transform(float[] re, float[] im)
    {
        for (int i = 0; i < re.Length; i++)
        {
            int j = _reversed[i];
            if (j > i)
            {
                (re[i], re[j]) = (re[j], re[i]);
                (im[i], im[j]) = (im[j], im[i]);
            }
        }

        for (int stage = 0; stage < _cos.Length; stage++)
        {
            int span = 1 << stage;
            float[] cos = _cos[stage];
            float[] sin = _sin[stage];
            if (span < Vector256<float>.Count)
            {
                Narrow(re, im, span, cos, sin);
                continue;
            }

            for (int from = 0; from < re.Length; from += 2 * span)
            {
                for (int j = 0; j < span; j += Vector256<float>.Count)
                {
                    ref float reA = ref re[from + j];
                    ref float imA = ref im[from + j];
                    ref float reB = ref Unsafe.Add(ref reA, span);
                    ref float imB = ref Unsafe.Add(ref imA, span);
                    Vector256<float> c = Vector256.LoadUnsafe(ref cos[j]);
                    Vector256<float> s = Vector256.LoadUnsafe(ref sin[j]);
                    Vector256<float> br = Vector256.LoadUnsafe(ref reB);
                    Vector256<float> bi = Vector256.LoadUnsafe(ref imB);
                    Vector256<float> tr = (br * c) + (bi * s);
                    Vector256<float> ti = (bi * c) - (br * s);
                    Vector256<float> ar = Vector256.LoadUnsafe(ref reA);
                    Vector256<float> ai = Vector256.LoadUnsafe(ref imA);
                    (ar + tr).StoreUnsafe(ref reA);
                    (ai + ti).StoreUnsafe(ref imA);
                    (ar - tr).StoreUnsafe(ref reB);
                    (ai - ti).StoreUnsafe(ref imB);
                }
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Narrow(float[] re, float[] im, int span, float[] cos, float[] sin)
    {
        for (int from = 0; from < re.Length; from += 2 * span)
        {
            for (int j = 0; j < span; j++)
            {
                int a = from + j;
                int b = a + span;
                float tr = (re[b] * cos[j]) + (im[b] * sin[j]);
                float ti = (im[b] * cos[j]) - (re[b] * sin[j]);
                re[b] = re[a] - tr;
                im[b] = im[a] - ti;
                re[a] += tr;
                im[a] += ti;
            }
        }
    }
}
