using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Decoding;

/// <summary>
/// From the 576 lines of a granule to samples: the modified cosine transforms with their windows and overlap, and the synthesis in 32
/// bands. Source: ISO/IEC 11172-3, 2.4.3.4.10 and annex A. Both transforms are plain products with a matrix, which vectors do faster than
/// scalars do the clever ways. Keeps one channel: it is linear, so it may be given the mean of two.
/// </summary>
internal sealed class Mp3Filterbank
{
    /// <summary>Lines of a granule, and its samples.</summary>
    public const int Lines = 576;

    private const int Bands = 32;
    private const int Steps = 18;

    // the 18 of a band, padded to whole vectors
    private const int Pitch = 24;

    // by the kind of block: a row for each of 18 lines, 18 values now and 18 for the next granule
    private static readonly float[][] Transforms = [MakeLong(0), MakeLong(1), MakeShort(), MakeLong(3)];

    // a row for each band, 64 values
    private static readonly float[] Matrix = MakeMatrix();

    private readonly float[] _now = new float[Bands * Pitch];
    private readonly float[] _next = new float[Bands * Pitch];
    private readonly float[] _history = new float[16 * 64];
    private int _newest;

    /// <summary>Begins a granule: what the last one left over is what sounds now.</summary>
    public void Begin()
    {
        _next.AsSpan().CopyTo(_now);
        _next.AsSpan().Clear();
    }

    /// <summary>Adds a spectrum to the granule.</summary>
    /// <param name="lines">576 lines, and of short blocks the three windows line by line.</param>
    /// <param name="kind">Kind of block, 0 to 3.</param>
    /// <param name="mixed">Whether the two lowest bands are long and plain all the same.</param>
    /// <param name="bands">Bands that are not silent, from the lowest.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(float[] lines, int kind, bool mixed, int bands)
    {
        unchecked
        {
            ref float x = ref MemoryMarshal.GetArrayDataReference(lines);
            for (int band = 0; band < bands; band++)
            {
                ref float m = ref MemoryMarshal.GetArrayDataReference(Transforms[mixed && band < 2 ? 0 : kind]);
                Vector256<float> a0 = Vector256<float>.Zero, a1 = a0, a2 = a0, b0 = a0, b1 = a0, b2 = a0;
                for (int k = 0; k < Steps; k++)
                {
                    Vector256<float> v = Vector256.Create(Unsafe.Add(ref x, (band * Steps) + k));
                    ref float row = ref Unsafe.Add(ref m, k * 2 * Pitch);
                    a0 += v * Vector256.LoadUnsafe(ref row);
                    a1 += v * Vector256.LoadUnsafe(ref row, 8);
                    a2 += v * Vector256.LoadUnsafe(ref row, 16);
                    b0 += v * Vector256.LoadUnsafe(ref row, 24);
                    b1 += v * Vector256.LoadUnsafe(ref row, 32);
                    b2 += v * Vector256.LoadUnsafe(ref row, 40);
                }

                ref float now = ref _now[band * Pitch];
                ref float next = ref _next[band * Pitch];
                (Vector256.LoadUnsafe(ref now) + a0).StoreUnsafe(ref now);
                (Vector256.LoadUnsafe(ref now, 8) + a1).StoreUnsafe(ref now, 8);
                (Vector256.LoadUnsafe(ref now, 16) + a2).StoreUnsafe(ref now, 16);
                (Vector256.LoadUnsafe(ref next) + b0).StoreUnsafe(ref next);
                (Vector256.LoadUnsafe(ref next, 8) + b1).StoreUnsafe(ref next, 8);
                (Vector256.LoadUnsafe(ref next, 16) + b2).StoreUnsafe(ref next, 16);
            }
        }
    }

