using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Signals;

/// <summary>
/// Changes the rate of a sound that comes in blocks: a polyphase low-pass of windowed sines with linear phase, whose delay is taken out, so
/// that what sounded at a second sounds at the same second. Flat (within 0.01 dB) up to 0.86 of half the lower rate, 85 dB down above half
/// of it. Beyond its ends the sound is taken for silence. The same input gives the same bits on every machine.
/// Source: Oppenheim and Schafer, Discrete-Time Signal Processing, sections 4.6 (changing the rate) and 7.5 (Kaiser window).
/// </summary>
public sealed class Resampler
{
    // Kaiser's own formulas for this depth give the window and the number of taps.
    private const double Depth = 88;
    private const double FlatTo = 0.86;

    // a bank of more numbers is not made; between the rows of a smaller one it is drawn straight
    private const int LargestBank = 1 << 18;

    // Rows of the smaller bank at a cutoff of half the rate: a straight line between rows is then off by less than -120 dB.
    private const int RowsBetween = 2048;

    private readonly long _up;
    private readonly long _down;
    private readonly int _taps;
    private readonly int _rows;
    private readonly bool _exact;
    private readonly float[] _bank;
    private float[] _held = [];
    private int _heldCount;
    private long _heldFrom;
    private long _taken;
    private long _given;
    private float[] _out = [];

    /// <summary>A change from one rate to another.</summary>
    /// <param name="from">Samples a second that come in, 1 or more.</param>
    /// <param name="to">Samples a second that go out, 1 or more.</param>
    public Resampler(int from, int to)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(from, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(to, 1);
        long common = Gcd(from, to);
        _up = to / common;
        _down = from / common;
        double lower = Math.Min(1.0, (double)to / from);
        double wide = (1 - FlatTo) * 0.5 * lower;
        _taps = (int)Math.Ceiling((Depth - 7.95) / (2.285 * 2 * Math.PI * wide) / 16) * 16;
        _exact = _up * _taps <= LargestBank;
        _rows = _exact ? (int)_up : Math.Max(32, (int)Math.Ceiling(RowsBetween * lower));
        _bank = _up == 1 && _down == 1 ? [] : MakeBank(_taps, _rows, _exact ? 0 : 1, 0.5 * lower * (1 + FlatTo) / 2);

        // silence before the first sample
        _heldFrom = -(_taps / 2);
        _heldCount = _taps / 2;
        _held = new float[_heldCount + 4096];
    }

    /// <summary>The whole of a sound at another rate; as long in seconds, rounded up to a sample.</summary>
    /// <param name="samples">The sound.</param>
    /// <param name="from">Its rate, samples a second.</param>
    /// <param name="to">The rate wanted, samples a second.</param>
    public static float[] Convert(ReadOnlySpan<float> samples, int from, int to)
    {
        Resampler resampler = new(from, to);
        ReadOnlySpan<float> first = resampler.Push(samples);
        float[] all = new float[((samples.Length * resampler._up) + resampler._down - 1) / resampler._down];
        first.CopyTo(all);
        resampler.Finish().CopyTo(all.AsSpan(first.Length));
        return all;
    }

    /// <summary>Takes the next block and gives the samples that it completes; they are valid until the next call.</summary>
    public ReadOnlySpan<float> Push(ReadOnlySpan<float> block)
    {
        _taken += block.Length;
        if (_bank.Length == 0)
        {
            return block;
        }

        Hold(block);

        // the last place whose right half is there
        long ready = _heldFrom + _heldCount - (_taps / 2) - 1;
        return Make(ready < 0 ? 0 : ((ready + 1) * _up + _down - 1) / _down);
    }

    /// <summary>Gives the last samples, after the last block. Nothing may be pushed afterwards.</summary>
    public ReadOnlySpan<float> Finish()
    {
        if (_bank.Length == 0)
        {
            return [];
        }

        Hold(new float[(_taps / 2) + 1]);
        return Make(((_taken * _up) + _down - 1) / _down);
    }

    private void Hold(ReadOnlySpan<float> block)
    {
        if (_held.Length < _heldCount + block.Length)
        {
            Array.Resize(ref _held, Math.Max(_held.Length * 2, _heldCount + block.Length));
        }

        block.CopyTo(_held.AsSpan(_heldCount));
        _heldCount += block.Length;
    }

