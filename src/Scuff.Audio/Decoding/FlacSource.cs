using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.CompilerServices;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Decodes FLAC. Source: RFC 9639 (2024). All kinds of subframe, 4 to 32 bits, fixed and variable block sizes; heads and frames are
/// checked by their CRC. A damaged frame becomes silence of its length, so that the rest keeps its place.
/// </summary>
internal sealed class FlacSource : SoundSource
{
    private const int LargestBlock = 65_535;

    // no frame of 65,535 samples is larger than its plain samples by more than this (subframe heads, parameters)
    private const int FrameSlack = 1 << 16;

    // a longer look for the next good frame is given up
    private const int LongestSearch = 1 << 22;

    private static readonly byte[] Crc8 = MakeCrc8();
    private static readonly ushort[] Crc16 = MakeCrc16();

    private readonly ByteSource _bytes;
    private readonly string _format;
    private readonly int _rate;
    private readonly int _channels;
    private readonly int _bits;
    private readonly int _largestBlock;
    private readonly long _total;
    private readonly long[][] _samples;
    private readonly float[] _mono;
    private int _monoAt;
    private int _monoCount;
    private long _silence;
    private long _position;
    private bool _ended;

    /// <summary>Reads the head: the stream's facts and its comments.</summary>
    /// <param name="bytes">The file from the letters fLaC on.</param>
    /// <param name="format">Kind of file in words.</param>
    /// <exception cref="AudioException">The head is damaged.</exception>
    public FlacSource(ByteSource bytes, string format = "FLAC")
    {
        _bytes = bytes;
        _format = format;
        bytes.Skip(4);
        bool known = false;
        bool last = false;
        while (!last)
        {
            ReadOnlySpan<byte> head = bytes.Peek(4);
            if (head.Length < 4)
            {
                throw new AudioException("This FLAC file ends inside its head, before any sound.");
            }

            last = (head[0] & 0x80) != 0;
            int kind = head[0] & 0x7F;
            int size = (head[1] << 16) | (head[2] << 8) | head[3];
            if (kind == 127 || (!known && kind != 0))
            {
                throw new AudioException("The head of this FLAC file is damaged.");
            }

            bytes.Take(4);
            if (kind == 0)
            {
                ReadOnlySpan<byte> info = bytes.Peek(34);
                if (info.Length < 34 || size < 34)
                {
                    throw new AudioException("This FLAC file ends inside its head, before any sound.");
                }

                _largestBlock = BinaryPrimitives.ReadUInt16BigEndian(info[2..]);
                ulong facts = BinaryPrimitives.ReadUInt64BigEndian(info[10..]);
                _rate = (int)(facts >> 44);
                _channels = (int)((facts >> 41) & 7) + 1;
                _bits = (int)((facts >> 36) & 31) + 1;
                _total = (long)(facts & 0xF_FFFF_FFFF);
                known = true;
            }
            else if (kind == 4)
            {
                VorbisComments.Read(bytes.Peek(size), Tags);
            }

            if (!bytes.Skip(size))
            {
                throw new AudioException("This FLAC file ends inside its head, before any sound.");
            }
        }

        SoundLimits.CheckHead(format, _rate, _channels);
        if (_bits < 4 || _largestBlock < 16)
        {
            throw new AudioException("The head of this FLAC file is damaged.");
        }

        _samples = [.. Enumerable.Range(0, _channels).Select(_ => new long[_largestBlock])];
        _mono = new float[_largestBlock];
    }

    public override string Format => _format;

    public override int Rate => _rate;

    public override int Channels => _channels;

    public override long? Frames => _total > 0 ? _total : null;

    public override int Read(Span<float> mono)
    {
        while (_monoAt == _monoCount && _silence == 0)
        {
            if (_ended || !NextFrame())
            {
                _ended = true;
                return 0;
            }
        }

        if (_silence > 0)
        {
            int quiet = (int)Math.Min(_silence, mono.Length);
            mono[..quiet].Clear();
            _silence -= quiet;
            return quiet;
        }

        int count = Math.Min(mono.Length, _monoCount - _monoAt);
        _mono.AsSpan(_monoAt, count).CopyTo(mono);
        _monoAt += count;
        return count;
    }

