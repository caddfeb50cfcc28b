using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.CompilerServices;

namespace Scuff.Audio.Decoding;

/// <summary>Bits of a piece of bytes, highest first. Beyond the end it reads zeros and says so.</summary>
/// <param name="bytes">The piece.</param>
/// <param name="from">The byte to begin with.</param>
/// <param name="bit">The bit to begin with, counted from that byte.</param>
internal ref struct BitReader(ReadOnlySpan<byte> bytes, int from, int bit = 0)
{
    private readonly ReadOnlySpan<byte> _bytes = bytes;
    private long _at = (8L * from) + bit;

    /// <summary>Whether more was read than there is.</summary>
    public readonly bool Overran => _at > 8L * _bytes.Length;

    /// <summary>Bits from the first byte of the piece on that were read or left out.</summary>
    public readonly int BitPosition => (int)_at;

    /// <summary>The first byte of which nothing was read.</summary>
    public readonly int BytePosition => (int)((_at + 7) / 8);

    /// <summary>The next 0 to 32 bits as a whole number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public uint Read(int count)
    {
        unchecked
        {
            ulong window = Window();
            _at += count;
            return count == 0 ? 0 : (uint)(window >> (64 - count));
        }
    }

    /// <summary>The next 1 to 33 bits in two's complement.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public long Signed(int count)
    {
        unchecked
        {
            long window = (long)Window();
            _at += count;
            return window >> (64 - count);
        }
    }

    /// <summary>Zeros before the next one, which is taken too; more than <paramref name="most"/> counts as running over the end.</summary>
    public int Unary(int most)
    {
        int zeros = 0;
        while (!Overran && zeros <= most)
        {
            int more = BitOperations.LeadingZeroCount(Window() | 127);
            _at += Math.Min(more, 56);
            zeros += Math.Min(more, 56);
            if (more < 56)
            {
                _at++;
                return zeros;
            }
        }

        _at = long.MaxValue / 2;
        return 0;
    }

    /// <summary>Fills a piece with Rice codes: a count in zeros, a one, as many bits as the parameter says, the sign in the last bit.</summary>
    /// <returns>False when the bytes ran out or a number is too large.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Rice(Span<long> into, int parameter)
    {
        unchecked
        {
            for (int i = 0; i < into.Length; i++)
            {
                ulong window = Window();
                int zeros = BitOperations.LeadingZeroCount(window);
                ulong folded;
                if (zeros + 1 + parameter <= 56)
                {
                    folded = ((ulong)zeros << parameter) | (parameter == 0 ? 0 : window << (zeros + 1) >> (64 - parameter));
                    _at += zeros + 1 + parameter;
                }
                else
                {
                    zeros = Unary(1 << 26);
                    folded = ((ulong)zeros << parameter) | Read(parameter);
                    if (Overran || folded > uint.MaxValue)
                    {
                        return false;
                    }
                }

                into[i] = (long)(folded >> 1) ^ -(long)(folded & 1);
            }

            return !Overran;
        }
    }

    // The next 57 bits or more at the upper end; zeros follow the last byte.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly ulong Window()
    {
        unchecked
        {
            long first = _at >> 3;
            if (first + 8 <= _bytes.Length)
            {
                return BinaryPrimitives.ReadUInt64BigEndian(_bytes[(int)first..]) << (int)(_at & 7);
            }

            ulong window = 0;
            for (int i = 0; i < 8; i++)
            {
                window = (window << 8) | (first + i < _bytes.Length ? _bytes[(int)(first + i)] : 0u);
            }

            return window << (int)(_at & 7);
        }
    }
}