    /// <summary>Ends the granule: turns the bands into 576 samples.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void End(Span<float> samples)
    {
        unchecked
        {
            ref float now = ref MemoryMarshal.GetArrayDataReference(_now);
            for (int band = 1; band < Bands; band += 2)
            {
                for (int step = 1; step < Steps; step += 2)
                {
                    Unsafe.Add(ref now, (band * Pitch) + step) = -Unsafe.Add(ref now, (band * Pitch) + step);
                }
            }

            ref float matrix = ref MemoryMarshal.GetArrayDataReference(Matrix);
            ref float history = ref MemoryMarshal.GetArrayDataReference(_history);
            ref float window = ref MemoryMarshal.GetArrayDataReference(Mp3Tables.Window);
            ref float into = ref MemoryMarshal.GetReference(samples[..Lines]);
            for (int step = 0; step < Steps; step++)
            {
                _newest = (_newest - 1) & 15;
                ref float v = ref Unsafe.Add(ref history, _newest * 64);
                Vector256<float> v0 = Vector256<float>.Zero, v1 = v0, v2 = v0, v3 = v0, v4 = v0, v5 = v0, v6 = v0, v7 = v0;
                for (int band = 0; band < Bands; band++)
                {
                    Vector256<float> s = Vector256.Create(Unsafe.Add(ref now, (band * Pitch) + step));
                    ref float row = ref Unsafe.Add(ref matrix, band * 64);
                    v0 += s * Vector256.LoadUnsafe(ref row);
                    v1 += s * Vector256.LoadUnsafe(ref row, 8);
                    v2 += s * Vector256.LoadUnsafe(ref row, 16);
                    v3 += s * Vector256.LoadUnsafe(ref row, 24);
                    v4 += s * Vector256.LoadUnsafe(ref row, 32);
                    v5 += s * Vector256.LoadUnsafe(ref row, 40);
                    v6 += s * Vector256.LoadUnsafe(ref row, 48);
                    v7 += s * Vector256.LoadUnsafe(ref row, 56);
                }

                v0.StoreUnsafe(ref v);
                v1.StoreUnsafe(ref v, 8);
                v2.StoreUnsafe(ref v, 16);
                v3.StoreUnsafe(ref v, 24);
                v4.StoreUnsafe(ref v, 32);
                v5.StoreUnsafe(ref v, 40);
                v6.StoreUnsafe(ref v, 48);
                v7.StoreUnsafe(ref v, 56);

                Vector256<float> o0 = Vector256<float>.Zero, o1 = o0, o2 = o0, o3 = o0;
                for (int i = 0; i < 16; i++)
                {
                    // the even ones of the history give their first half, the odd ones their second
                    ref float past = ref Unsafe.Add(ref history, (((_newest + i) & 15) * 64) + ((i & 1) * 32));
                    ref float d = ref Unsafe.Add(ref window, i * 32);
                    o0 += Vector256.LoadUnsafe(ref past) * Vector256.LoadUnsafe(ref d);
                    o1 += Vector256.LoadUnsafe(ref past, 8) * Vector256.LoadUnsafe(ref d, 8);
                    o2 += Vector256.LoadUnsafe(ref past, 16) * Vector256.LoadUnsafe(ref d, 16);
                    o3 += Vector256.LoadUnsafe(ref past, 24) * Vector256.LoadUnsafe(ref d, 24);
                }

                ref float out32 = ref Unsafe.Add(ref into, step * 32);
                o0.StoreUnsafe(ref out32);
                o1.StoreUnsafe(ref out32, 8);
                o2.StoreUnsafe(ref out32, 16);
                o3.StoreUnsafe(ref out32, 24);
            }
        }
    }

    private static float[] MakeLong(int kind)
    {
        float[] rows = new float[Steps * 2 * Pitch];
        for (int k = 0; k < Steps; k++)
        {
            for (int i = 0; i < 36; i++)
            {
                rows[Place(k, i)] = (float)(Slope(kind, i) * Math.Cos(Math.PI / 72 * ((2 * i) + 19) * ((2 * k) + 1)));
            }
        }

        return rows;
    }

    // The window of a long block: plain, before short ones, after short ones.
    private static double Slope(int kind, int i)
    {
        double plain = Math.Sin(Math.PI / 36 * (i + 0.5));
        return kind switch
        {
            1 => i < 18 ? plain : i < 24 ? 1 : i < 30 ? Math.Sin(Math.PI / 12 * (i - 18 + 0.5)) : 0,
            3 => i < 6 ? 0 : i < 12 ? Math.Sin(Math.PI / 12 * (i - 6 + 0.5)) : i < 18 ? 1 : plain,
            _ => plain,
        };
    }

    // Three short transforms, each six steps after the one before; line k belongs to window k mod 3.
    private static float[] MakeShort()
    {
        float[] rows = new float[Steps * 2 * Pitch];
        for (int k = 0; k < Steps; k++)
        {
            for (int i = 0; i < 12; i++)
            {
                double value = Math.Sin(Math.PI / 12 * (i + 0.5)) * Math.Cos(Math.PI / 24 * ((2 * i) + 7) * ((2 * (k / 3)) + 1));
                rows[Place(k, 6 + (6 * (k % 3)) + i)] = (float)value;
            }
        }

        return rows;
    }

    private static int Place(int k, int i) => (k * 2 * Pitch) + (i < Steps ? i : Pitch + i - Steps);

    private static float[] MakeMatrix()
    {
        float[] matrix = new float[Bands * 64];
        for (int band = 0; band < Bands; band++)
        {
            for (int i = 0; i < 64; i++)
            {
                matrix[(band * 64) + i] = (float)Math.Cos((16 + i) * ((2 * band) + 1) * Math.PI / 64);
            }
        }

        return matrix;
    }
}
