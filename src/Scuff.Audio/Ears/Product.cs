using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Ears;

/// <summary>The one loop all layers are made of: rows of numbers times a table, added to rows of sums.</summary>
internal static class Product
{
    private const int Lanes = 8;
    private const int RowsAtOnce = 4;
    private const int Wide = 16;
    private const int WideRows = 8;

    /// <summary>
    /// sums[r, o] += Σ x[start + r * stride + i] * table[i, o] for each of <paramref name="rows"/> rows; the table is
    /// [length × width], the width a multiple of eight; a row of sums is <paramref name="width"/> long.
    /// Multiplied and added in one rounding on every machine, so the answer is the same everywhere.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Add(ReadOnlySpan<float> x, int start, int stride, int rows, int length, ReadOnlySpan<float> table, int width, Span<float> sums)
    {
        int row = 0;

        // the wider of the two adds the same numbers in the same order, so it gives the same sums
        for (; Vector512.IsHardwareAccelerated && width % Wide == 0 && row + WideRows <= rows; row += WideRows)
        {
            for (int column = 0; column < width; column += Wide)
            {
                AddWide(x, start + (row * stride), stride, length, table[column..], width, sums[((row * width) + column)..]);
            }
        }

        for (; row + RowsAtOnce <= rows; row += RowsAtOnce)
        {
            int column = 0;
            for (; column + (3 * Lanes) <= width && width - column != 4 * Lanes; column += 3 * Lanes)
            {
                AddThree(x, start + (row * stride), stride, length, table[column..], width, sums[((row * width) + column)..]);
            }

            for (; column + (2 * Lanes) <= width; column += 2 * Lanes)
            {
                AddTwo(x, start + (row * stride), stride, length, table[column..], width, sums[((row * width) + column)..]);
            }

            for (; column < width; column += Lanes)
            {
                for (int r = row; r < row + RowsAtOnce; r++)
                {
                    AddOne(x.Slice(start + (r * stride), length), table[column..], width, sums[((r * width) + column)..]);
                }
            }
        }

        for (; row < rows; row++)
        {
            for (int column = 0; column < width; column += Lanes)
            {
                AddOne(x.Slice(start + (row * stride), length), table[column..], width, sums[((row * width) + column)..]);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddThree(ReadOnlySpan<float> x, int start, int stride, int length, ReadOnlySpan<float> table, int width, Span<float> sums)
    {
        // the last element of each is touched before the loop trusts the sizes
        _ = x.Slice(start, ((RowsAtOnce - 1) * stride) + length);
        _ = table[((length - 1) * width) + (3 * Lanes) - 1];
        _ = sums[((RowsAtOnce - 1) * width) + (3 * Lanes) - 1];
        ref float from = ref Unsafe.Add(ref MemoryMarshal.GetReference(x), start);
        ref float to = ref MemoryMarshal.GetReference(sums);
        ref float w = ref MemoryMarshal.GetReference(table);
        nuint u = (nuint)width;
        nuint v = (nuint)stride;
        Vector256<float> a00 = Vector256.LoadUnsafe(ref to);
        Vector256<float> a01 = Vector256.LoadUnsafe(ref to, Lanes);
        Vector256<float> a02 = Vector256.LoadUnsafe(ref to, 2 * Lanes);
        Vector256<float> a10 = Vector256.LoadUnsafe(ref to, u);
        Vector256<float> a11 = Vector256.LoadUnsafe(ref to, u + Lanes);
        Vector256<float> a12 = Vector256.LoadUnsafe(ref to, u + (2 * Lanes));
        Vector256<float> a20 = Vector256.LoadUnsafe(ref to, 2 * u);
        Vector256<float> a21 = Vector256.LoadUnsafe(ref to, (2 * u) + Lanes);
        Vector256<float> a22 = Vector256.LoadUnsafe(ref to, (2 * u) + (2 * Lanes));
        Vector256<float> a30 = Vector256.LoadUnsafe(ref to, 3 * u);
        Vector256<float> a31 = Vector256.LoadUnsafe(ref to, (3 * u) + Lanes);
        Vector256<float> a32 = Vector256.LoadUnsafe(ref to, (3 * u) + (2 * Lanes));
        nuint at = 0;
        for (nuint i = 0; i < (nuint)length; i++, at += u)
        {
            Vector256<float> w0 = Vector256.LoadUnsafe(ref w, at);
            Vector256<float> w1 = Vector256.LoadUnsafe(ref w, at + Lanes);
            Vector256<float> w2 = Vector256.LoadUnsafe(ref w, at + (2 * Lanes));
            Vector256<float> b = Vector256.Create(Unsafe.Add(ref from, i));
            a00 = Vector256.FusedMultiplyAdd(b, w0, a00);
            a01 = Vector256.FusedMultiplyAdd(b, w1, a01);
            a02 = Vector256.FusedMultiplyAdd(b, w2, a02);
            b = Vector256.Create(Unsafe.Add(ref from, i + v));
            a10 = Vector256.FusedMultiplyAdd(b, w0, a10);
            a11 = Vector256.FusedMultiplyAdd(b, w1, a11);
            a12 = Vector256.FusedMultiplyAdd(b, w2, a12);
            b = Vector256.Create(Unsafe.Add(ref from, i + (2 * v)));
            a20 = Vector256.FusedMultiplyAdd(b, w0, a20);
            a21 = Vector256.FusedMultiplyAdd(b, w1, a21);
            a22 = Vector256.FusedMultiplyAdd(b, w2, a22);
            b = Vector256.Create(Unsafe.Add(ref from, i + (3 * v)));
            a30 = Vector256.FusedMultiplyAdd(b, w0, a30);
            a31 = Vector256.FusedMultiplyAdd(b, w1, a31);
            a32 = Vector256.FusedMultiplyAdd(b, w2, a32);
        }

        a00.StoreUnsafe(ref to);
        a01.StoreUnsafe(ref to, Lanes);
        a02.StoreUnsafe(ref to, 2 * Lanes);
        a10.StoreUnsafe(ref to, u);
        a11.StoreUnsafe(ref to, u + Lanes);
        a12.StoreUnsafe(ref to, u + (2 * Lanes));
        a20.StoreUnsafe(ref to, 2 * u);
        a21.StoreUnsafe(ref to, (2 * u) + Lanes);
        a22.StoreUnsafe(ref to, (2 * u) + (2 * Lanes));
        a30.StoreUnsafe(ref to, 3 * u);
        a31.StoreUnsafe(ref to, (3 * u) + Lanes);
        a32.StoreUnsafe(ref to, (3 * u) + (2 * Lanes));
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddTwo(ReadOnlySpan<float> x, int start, int stride, int length, ReadOnlySpan<float> table, int width, Span<float> sums)
    {
        // the last element of each is touched before the loop trusts the sizes
        _ = x.Slice(start, ((RowsAtOnce - 1) * stride) + length);
        _ = table[((length - 1) * width) + (2 * Lanes) - 1];
        _ = sums[((RowsAtOnce - 1) * width) + (2 * Lanes) - 1];
        ref float from = ref Unsafe.Add(ref MemoryMarshal.GetReference(x), start);
        ref float to = ref MemoryMarshal.GetReference(sums);
        ref float w = ref MemoryMarshal.GetReference(table);
        nuint u = (nuint)width;
        nuint v = (nuint)stride;
        Vector256<float> a00 = Vector256.LoadUnsafe(ref to);
        Vector256<float> a01 = Vector256.LoadUnsafe(ref to, Lanes);
        Vector256<float> a10 = Vector256.LoadUnsafe(ref to, u);
        Vector256<float> a11 = Vector256.LoadUnsafe(ref to, u + Lanes);
        Vector256<float> a20 = Vector256.LoadUnsafe(ref to, 2 * u);
        Vector256<float> a21 = Vector256.LoadUnsafe(ref to, (2 * u) + Lanes);
        Vector256<float> a30 = Vector256.LoadUnsafe(ref to, 3 * u);
        Vector256<float> a31 = Vector256.LoadUnsafe(ref to, (3 * u) + Lanes);
        nuint at = 0;
        for (nuint i = 0; i < (nuint)length; i++, at += u)
        {
            Vector256<float> w0 = Vector256.LoadUnsafe(ref w, at);
            Vector256<float> w1 = Vector256.LoadUnsafe(ref w, at + Lanes);
            Vector256<float> b = Vector256.Create(Unsafe.Add(ref from, i));
            a00 = Vector256.FusedMultiplyAdd(b, w0, a00);
            a01 = Vector256.FusedMultiplyAdd(b, w1, a01);
            b = Vector256.Create(Unsafe.Add(ref from, i + v));
            a10 = Vector256.FusedMultiplyAdd(b, w0, a10);
            a11 = Vector256.FusedMultiplyAdd(b, w1, a11);
            b = Vector256.Create(Unsafe.Add(ref from, i + (2 * v)));
            a20 = Vector256.FusedMultiplyAdd(b, w0, a20);
            a21 = Vector256.FusedMultiplyAdd(b, w1, a21);
            b = Vector256.Create(Unsafe.Add(ref from, i + (3 * v)));
            a30 = Vector256.FusedMultiplyAdd(b, w0, a30);
            a31 = Vector256.FusedMultiplyAdd(b, w1, a31);
        }

        a00.StoreUnsafe(ref to);
        a01.StoreUnsafe(ref to, Lanes);
        a10.StoreUnsafe(ref to, u);
        a11.StoreUnsafe(ref to, u + Lanes);
        a20.StoreUnsafe(ref to, 2 * u);
        a21.StoreUnsafe(ref to, (2 * u) + Lanes);
        a30.StoreUnsafe(ref to, 3 * u);
        a31.StoreUnsafe(ref to, (3 * u) + Lanes);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddWide(ReadOnlySpan<float> x, int start, int stride, int length, ReadOnlySpan<float> table, int width, Span<float> sums)
    {
        // the last element of each is touched before the loop trusts the sizes
        _ = x.Slice(start, ((WideRows - 1) * stride) + length);
        _ = table[((length - 1) * width) + Wide - 1];
        _ = sums[((WideRows - 1) * width) + Wide - 1];
        ref float from = ref Unsafe.Add(ref MemoryMarshal.GetReference(x), start);
        ref float to = ref MemoryMarshal.GetReference(sums);
        ref float w = ref MemoryMarshal.GetReference(table);
        nuint u = (nuint)width;
        nuint v = (nuint)stride;
        Vector512<float> a0 = Vector512.LoadUnsafe(ref to);
        Vector512<float> a1 = Vector512.LoadUnsafe(ref to, u);
        Vector512<float> a2 = Vector512.LoadUnsafe(ref to, 2 * u);
        Vector512<float> a3 = Vector512.LoadUnsafe(ref to, 3 * u);
        Vector512<float> a4 = Vector512.LoadUnsafe(ref to, 4 * u);
        Vector512<float> a5 = Vector512.LoadUnsafe(ref to, 5 * u);
        Vector512<float> a6 = Vector512.LoadUnsafe(ref to, 6 * u);
        Vector512<float> a7 = Vector512.LoadUnsafe(ref to, 7 * u);
        nuint at = 0;
        for (nuint i = 0; i < (nuint)length; i++, at += u)
        {
            Vector512<float> row = Vector512.LoadUnsafe(ref w, at);
            a0 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref from, i)), row, a0);
            a1 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref from, i + v)), row, a1);
            a2 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref from, i + (2 * v))), row, a2);
            a3 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref from, i + (3 * v))), row, a3);
            a4 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref from, i + (4 * v))), row, a4);
            a5 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref from, i + (5 * v))), row, a5);
            a6 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref from, i + (6 * v))), row, a6);
            a7 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref from, i + (7 * v))), row, a7);
        }

        a0.StoreUnsafe(ref to);
        a1.StoreUnsafe(ref to, u);
        a2.StoreUnsafe(ref to, 2 * u);
        a3.StoreUnsafe(ref to, 3 * u);
        a4.StoreUnsafe(ref to, 4 * u);
        a5.StoreUnsafe(ref to, 5 * u);
        a6.StoreUnsafe(ref to, 6 * u);
        a7.StoreUnsafe(ref to, 7 * u);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddOne(ReadOnlySpan<float> x, ReadOnlySpan<float> table, int width, Span<float> sums)
    {
        Vector256<float> sum = Vector256.Create<float>(sums[..Lanes]);
        for (int i = 0; i < x.Length; i++)
        {
            sum = Vector256.FusedMultiplyAdd(Vector256.Create(x[i]), Vector256.Create<float>(table.Slice(i * width, Lanes)), sum);
        }

        sum.CopyTo(sums);
    }
}