    // Decodes the next whole frame into _mono; false at the end of the file.
    private bool NextFrame()
    {
        int searched = 0;
        while (true)
        {
            ReadOnlySpan<byte> look = _bytes.Peek(32);
            if (look.Length < 6)
            {
                CutShort = _total > 0 && _position < _total;
                return false;
            }

            if (ReadHead(look) is FrameHead head && Decode(head))
            {
                long missing = head.First - _position;
                if (Damaged && missing > 0 && missing <= (long)_rate * 60)
                {
                    _silence = missing;
                    _position += missing;
                }

                int kept = _total > 0 ? (int)Math.Clamp(_total - _position, 0, head.Size) : head.Size;
                _position += kept;
                _monoAt = 0;
                _monoCount = kept;
                return true;
            }

            if (IsTag(look))
            {
                // an ID3v1 or APE tag behind the sound
                CutShort = _total > 0 && _position < _total;
                return false;
            }

            if (_total > 0 && _position >= _total)
            {
                return false;
            }

            // the next byte that may begin a frame
            _bytes.Take(1);
            searched++;
            ReadOnlySpan<byte> ahead = _bytes.Peek(1 << 16);
            int next = ahead.IndexOf((byte)0xFF);
            int skip = next < 0 ? ahead.Length : next;
            _bytes.Take(skip);
            searched += skip;
            Damaged = true;
            if (searched > LongestSearch)
            {
                CutShort = true;
                return false;
            }
        }
    }

    private static bool IsTag(ReadOnlySpan<byte> look) => look[..3].SequenceEqual("TAG"u8) || (look.Length >= 8 && look[..8].SequenceEqual("APETAGEX"u8));

    private sealed record FrameHead(int Bytes, int Size, int Assignment, int Bits, long First);

    // Section 9.1; null when no good head is here.
    private FrameHead? ReadHead(ReadOnlySpan<byte> b)
    {
        if (b[0] != 0xFF || (b[1] & 0xFE) != 0xF8)
        {
            return null;
        }

        int sizeCode = b[2] >> 4;
        int rateCode = b[2] & 15;
        int assignment = b[3] >> 4;
        int bitsCode = (b[3] >> 1) & 7;
        if (sizeCode == 0 || rateCode == 15 || assignment > 10 || bitsCode == 3 || (b[3] & 1) != 0)
        {
            return null;
        }

        // a number as UTF-8 writes it, of up to 36 bits
        int lead = BitOperations.LeadingZeroCount((uint)(0xFF ^ b[4]) << 24);
        if (lead is 1 or 8 || 4 + Math.Max(1, lead) + 3 > b.Length)
        {
            return null;
        }

        int at = 5;
        long number = lead == 0 ? b[4] : lead >= 7 ? 0 : b[4] & ((1 << (7 - lead)) - 1);
        for (int i = 1; i < lead; i++)
        {
            if ((b[at] & 0xC0) != 0x80)
            {
                return null;
            }

            number = (number << 6) | (uint)(b[at++] & 0x3F);
        }

        int extra = (sizeCode == 6 ? 1 : sizeCode == 7 ? 2 : 0) + (rateCode == 12 ? 1 : rateCode is 13 or 14 ? 2 : 0);
        if (at + extra + 1 > b.Length)
        {
            return null;
        }

        int size = sizeCode switch
        {
            1 => 192,
            <= 5 => 576 << (sizeCode - 2),
            6 => b[at] + 1,
            7 => ((b[at] << 8) | b[at + 1]) + 1,
            _ => 256 << (sizeCode - 8),
        };
        at += extra;
        byte crc = 0;
        foreach (byte one in b[..at])
        {
            crc = Crc8[crc ^ one];
        }

        int bits = bitsCode switch { 0 => _bits, 1 => 8, 2 => 12, 4 => 16, 5 => 20, 6 => 24, _ => 32 };
        int channels = assignment < 8 ? assignment + 1 : 2;
        if (crc != b[at] || size > _largestBlock || size > LargestBlock || bits != _bits || channels != _channels)
        {
            return null;
        }

        bool variable = (b[1] & 1) != 0;
        return new FrameHead(at + 1, size, assignment, bits, variable ? number : number * _largestBlock);
    }

