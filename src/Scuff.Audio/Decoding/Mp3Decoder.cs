using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Decodes frames of MPEG audio layer III to the mean of their channels. Source: ISO/IEC 11172-3 (1993), 2.4; ISO/IEC 13818-3 (1998) for
/// the lower rates. The mean is made of the spectra: of sum and difference only the sum is decoded, and one filter bank serves both channels.
/// </summary>
internal sealed class Mp3Decoder
{
    private const int Lines = Mp3Filterbank.Lines;

    // a frame may begin up to 511 bytes before its head
    private const int Reach = 511;

    // |value|^(4/3), up to 15 + 2^13 - 1
    private static readonly float[] Powers = MakePowers();

    // 2^(q/4) for q from -400 to 100
    private static readonly float[] Gains = MakeGains();

    private static readonly (float Cs, float Ca)[] Butterflies = MakeButterflies();

    private readonly byte[] _main = new byte[Reach + 4096 + 16];
    private int _held;
    private readonly Mp3Filterbank _bank = new();
    private readonly float[][] _lines = [new float[Lines + 8], new float[Lines + 8]];
    private readonly float[] _sorted = new float[Lines + 8];
    private readonly byte[][] _scales = [new byte[40], new byte[40]];
    private readonly bool[] _shared = new bool[8];
    private readonly Granule[] _granules = [new(), new(), new(), new()];

    /// <summary>Which channels are decoded. A frame of shared intensity always gives the mean.</summary>
    public SoundSide Side { get; set; }

    /// <summary>Decodes one frame. What cannot be decoded is silence.</summary>
    /// <param name="head">Its first four bytes, understood.</param>
    /// <param name="frame">All its bytes.</param>
    /// <param name="mono">Takes <see cref="Mp3Header.Samples"/> samples.</param>
    /// <returns>False when something in it could not be decoded.</returns>
    public bool Decode(Mp3Header head, ReadOnlySpan<byte> frame, Span<float> mono)
    {
        int granules = head.Version == 1 ? 2 : 1;
        int sideAt = head.HasCrc ? 6 : 4;
        int dataAt = sideAt + head.SideBytes;
        bool good = frame.Length >= dataAt;
        int begin = 0;
        int end = 0;
        if (good)
        {
            int back = ReadSide(head, frame[sideAt..dataAt]);
            ReadOnlySpan<byte> data = frame[dataAt..];
            data = data[..Math.Min(data.Length, 4096)];
            data.CopyTo(_main.AsSpan(_held));
            end = _held + data.Length;
            _main.AsSpan(end, 16).Clear();
            begin = _held - back;
            good = begin >= 0;
        }

        int bit = 8 * begin;
        for (int g = 0; g < granules; g++)
        {
            _bank.Begin();
            good = good && DecodeGranule(head, g, ref bit, 8 * end);
            _bank.End(mono.Slice(g * Lines, Lines));
        }

        int kept = Math.Min(Reach, end);
        if (end > 0)
        {
            _main.AsSpan(end - kept, kept).CopyTo(_main);
            _held = kept;
        }

        return good;
    }

    private sealed class Granule
    {
        public int Bits;
        public int BigValues;
        public int Gain;
        public int Compress;
        public int Kind;
        public bool Mixed;
        public readonly int[] Tables = new int[3];
        public readonly int[] WindowGains = new int[3];
        public int FirstEnd;
        public int SecondEnd;
        public bool Preemphasis;
        public bool Coarse;
        public int QuadTable;

        // lines that are not zero, from the lowest
        public int Filled;

        public bool IsShort => Kind == 2;
    }

