using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Ears;

/// <summary>
/// A filter of a few taps, made for several outputs that lie beside each other (a tile) with fewer products than one for each tap and output: outputs and
/// inputs are looked at as polynomials, at seven or eight points (Winograd, "Arithmetic Complexity of Computations", 1980; Lavin and Gray, CVPR 2016).
/// Four outputs of five taps cost eight products in place of twenty. The points are 0, ±1, ±2, ±1/2 and, where eight are needed, infinity.
/// </summary>
/// <remarks>
/// The tables of a layer are spread over the points once (<see cref="Tables"/>), the inputs of each tile whenever they come (<see cref="Spread"/>); between
/// them lies one <see cref="Product"/> for each point, and <see cref="Gather"/> makes the outputs of what comes out. Sums are those of the plain filter but
/// for rounding, and the same on every machine.
/// </remarks>
internal sealed class TileFilter
{
    private const int Finite = 7;

    private static readonly double[] Places = [0, 1, -1, 2, -2, 0.5, -0.5];

    /// <summary>A filter for tiles.</summary>
    /// <param name="outputs">Outputs in a tile, at least two.</param>
    /// <param name="taps">Taps, at least two; both together eight or nine.</param>
    public TileFilter(int outputs, int taps)
    {
        Outputs = outputs;
        Taps = taps;
        ArgumentOutOfRangeException.ThrowIfLessThan(outputs, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(taps, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(Points, Finite, nameof(taps));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Points, Finite + 1, nameof(taps));
    }

    /// <summary>Outputs in a tile.</summary>
    public int Outputs { get; }

    /// <summary>Taps of the filter.</summary>
    public int Taps { get; }

    /// <summary>Points, and inputs that a tile looks at.</summary>
    public int Points => Outputs + Taps - 1;

    /// <summary>The tables of the taps, [taps][size], to those of the points, [points][size]; the size is a multiple of eight.</summary>
    public float[] Tables(ReadOnlySpan<float> taps)
    {
        int size = taps.Length / Taps;
        float[] tables = new float[Points * size];
        for (int p = 0; p < Points; p++)
        {
            for (int k = 0; k < Taps; k++)
            {
                AddScaled(taps.Slice(k * size, size), Weight(p, k), tables.AsSpan(p * size, size));
            }
        }

        return tables;
    }

    /// <summary>The inputs of a tile, each a row of numbers, to the points.</summary>
    /// <param name="x">The inputs.</param>
    /// <param name="start">Where in x the first input of the tile begins.</param>
    /// <param name="step">From one input to the next.</param>
    /// <param name="length">Numbers in an input, a multiple of eight.</param>
    /// <param name="to">Where the points go.</param>
    /// <param name="place">Where in to the first point begins.</param>
    /// <param name="apart">From one point to the next.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Spread(ReadOnlySpan<float> x, int start, int step, int length, Span<float> to, int place, int apart)
    {
        // the last element of each is touched before the loop trusts the sizes
        _ = x.Slice(start, ((Points - 1) * step) + length);
        _ = to.Slice(place, ((Points - 1) * apart) + length);
        ref float from = ref Unsafe.Add(ref MemoryMarshal.GetReference(x), start);
        ref float into = ref Unsafe.Add(ref MemoryMarshal.GetReference(to), place);
        nuint s = (nuint)step;
        nuint a = (nuint)apart;
        bool isEight = Points > Finite;
        for (nuint i = 0; i < (nuint)length; i += (nuint)Vector256<float>.Count)
        {
            Vector256<float> x1 = Vector256.LoadUnsafe(ref from, i + s);
            Vector256<float> x2 = Vector256.LoadUnsafe(ref from, i + (2 * s));
            Vector256<float> x3 = Vector256.LoadUnsafe(ref from, i + (3 * s));
            Vector256<float> x4 = Vector256.LoadUnsafe(ref from, i + (4 * s));
            Vector256<float> x5 = Vector256.LoadUnsafe(ref from, i + (5 * s));
            Vector256<float> x6 = Vector256.LoadUnsafe(ref from, i + (6 * s));

            // (x² - 1)(x² - 4)(x² - 1/4) for zero, the same times x for infinity
            Vector256<float> zero = Vector256.FusedMultiplyAdd(Vector256.Create(5.25f), x2 - x4, x6 - Vector256.LoadUnsafe(ref from, i));
            zero.StoreUnsafe(ref into, i);

            // for ±a: x² ± ax times the factors of the other points
            Vector256<float> even = Vector256.FusedMultiplyAdd(Vector256.Create(-4.25f), x4, x2 + x6);
            Vector256<float> odd = Vector256.FusedMultiplyAdd(Vector256.Create(-4.25f), x3, x1 + x5);
            (even + odd).StoreUnsafe(ref into, i + a);
            (even - odd).StoreUnsafe(ref into, i + (2 * a));
            even = Vector256.FusedMultiplyAdd(Vector256.Create(-1.25f), x4, Vector256.FusedMultiplyAdd(Vector256.Create(0.25f), x2, x6));
            odd = Vector256.FusedMultiplyAdd(Vector256.Create(-2.5f), x3, Vector256.FusedMultiplyAdd(Vector256.Create(2f), x5, x1 * 0.5f));
            (even + odd).StoreUnsafe(ref into, i + (3 * a));
            (even - odd).StoreUnsafe(ref into, i + (4 * a));
            even = Vector256.FusedMultiplyAdd(Vector256.Create(-5f), x4, Vector256.FusedMultiplyAdd(Vector256.Create(4f), x2, x6));
            odd = Vector256.FusedMultiplyAdd(Vector256.Create(-2.5f), x3, Vector256.FusedMultiplyAdd(Vector256.Create(0.5f), x5, x1 * 2f));
            (even + odd).StoreUnsafe(ref into, i + (5 * a));
            (even - odd).StoreUnsafe(ref into, i + (6 * a));
            if (isEight)
            {
                Vector256<float> infinite = Vector256.FusedMultiplyAdd(Vector256.Create(5.25f), x3 - x5, Vector256.LoadUnsafe(ref from, i + (7 * s)) - x1);
                infinite.StoreUnsafe(ref into, i + (7 * a));
            }
        }
    }

    /// <summary>What came out at the points is added to the outputs of a tile.</summary>
    /// <param name="from">The points, each a row of numbers.</param>
    /// <param name="place">Where in from the first point begins.</param>
    /// <param name="apart">From one point to the next.</param>
    /// <param name="length">Numbers in an output, a multiple of eight.</param>
    /// <param name="sums">Where the outputs are added.</param>
    /// <param name="start">Where in sums the first output of the tile begins.</param>
    /// <param name="step">From one output to the next.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Gather(ReadOnlySpan<float> from, int place, int apart, int length, Span<float> sums, int start, int step)
    {
        _ = from.Slice(place, ((Points - 1) * apart) + length);
        _ = sums.Slice(start, ((Outputs - 1) * step) + length);
        ref float points = ref Unsafe.Add(ref MemoryMarshal.GetReference(from), place);
        ref float to = ref Unsafe.Add(ref MemoryMarshal.GetReference(sums), start);
        nuint s = (nuint)step;
        nuint a = (nuint)apart;
        bool isEight = Points > Finite;
        for (nuint i = 0; i < (nuint)length; i += (nuint)Vector256<float>.Count)
        {
            // every second output takes the sums of ±a, the others their differences; each time a is multiplied in once more
            Vector256<float> one = Vector256.LoadUnsafe(ref points, i + a);
            Vector256<float> other = Vector256.LoadUnsafe(ref points, i + (2 * a));
            (Vector256<float> same1, Vector256<float> off1) = (one + other, one - other);
            one = Vector256.LoadUnsafe(ref points, i + (3 * a));
            other = Vector256.LoadUnsafe(ref points, i + (4 * a));
            (Vector256<float> same2, Vector256<float> off2) = (one + other, (one - other) * 2f);
            one = Vector256.LoadUnsafe(ref points, i + (5 * a));
            other = Vector256.LoadUnsafe(ref points, i + (6 * a));
            (Vector256<float> same3, Vector256<float> off3) = (one + other, (one - other) * 0.5f);
            nuint at = i;
            Vector256<float> sum = Vector256.LoadUnsafe(ref to, at) + Vector256.LoadUnsafe(ref points, i) + same1 + same2 + same3;
            for (int o = 0; ;)
            {
                if (++o == Outputs)
                {
                    (isEight ? sum + Vector256.LoadUnsafe(ref points, i + (7 * a)) : sum).StoreUnsafe(ref to, at);
                    break;
                }

                sum.StoreUnsafe(ref to, at);
                at += s;
                sum = Vector256.LoadUnsafe(ref to, at);
                if (o % 2 == 1)
                {
                    sum += off1 + off2 + off3;
                    (off2, off3) = (off2 * 4f, off3 * 0.25f);
                }
                else
                {
                    (same2, same3) = (same2 * 4f, same3 * 0.25f);
                    sum += same1 + same2 + same3;
                }
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddScaled(ReadOnlySpan<float> from, float weight, Span<float> sums)
    {
        ReadOnlySpan<Vector256<float>> x = MemoryMarshal.Cast<float, Vector256<float>>(from);
        Span<Vector256<float>> to = MemoryMarshal.Cast<float, Vector256<float>>(sums);
        for (int i = 0; i < to.Length; i++)
        {
            to[i] = Vector256.FusedMultiplyAdd(x[i], Vector256.Create(weight), to[i]);
        }
    }

    // What a tap counts for at a point.
    private float Weight(int point, int tap)
        => point < Finite ? (float)(Math.Pow(Places[point], tap) / Steepness(point)) : tap == Taps - 1 ? 1 : 0;

    // How fast the product of all factors rises at a point.
    private static double Steepness(int point)
        => Enumerable.Range(0, Finite).Where(q => q != point).Aggregate(1.0, (product, q) => product * (Places[point] - Places[q]));
}