    // Decodes one frame; false, with nothing taken, when it is damaged.
    private bool Decode(FrameHead head)
    {
        int most = head.Bytes + (((head.Size * (head.Bits + 1)) + 7) / 8 * _channels) + FrameSlack;

        // most frames are far smaller than their plain samples, so the look is widened only when it was too short
        for (int look = Math.Min(most, 1 << 15); ; look = Math.Min(most, look * 4))
        {
            ReadOnlySpan<byte> bytes = _bytes.Peek(look);
            BitReader bits = new(bytes, head.Bytes);
            bool good = ReadSubframes(ref bits, head);
            if (bits.Overran && look < most && bytes.Length == look)
            {
                continue;
            }

            if (!good || bits.Overran || bits.BytePosition + 2 > bytes.Length)
            {
                return false;
            }

            int end = bits.BytePosition;

            ushort crc = 0;
            foreach (byte one in bytes[..end])
            {
                crc = unchecked((ushort)((crc << 8) ^ Crc16[(crc >> 8) ^ one]));
            }

            if (crc != BinaryPrimitives.ReadUInt16BigEndian(bytes[end..]))
            {
                return false;
            }

            _bytes.Take(end + 2);
            Mix(head);
            return true;
        }
    }

    private bool ReadSubframes(ref BitReader bits, FrameHead head)
    {
        for (int c = 0; c < _channels; c++)
        {
            // the difference of two channels needs one bit more
            bool difference = (head.Assignment is 8 or 10 && c == 1) || (head.Assignment == 9 && c == 0);
            if (!ReadSubframe(ref bits, _samples[c].AsSpan(0, head.Size), head.Bits + (difference ? 1 : 0)))
            {
                return false;
            }
        }

        return true;
    }

    // Section 9.2.
    private static bool ReadSubframe(ref BitReader bits, Span<long> samples, int width)
    {
        int lead = (int)bits.Read(8);
        int kind = lead >> 1;
        int wasted = 0;
        if (lead >= 0x80)
        {
            return false;
        }

        if ((lead & 1) != 0)
        {
            wasted = bits.Unary(width) + 1;
            width -= wasted;
            if (width < 1)
            {
                return false;
            }
        }

        bool good = kind switch
        {
            0 => Constant(ref bits, samples, width),
            1 => Verbatim(ref bits, samples, width),
            >= 8 and <= 12 => Fixed(ref bits, samples, width, kind - 8),
            >= 32 => Predicted(ref bits, samples, width, kind - 31),
            _ => false,
        };
        if (good && wasted > 0)
        {
            for (int i = 0; i < samples.Length; i++)
            {
                samples[i] <<= wasted;
            }
        }

        return good && !bits.Overran;
    }

    private static bool Constant(ref BitReader bits, Span<long> samples, int width)
    {
        samples.Fill(bits.Signed(width));
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool Verbatim(ref BitReader bits, Span<long> samples, int width)
    {
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = bits.Signed(width);
        }

        return !bits.Overran;
    }

    // Sections 9.2.5: polynomials of order 0 to 4.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool Fixed(ref BitReader bits, Span<long> s, int width, int order)
    {
        if (order > s.Length || !Verbatim(ref bits, s[..order], width) || !Residual(ref bits, s, order))
        {
            return false;
        }

        unchecked
        {
            switch (order)
            {
                case 1:
                    for (int i = 1; i < s.Length; i++)
                    {
                        s[i] += s[i - 1];
                    }

                    break;
                case 2:
                    for (int i = 2; i < s.Length; i++)
                    {
                        s[i] += (2 * s[i - 1]) - s[i - 2];
                    }

                    break;
                case 3:
                    for (int i = 3; i < s.Length; i++)
                    {
                        s[i] += (3 * (s[i - 1] - s[i - 2])) + s[i - 3];
                    }

                    break;
                case 4:
                    for (int i = 4; i < s.Length; i++)
                    {
                        s[i] += (4 * (s[i - 1] + s[i - 3])) - (6 * s[i - 2]) - s[i - 4];
                    }

                    break;
            }
        }

        return true;
    }