    // 2.4.1.7; gives the bytes before this frame at which its data begins.
    private int ReadSide(Mp3Header head, ReadOnlySpan<byte> side)
    {
        BitReader bits = new(side, 0);
        bool full = head.Version == 1;
        int back = (int)bits.Read(full ? 9 : 8);
        bits.Read(full ? (head.Channels == 1 ? 5 : 3) : head.Channels);
        if (full)
        {
            for (int i = 0; i < 4 * head.Channels; i++)
            {
                _shared[i] = bits.Read(1) != 0;
            }
        }

        for (int i = 0; i < (full ? 2 : 1) * head.Channels; i++)
        {
            Granule g = _granules[i];
            g.Bits = (int)bits.Read(12);
            g.BigValues = (int)bits.Read(9);
            g.Gain = (int)bits.Read(8);
            g.Compress = (int)bits.Read(full ? 4 : 9);
            g.Kind = 0;
            g.Mixed = false;
            g.WindowGains.AsSpan().Clear();
            int[] longBands = Mp3Tables.LongBands[head.RateRow];
            if (bits.Read(1) != 0)
            {
                g.Kind = (int)bits.Read(2);
                g.Mixed = bits.Read(1) != 0;
                for (int r = 0; r < 2; r++)
                {
                    g.Tables[r] = (int)bits.Read(5);
                }

                g.Tables[2] = 0;
                for (int w = 0; w < 3; w++)
                {
                    g.WindowGains[w] = (int)bits.Read(3);
                }

                g.FirstEnd = g.IsShort ? 3 * Mp3Tables.ShortBands[head.RateRow][3] : longBands[8];
                g.SecondEnd = Lines;
            }
            else
            {
                for (int r = 0; r < 3; r++)
                {
                    g.Tables[r] = (int)bits.Read(5);
                }

                int first = (int)bits.Read(4);
                int second = (int)bits.Read(3);
                g.FirstEnd = longBands[first + 1];
                g.SecondEnd = longBands[Math.Min(22, first + second + 2)];
            }

            g.Preemphasis = full && bits.Read(1) != 0;
            g.Coarse = bits.Read(1) != 0;
            g.QuadTable = (int)bits.Read(1);
        }

        return back;
    }

    private bool DecodeGranule(Mp3Header head, int number, ref int bit, int end)
    {
        Granule left = _granules[number * head.Channels];
        Granule right = _granules[(number * head.Channels) + head.Channels - 1];
        bool alike = left.Kind == right.Kind && left.Mixed == right.Mixed;
        bool onlySum = head.Channels == 1 || (head.MiddleSide && !head.Intensity && alike && Side == SoundSide.Both);
        for (int c = 0; c < head.Channels; c++)
        {
            Granule g = _granules[(number * head.Channels) + c];
            int last = bit + g.Bits;
            if (last > end || g.BigValues > Lines / 2)
            {
                return false;
            }

            if (c == 0 || !onlySum)
            {
                BitReader bits = new(_main, 0, bit);
                int[] group = ReadScales(ref bits, head, g, number, c);
                ReadLines(bits.BitPosition, last, head, g, _lines[c]);
                Scale(head, g, c, head.Channels == 2 && head.MiddleSide ? (onlySum ? 0.70710678f : 1) : 1);
                if (c == 1 && head.Intensity)
                {
                    ShareIntensity(head, left, g, group);
                }
            }

            bit = last;
        }

        if (onlySum)
        {
            Sound(head, left, _lines[0]);
        }
        else if (Side != SoundSide.Both && !head.Intensity)
        {
            OneSide(head, left, right);
        }
        else if (alike)
        {
            if (!head.Intensity)
            {
                Mean(_lines[0], _lines[1]);
                left.Filled = Math.Max(left.Filled, right.Filled);
            }

            Sound(head, left, _lines[0]);
        }
        else
        {
            // Blocks of two kinds, each through its own transform; sum and difference of such are not defined, and taken line by line.
            float[] a = _lines[0];
            float[] b = _lines[1];
            if (!head.Intensity)
            {
                for (int i = 0; i < Lines; i++)
                {
                    (a[i], b[i]) = head.MiddleSide
                        ? ((a[i] + b[i]) * 0.35355339f, (a[i] - b[i]) * 0.35355339f)
                        : (a[i] * 0.5f, b[i] * 0.5f);
                }

                left.Filled = right.Filled = Math.Max(left.Filled, right.Filled);
                Sound(head, right, b);
            }

            Sound(head, left, a);
        }

        return true;
    }