    // Makes samples up to (not with) the given one, then lets go of what no later one needs.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private ReadOnlySpan<float> Make(long end)
    {
        int count = (int)Math.Max(0, end - _given);
        if (_out.Length < count)
        {
            _out = new float[count];
        }

        long at = _given * _down / _up;
        long part = (_given * _down) % _up;
        long step = _down / _up;
        long stepPart = _down % _up;
        int half = (_taps / 2) - 1;
        ref float held = ref MemoryMarshal.GetArrayDataReference(_held);
        ref float bank = ref MemoryMarshal.GetArrayDataReference(_bank);
        int i = 0;
        if (_up == 1)
        {
            // all places have the same weights: four at a time read them once
            for (; i + 4 <= count; i += 4, at += 4 * step)
            {
                DotFour(ref Unsafe.Add(ref held, (int)(at - half - _heldFrom)), (int)step, ref bank, _taps, ref _out[i]);
            }
        }

        for (; i < count; i++)
        {
            ref float first = ref Unsafe.Add(ref held, (int)(at - half - _heldFrom));
            if (_exact)
            {
                _out[i] = Dot(ref first, ref Unsafe.Add(ref bank, (int)part * _taps), _taps);
            }
            else
            {
                double place = (double)part / _up * _rows;
                int row = (int)place;
                float below = Dot(ref first, ref Unsafe.Add(ref bank, row * _taps), _taps);
                float above = Dot(ref first, ref Unsafe.Add(ref bank, (row + 1) * _taps), _taps);
                _out[i] = below + ((above - below) * (float)(place - row));
            }

            at += step;
            part += stepPart;
            if (part >= _up)
            {
                part -= _up;
                at++;
            }
        }

        _given += count;
        int done = (int)Math.Clamp(at - half - _heldFrom, 0, _heldCount);
        _held.AsSpan(done, _heldCount - done).CopyTo(_held);
        _heldCount -= done;
        _heldFrom += done;
        return _out.AsSpan(0, count);
    }

    // Row r holds the taps for a place r/rows of a sample behind the middle one. Each row adds up to one: silence and a constant stay exact.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static float[] MakeBank(int taps, int rows, int extraRows, double cutoff)
    {
        double beta = 0.1102 * (Depth - 8.7);
        double half = taps / 2.0;
        double scale = 1 / Bessel(beta);
        float[] bank = new float[(rows + extraRows) * taps];
        double[] row = new double[taps];
        for (int r = 0; r < rows + extraRows; r++)
        {
            double sum = 0;
            for (int k = 0; k < taps; k++)
            {
                double t = k - (half - 1) - ((double)r / rows);
                double inside = 1 - (t / half * (t / half));
                double angle = 2 * Math.PI * cutoff * t;
                double sinc = Math.Abs(angle) < 1e-9 ? 1 : Math.Sin(angle) / angle;
                row[k] = inside < 0 ? 0 : sinc * Bessel(beta * Math.Sqrt(inside)) * scale;
                sum += row[k];
            }

            for (int k = 0; k < taps; k++)
            {
                bank[(r * taps) + k] = (float)(row[k] / sum);
            }
        }

        return bank;
    }

    // The modified Bessel function of the first kind and order zero, by its power series.
    private static double Bessel(double x)
    {
        double sum = 1;
        double term = 1;
        for (int k = 1; term > 1e-12 * sum; k++)
        {
            term *= x / (2 * k) * (x / (2 * k));
            sum += term;
        }

        return sum;
    }

    // Eight lanes and no fused multiply-add, whatever the machine has: the order of the sums, and so every bit, is the same everywhere.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Dot(ref float a, ref float b, int count)
    {
        Vector256<float> even = Vector256<float>.Zero;
        Vector256<float> odd = Vector256<float>.Zero;
        for (nuint i = 0; i < (nuint)count; i += 16)
        {
            even += Vector256.LoadUnsafe(ref a, i) * Vector256.LoadUnsafe(ref b, i);
            odd += Vector256.LoadUnsafe(ref a, i + 8) * Vector256.LoadUnsafe(ref b, i + 8);
        }

        return SumOf(even + odd);
    }

    // The same sums in the same order for four places that lie a step apart.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void DotFour(ref float a, int step, ref float b, int count, ref float into)
    {
        ref float a1 = ref Unsafe.Add(ref a, step);
        ref float a2 = ref Unsafe.Add(ref a1, step);
        ref float a3 = ref Unsafe.Add(ref a2, step);
        Vector256<float> even0 = Vector256<float>.Zero, even1 = even0, even2 = even0, even3 = even0;
        Vector256<float> odd0 = even0, odd1 = even0, odd2 = even0, odd3 = even0;
        for (nuint i = 0; i < (nuint)count; i += 16)
        {
            Vector256<float> weights = Vector256.LoadUnsafe(ref b, i);
            even0 += Vector256.LoadUnsafe(ref a, i) * weights;
            even1 += Vector256.LoadUnsafe(ref a1, i) * weights;
            even2 += Vector256.LoadUnsafe(ref a2, i) * weights;
            even3 += Vector256.LoadUnsafe(ref a3, i) * weights;
            weights = Vector256.LoadUnsafe(ref b, i + 8);
            odd0 += Vector256.LoadUnsafe(ref a, i + 8) * weights;
            odd1 += Vector256.LoadUnsafe(ref a1, i + 8) * weights;
            odd2 += Vector256.LoadUnsafe(ref a2, i + 8) * weights;
            odd3 += Vector256.LoadUnsafe(ref a3, i + 8) * weights;
        }

        into = SumOf(even0 + odd0);
        Unsafe.Add(ref into, 1) = SumOf(even1 + odd1);
        Unsafe.Add(ref into, 2) = SumOf(even2 + odd2);
        Unsafe.Add(ref into, 3) = SumOf(even3 + odd3);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float SumOf(Vector256<float> lanes)
    {
        Vector128<float> four = lanes.GetLower() + lanes.GetUpper();
        return four[0] + four[1] + (four[2] + four[3]);
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