    // Section 9.2.6: linear prediction of order 1 to 32.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool Predicted(ref BitReader bits, Span<long> s, int width, int order)
    {
        if (order > s.Length || !Verbatim(ref bits, s[..order], width))
        {
            return false;
        }

        int precision = (int)bits.Read(4) + 1;
        int shift = (int)bits.Signed(5);
        if (precision == 16 || shift < 0)
        {
            return false;
        }

        // turned round, so that they lie beside the samples they belong to
        Span<long> weights = stackalloc long[32];
        weights = weights[..order];
        for (int i = order - 1; i >= 0; i--)
        {
            weights[i] = bits.Signed(precision);
        }

        if (!Residual(ref bits, s, order))
        {
            return false;
        }

        unchecked
        {
            for (int i = order; i < s.Length; i++)
            {
                ReadOnlySpan<long> before = s.Slice(i - order, order);
                long sum = 0;
                for (int k = 0; k < before.Length; k++)
                {
                    sum += before[k] * weights[k];
                }

                s[i] += sum >> shift;
            }
        }

        return true;
    }

    // Section 9.2.7: what prediction leaves over, in Rice codes by partitions.
    private static bool Residual(ref BitReader bits, Span<long> samples, int order)
    {
        int method = (int)bits.Read(2);
        int partitionOrder = (int)bits.Read(4);
        int partition = samples.Length >> partitionOrder;
        if (method > 1 || partition << partitionOrder != samples.Length || partition < order)
        {
            return false;
        }

        int parameterBits = method == 0 ? 4 : 5;
        int escape = method == 0 ? 15 : 31;
        for (int at = order, end = partition; at < samples.Length; at = end, end += partition)
        {
            int parameter = (int)bits.Read(parameterBits);
            Span<long> part = samples[at..end];
            if (parameter == escape)
            {
                int width = (int)bits.Read(5);
                for (int i = 0; i < part.Length; i++)
                {
                    part[i] = width == 0 ? 0 : bits.Signed(width);
                }
            }
            else if (!bits.Rice(part, parameter))
            {
                return false;
            }

            if (bits.Overran)
            {
                return false;
            }
        }

        return true;
    }

    // Section 9.1.3: back from differences to channels, and their mean.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Mix(FrameHead head)
    {
        double scale = 1.0 / (1L << (head.Bits - 1)) / _channels;
        unchecked
        {
            long[] a = _samples[0];
            long[] b = _samples[^1];
            if (Side != SoundSide.Both && _channels == 2)
            {
                for (int i = 0; i < head.Size; i++)
                {
                    _mono[i] = (float)(2 * scale * SideOf(head.Assignment, a[i], b[i]));
                }

                return;
            }

            for (int i = 0; i < head.Size; i++)
            {
                long sum = head.Assignment switch
                {
                    // left and left minus right
                    8 => (2 * a[i]) - b[i],

                    // left minus right, and right
                    9 => a[i] + (2 * b[i]),

                    // the mean rounded down, and left minus right, whose last bit is that of the sum
                    10 => (2 * a[i]) | (b[i] & 1),
                    0 => a[i],
                    1 => a[i] + b[i],
                    _ => SumOf(i),
                };
                _mono[i] = (float)(sum * scale);
            }
        }
    }

    // Section 9.1.3 again, for one channel of two: of left and difference, difference and right, mean and difference, or both as they are.
    private long SideOf(int assignment, long a, long b)
    {
        bool isLeft = Side == SoundSide.Left;
        return assignment switch
        {
            8 => isLeft ? a : a - b,
            9 => isLeft ? a + b : b,
            10 => (((2 * a) | (b & 1)) + (isLeft ? b : -b)) >> 1,
            _ => isLeft ? a : b,
        };
    }

    private long SumOf(int i)
    {
        long sum = 0;
        foreach (long[] channel in _samples)
        {
            sum += channel[i];
        }

        return sum;
    }

    private static byte[] MakeCrc8()
    {
        byte[] table = new byte[256];
        for (int i = 0; i < 256; i++)
        {
            int crc = i;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = (crc & 0x80) != 0 ? (crc << 1) ^ 0x107 : crc << 1;
            }

            table[i] = (byte)crc;
        }

        return table;
    }

    private static ushort[] MakeCrc16()
    {
        ushort[] table = new ushort[256];
        for (int i = 0; i < 256; i++)
        {
            int crc = i << 8;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = (crc & 0x8000) != 0 ? (crc << 1) ^ 0x18005 : crc << 1;
            }

            table[i] = (ushort)crc;
        }

        return table;
    }
}