    // One channel of two, through the transform of its own blocks.
    private void OneSide(Mp3Header head, Granule left, Granule right)
    {
        float[] a = _lines[0];
        float[] b = _lines[1];
        bool isLeft = Side == SoundSide.Left;
        if (head.MiddleSide)
        {
            left.Filled = right.Filled = Math.Max(left.Filled, right.Filled);
            for (int i = 0; i < Lines; i++)
            {
                (a[i], b[i]) = ((a[i] + b[i]) * 0.70710678f, (a[i] - b[i]) * 0.70710678f);
            }
        }

        Sound(head, isLeft ? left : right, isLeft ? a : b);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Mean(float[] a, float[] b)
    {
        Vector256<float> half = Vector256.Create(0.5f);
        for (int i = 0; i < Lines; i += 8)
        {
            ((Vector256.LoadUnsafe(ref a[i]) + Vector256.LoadUnsafe(ref b[i])) * half).StoreUnsafe(ref a[i]);
        }
    }

    // 2.4.2.7 and 2.4.3.4.5. Gives, for a right channel of shared intensity, the first value of each group of scale factors that says "not
    // shared" (MPEG 2); else nothing.
    private int[] ReadScales(ref BitReader bits, Mp3Header head, Granule g, int number, int channel)
    {
        byte[] scales = _scales[channel];
        if (head.Version == 1)
        {
            int low = Mp3Tables.ScaleBits[0][g.Compress];
            int high = Mp3Tables.ScaleBits[1][g.Compress];
            if (g.IsShort)
            {
                // eight long bands and three short ones, or six short ones, in the lower half
                int lower = g.Mixed ? 17 : 18;
                for (int i = 0; i < lower + 18; i++)
                {
                    scales[i] = (byte)bits.Read(i < lower ? low : high);
                }

                scales.AsSpan(lower + 18).Clear();
                return [];
            }

            // the second granule may share those of the first, by four groups
            ReadOnlySpan<byte> starts = [0, 6, 11, 16, 21];
            for (int group = 0; group < 4; group++)
            {
                if (number == 1 && _shared[(channel * 4) + group])
                {
                    continue;
                }

                for (int i = starts[group]; i < starts[group + 1]; i++)
                {
                    scales[i] = (byte)bits.Read(i < 11 ? low : high);
                }
            }

            scales.AsSpan(21).Clear();
            return [];
        }

        return ReadLowRateScales(ref bits, head, g, channel, scales);
    }

    // 13818-3, 2.4.3.2.
    private static int[] ReadLowRateScales(ref BitReader bits, Mp3Header head, Granule g, int channel, byte[] scales)
    {
        int code = g.Compress;
        int kind;
        int[] widths;
        g.Preemphasis = false;
        bool shared = head.Intensity && channel == 1;
        if (shared)
        {
            code >>= 1;
            (kind, widths) = code switch
            {
                < 180 => (3, new[] { code / 36, code % 36 / 6, code % 6, 0 }),
                < 244 => (4, [(code - 180) >> 4, ((code - 180) & 15) >> 2, (code - 180) & 3, 0]),
                _ => (5, [(code - 244) / 3, (code - 244) % 3, 0, 0]),
            };
        }
        else
        {
            (kind, widths) = code switch
            {
                < 400 => (0, new[] { (code >> 4) / 5, (code >> 4) % 5, (code & 15) >> 2, code & 3 }),
                < 500 => (1, [((code - 400) >> 2) / 5, ((code - 400) >> 2) % 5, (code - 400) & 3, 0]),
                _ => (2, [(code - 500) / 3, (code - 500) % 3, 0, 0]),
            };
            g.Preemphasis = kind == 2;
        }

        byte[] groups = Mp3Tables.ScaleGroups[kind][!g.IsShort ? 0 : g.Mixed ? 2 : 1];
        int[] none = new int[40];
        int at = 0;
        for (int group = 0; group < 4; group++)
        {
            for (int i = 0; i < groups[group]; i++)
            {
                none[at] = (1 << widths[group]) - 1;
                scales[at++] = (byte)bits.Read(widths[group]);
            }
        }

        scales.AsSpan(at).Clear();
        return none;
    }

    // 2.4.3.4.6: pairs by three tables, then fours of ones, then zeros. Values become powers of 4/3 with their sign.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void ReadLines(int from, int last, Mp3Header head, Granule g, float[] lines)
    {
        unchecked
        {
            ref byte bytes = ref MemoryMarshal.GetArrayDataReference(_main);
            ref float powers = ref MemoryMarshal.GetArrayDataReference(Powers);
            int bit = from;
            int line = 0;
            int pairsEnd = Math.Min(2 * g.BigValues, Lines);
            for (int region = 0; region < 3; region++)
            {
                int regionEnd = Math.Min(pairsEnd, region == 0 ? g.FirstEnd : region == 1 ? g.SecondEnd : Lines);
                Mp3Code? code = Mp3Tables.Pairs[g.Tables[region]];
                if (code is null)
                {
                    if (line < regionEnd)
                    {
                        lines.AsSpan(line, regionEnd - line).Clear();
                        line = regionEnd;
                    }

                    continue;
                }

                int linBits = Mp3Tables.LinBits[g.Tables[region]];
                ref int entries = ref MemoryMarshal.GetReference(code.Entries);
                for (; line < regionEnd && bit < last; line += 2)
                {
                    ulong window = Window(ref bytes, bit);
                    int entry = Unsafe.Add(ref entries, (int)(window >> (64 - Mp3Code.FirstBits)));
                    int used = 0;
                    if (entry < 0)
                    {
                        window <<= Mp3Code.FirstBits;
                        used = Mp3Code.FirstBits;
                        entry = Unsafe.Add(ref entries, (-entry >> 4) + (int)(window >> (64 - (-entry & 15))));
                    }

                    int length = entry >> 8;
                    window <<= length;
                    used += length;
                    int x = (entry >> 4) & 15;
                    int y = entry & 15;
                    if (x == 15 && linBits > 0)
                    {
                        x += (int)(window >> (64 - linBits));
                        window <<= linBits;
                        used += linBits;
                    }

                    float a = Unsafe.Add(ref powers, x);
                    if (x != 0)
                    {
                        a = (long)window < 0 ? -a : a;
                        window <<= 1;
                        used++;
                    }

                    if (y == 15 && linBits > 0)
                    {
                        y += (int)(window >> (64 - linBits));
                        window <<= linBits;
                        used += linBits;
                    }

                    float b = Unsafe.Add(ref powers, y);
                    if (y != 0)
                    {
                        b = (long)window < 0 ? -b : b;
                        used++;
                    }

                    lines[line] = a;
                    lines[line + 1] = b;
                    bit += used;
                }
            }

            line = ReadQuads(ref bytes, bit, last, g, lines, line);
            g.Filled = line;
            lines.AsSpan(line).Clear();
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static int ReadQuads(ref byte bytes, int from, int last, Granule g, float[] lines, int first)
    {
        int bit = from;
        int line = first;
        ReadOnlySpan<int> entries = Mp3Tables.Quads[g.QuadTable].Entries;
        while (line <= Lines - 4 && bit < last)
        {
            ulong window = Window(ref bytes, bit);
            int entry = entries[(int)(window >> (64 - Mp3Code.FirstBits))];
            window <<= entry >> 8;
            int used = entry >> 8;
            for (int k = 0; k < 4; k++)
            {
                float value = 0;
                if ((entry & (8 >> k)) != 0)
                {
                    value = (window >> 63) != 0 ? -1 : 1;
                    window <<= 1;
                    used++;
                }

                lines[line + k] = value;
            }

            bit += used;
            if (bit > last)
            {
                // four that the bits did not reach to
                break;
            }

            line += 4;
        }

        return line;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Window(ref byte bytes, int bit)
    {
        ulong eight = Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref bytes, bit >> 3));
        return (BitConverter.IsLittleEndian ? BinaryPrimitives.ReverseEndianness(eight) : eight) << (bit & 7);
    }

    // 2.4.3.4.7: each band by its scale factor, each channel by its gain.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Scale(Mp3Header head, Granule g, int channel, float factor)
    {
        byte[] scales = _scales[channel];
        float[] lines = _lines[channel];
        int step = g.Coarse ? 4 : 2;
        int gain = g.Gain - 210;
        int scale = 0;
        int at = 0;
        if (!g.IsShort || g.Mixed)
        {
            int[] bands = Mp3Tables.LongBands[head.RateRow];
            int count = !g.IsShort ? 22 : LongBandsOfMixed(head);
            for (int b = 0; b < count && at < g.Filled; b++)
            {
                int size = scales[scale++] + (g.Preemphasis ? Mp3Tables.Preemphasis[b] : 0);
                Multiply(lines.AsSpan(at, bands[b + 1] - bands[b]), GainOf(gain - (step * size)) * factor);
                at = bands[b + 1];
            }
        }

        if (g.IsShort)
        {
            int[] bands = Mp3Tables.ShortBands[head.RateRow];
            for (int b = g.Mixed ? 3 : 0; b < 13 && at < g.Filled; b++)
            {
                int width = bands[b + 1] - bands[b];
                for (int w = 0; w < 3; w++)
                {
                    Multiply(lines.AsSpan(at, width), GainOf(gain - (8 * g.WindowGains[w]) - (step * scales[scale++])) * factor);
                    at += width;
                }
            }
        }
    }

    // The first 36 lines are long: eight bands at the rates of MPEG 1, six below; at 8 kHz 72 lines, six bands.
    private static int LongBandsOfMixed(Mp3Header head) => head.Version == 1 ? 8 : 6;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Multiply(Span<float> lines, float by)
    {
        for (int i = 0; i < lines.Length; i++)
        {
            lines[i] *= by;
        }
    }

    private static float GainOf(int quarters) => Gains[Math.Clamp(quarters + 400, 0, Gains.Length - 1)];

    // 2.4.3.4.9.3 and 13818-3, 2.4.3.2: above the last line of the right channel, one spectrum serves both, band by band with a ratio.
    // Leaves half of the left channel's part in _lines[0] and half of the right channel's in _lines[1], or, where the blocks are alike,
    // the mean in _lines[0].
    private void ShareIntensity(Mp3Header head, Granule left, Granule right, int[] none)
    {
        float[] a = _lines[0];
        float[] b = _lines[1];
        byte[] scales = _scales[1];
        int lowest = right.Filled;
        while (lowest > 0 && b[lowest - 1] == 0)
        {
            lowest--;
        }

        bool coarseSteps = (right.Compress & 1) != 0;
        float middle = head.MiddleSide ? 0.70710678f : 1;
        int at = 0;
        int scale = 0;
        int last = -1;
        int lastNone = 7;
        if (!right.IsShort || right.Mixed)
        {
            int[] bands = Mp3Tables.LongBands[head.RateRow];
            int count = !right.IsShort ? 22 : LongBandsOfMixed(head);
            for (int band = 0; band < count; band++)
            {
                // the highest band has no place of its own and takes that of the one below
                bool own = band < 21;
                last = own || last < 0 ? scales[scale] : last;
                lastNone = NoneAt(none, scale, own, lastNone);
                Share(a, b, at, bands[band + 1] - bands[band], at >= lowest && !right.Mixed ? Ratio(head, last, lastNone, coarseSteps) : null, head.MiddleSide, middle);
                at = bands[band + 1];
                scale++;
            }
        }

        if (right.IsShort)
        {
            int[] bands = Mp3Tables.ShortBands[head.RateRow];
            Span<int> ends = [0, 0, 0];
            FindEnds(right, bands, b, at, ends);
            int[] places = [-1, -1, -1];
            int[] noPlaces = [7, 7, 7];
            for (int band = right.Mixed ? 3 : 0; band < 13; band++)
            {
                int width = bands[band + 1] - bands[band];
                for (int w = 0; w < 3; w++)
                {
                    bool own = band < 12;
                    places[w] = own ? scales[scale] : places[w];
                    noPlaces[w] = NoneAt(none, scale, own, noPlaces[w]);
                    Share(a, b, at, width, band >= ends[w] ? Ratio(head, places[w], noPlaces[w], coarseSteps) : null, head.MiddleSide, middle);
                    at += width;
                    scale++;
                }
            }
        }

        bool alike = left.Kind == right.Kind && left.Mixed == right.Mixed;
        left.Filled = right.Filled = Math.Max(left.Filled, right.Filled);
        if (alike)
        {
            for (int i = 0; i < Lines; i++)
            {
                a[i] += b[i];
            }
        }
        else
        {
            Sound(head, right, b);
        }
    }

    private static int NoneAt(int[] none, int scale, bool own, int before) => none.Length == 0 ? 7 : own ? none[scale] : before;

    // The first band of each window above its last value.
    private static void FindEnds(Granule right, int[] bands, float[] b, int from, Span<int> ends)
    {
        int at = from;
        for (int band = right.Mixed ? 3 : 0; band < 13; band++)
        {
            int width = bands[band + 1] - bands[band];
            for (int w = 0; w < 3; w++)
            {
                if (b.AsSpan(at, width).ContainsAnyExcept(0f))
                {
                    ends[w] = band + 1;
                }

                at += width;
            }
        }
    }

    // What of the left spectrum each channel gets; null when the place says that the band is not shared.
    private static (float Left, float Right)? Ratio(Mp3Header head, int place, int none, bool coarse)
    {
        if (place < 0 || place == none)
        {
            return null;
        }

        if (head.Version == 1)
        {
            if (place > 6)
            {
                return null;
            }

            // tan(pi/2) would be the end of the scale: all on the left
            double ratio = place == 6 ? 1 : Math.Tan(place * Math.PI / 12) / (1 + Math.Tan(place * Math.PI / 12));
            return ((float)ratio, (float)(1 - ratio));
        }

        float lessened = (float)Math.Pow(2, (coarse ? -0.5 : -0.25) * ((place + 1) / 2));
        return place == 0 ? (1, 1) : (place & 1) != 0 ? (lessened, 1) : (1, lessened);
    }

    // Turns a band into half of the left and half of the right channel.
    private static void Share(float[] a, float[] b, int at, int width, (float Left, float Right)? ratio, bool middleSide, float middle)
    {
        for (int i = at; i < at + width; i++)
        {
            float one = a[i];
            float two = b[i];
            (a[i], b[i]) = ratio is (float l, float r)
                ? (one * l * 0.5f, one * r * 0.5f)
                : middleSide ? ((one + two) * middle * 0.5f, (one - two) * middle * 0.5f) : (one * 0.5f, two * 0.5f);
        }
    }

    // Sorts short blocks, takes the mirror images of the bands out (2.4.3.4.8 and 2.4.3.4.10.1), and adds it to the filter bank.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Sound(Mp3Header head, Granule g, float[] lines)
    {
        int filled = g.Filled;
        if (filled == 0)
        {
            return;
        }

        if (g.IsShort)
        {
            filled = Sort(head, g, lines);
        }

        int bands = Math.Min(32, (filled + 17) / 18);
        int borders = !g.IsShort ? Math.Min(31, bands) : g.Mixed ? 1 : 0;
        for (int band = 1; band <= borders; band++)
        {
            int middle = band * 18;
            for (int i = 0; i < 8; i++)
            {
                float below = lines[middle - 1 - i];
                float above = lines[middle + i];
                (float cs, float ca) = Butterflies[i];
                lines[middle - 1 - i] = (below * cs) - (above * ca);
                lines[middle + i] = (above * cs) + (below * ca);
            }
        }

        bands = Math.Min(32, Math.Max(bands, borders + 1));
        _bank.Add(lines, g.Kind, g.Mixed, bands);
    }

    // From one window after the other to the three windows line by line; gives the lines that may not be zero.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int Sort(Mp3Header head, Granule g, float[] lines)
    {
        int[] bands = Mp3Tables.ShortBands[head.RateRow];
        int at = g.Mixed ? 3 * bands[3] : 0;
        for (int b = g.Mixed ? 3 : 0; b < 13 && at < g.Filled; b++)
        {
            int width = bands[b + 1] - bands[b];
            for (int w = 0; w < 3; w++)
            {
                for (int i = 0; i < width; i++)
                {
                    _sorted[at + (3 * i) + w] = lines[at + (w * width) + i];
                }
            }

            _sorted.AsSpan(at, 3 * width).CopyTo(lines.AsSpan(at));
            at += 3 * width;
        }

        return Math.Max(at, g.Filled);
    }

    private static float[] MakePowers()
    {
        float[] powers = new float[15 + 8192];
        for (int i = 0; i < powers.Length; i++)
        {
            powers[i] = (float)Math.Pow(i, 4.0 / 3);
        }

        return powers;
    }

    private static float[] MakeGains()
    {
        float[] gains = new float[501];
        for (int i = 0; i < gains.Length; i++)
        {
            gains[i] = (float)Math.Pow(2, (i - 400) / 4.0);
        }

        return gains;
    }

    // Table B.9.
    private static (float, float)[] MakeButterflies()
    {
        double[] c = [-0.6, -0.535, -0.33, -0.185, -0.095, -0.041, -0.0142, -0.0037];
        return [.. c.Select(v => ((float)(1 / Math.Sqrt(1 + (v * v))), (float)(v / Math.Sqrt(1 + (v * v)))))];
    }
}
