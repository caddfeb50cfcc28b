using System.Text;

namespace Tests.Audio.Decoding;

/// <summary>A small FLAC encoder that uses whatever part of RFC 9639 a test wants to see decoded.</summary>
internal static class FlacFile
{
    private static readonly int[][] Fixed = [[], [1], [2, -1], [3, -3, 1], [4, -6, 4, -1]];

    /// <summary>A whole file.</summary>
    public static byte[] Of(int[][] channels, int bits, int rate, FlacShape shape, params string[] comments)
    {
        int count = channels[0].Length;
        Bits head = new();
        head.Write(shape.Block, 16);
        head.Write(shape.Block, 16);
        head.Write(0, 48);
        head.Write(rate, 20);
        head.Write(channels.Length - 1, 3);
        head.Write(bits - 1, 5);
        head.Write(shape.KnowsLength ? count : 0, 36);
        head.Write(0, 64);
        head.Write(0, 64);
        byte[] words =
        [
            .. WavFile.Number(4, 4), .. "test"u8, .. WavFile.Number(comments.Length, 4),
            .. comments.SelectMany(c => (byte[])[.. WavFile.Number(Encoding.UTF8.GetByteCount(c), 4), .. Encoding.UTF8.GetBytes(c)]),
        ];
        List<byte> file = [.. "fLaC"u8, 0, .. WavFile.Number(34, 3, true), .. head.ToArray(), 0x84, .. WavFile.Number(words.Length, 3, true), .. words];
        for (int at = 0, number = 0; at < count; at += shape.Block, number++)
        {
            int[][] block = [.. channels.Select(c => c[at..Math.Min(count, at + shape.Block)])];
            file.AddRange(Frame(block, bits, shape, shape.Variable ? at : number));
        }

        return [.. file];
    }

    private static byte[] Frame(int[][] block, int bits, FlacShape shape, long number)
    {
        int size = block[0].Length;
        Bits b = new();
        b.Write(0x3FFE, 14);
        b.Write(0, 1);
        b.Write(shape.Variable ? 1 : 0, 1);
        b.Write(7, 4);
        b.Write(0, 4);
        b.Write(shape.Stereo == 0 ? block.Length - 1 : shape.Stereo, 4);
        b.Write(0, 4);
        foreach (byte one in Utf8(number))
        {
            b.Write(one, 8);
        }

        b.Write(size - 1, 16);
        b.Write(Crc(b.ToArray(), 8, 0x07), 8);
        long[][] written = [.. block.Select(c => c.Select(v => (long)v).ToArray())];
        if (shape.Stereo != 0)
        {
            long[] left = written[0];
            long[] right = written[1];
            long[] difference = [.. left.Zip(right, (l, r) => l - r)];
            written = shape.Stereo switch
            {
                8 => [left, difference],
                9 => [difference, right],
                _ => [[.. left.Zip(right, (l, r) => (l + r) >> 1)], difference],
            };
        }

        for (int c = 0; c < written.Length; c++)
        {
            bool wide = (shape.Stereo is 8 or 10 && c == 1) || (shape.Stereo == 9 && c == 0);
            Subframe(b, written[c], bits + (wide ? 1 : 0), shape);
        }

        b.Align();
        byte[] body = b.ToArray();
        return [.. body, .. WavFile.Number(Crc(body, 16, 0x8005), 2, true)];
    }

    private static void Subframe(Bits b, long[] samples, int bits, FlacShape shape)
    {
        b.Write(0, 1);
        b.Write(shape.Kind, 6);
        b.Write(shape.Wasted > 0 ? 1 : 0, 1);
        if (shape.Wasted > 0)
        {
            b.Write(1, shape.Wasted);
        }

        long[] s = [.. samples.Select(v => v >> shape.Wasted)];
        int width = bits - shape.Wasted;
        if (shape.Kind <= 1)
        {
            foreach (long v in shape.Kind == 0 ? s[..1] : s)
            {
                b.Write(v, width);
            }

            return;
        }

        // predicted: the weights of the fixed kind, sixteen times as large and shifted back
        bool predicted = shape.Kind >= 32;
        int order = Math.Min(predicted ? shape.Kind - 31 : shape.Kind - 8, s.Length);
        int[] weights = predicted ? [.. Enumerable.Range(0, order).Select(i => i == 0 ? 15 : i % 2 == 0 ? 1 : -1)] : Fixed[order];
        int shift = predicted ? 4 : 0;
        for (int i = 0; i < order; i++)
        {
            b.Write(s[i], width);
        }

        if (predicted)
        {
            b.Write(6 - 1, 4);
            b.Write(shift, 5);
            foreach (int weight in weights)
            {
                b.Write(weight, 6);
            }
        }

        long[] rest = new long[s.Length];
        for (int i = order; i < s.Length; i++)
        {
            long sum = 0;
            for (int k = 0; k < order; k++)
            {
                sum += weights[k] * s[i - 1 - k];
            }

            rest[i] = s[i] - (sum >> shift);
        }

        int partitions = s.Length % (1 << shape.Partitions) == 0 && s.Length >> shape.Partitions > order ? shape.Partitions : 0;
        b.Write(shape.Method, 2);
        b.Write(partitions, 4);
        int part = s.Length >> partitions;
        for (int at = order, end = part; end <= s.Length; at = end, end += part)
        {
            Rice(b, rest[at..end], shape);
        }
    }

    private static void Rice(Bits b, long[] rest, FlacShape shape)
    {
        int parameterBits = shape.Method == 0 ? 4 : 5;
        if (shape.Escape)
        {
            int width = rest.Max(v => 65 - (int)long.LeadingZeroCount(v < 0 ? ~v : v));
            b.Write((1 << parameterBits) - 1, parameterBits);
            b.Write(width, 5);
            foreach (long v in rest)
            {
                b.Write(v, width);
            }

            return;
        }

        double mean = rest.Length == 0 ? 0 : rest.Average(v => Math.Abs((double)v));
        int parameter = Math.Clamp((int)Math.Log2(mean + 1), 0, (1 << parameterBits) - 2);
        b.Write(parameter, parameterBits);
        foreach (long v in rest)
        {
            long folded = v < 0 ? (-2 * v) - 1 : 2 * v;
            for (long zeros = folded >> parameter; zeros > 0; zeros -= 32)
            {
                b.Write(0, (int)Math.Min(32, zeros));
            }

            b.Write(1, 1);
            b.Write(folded & ((1L << parameter) - 1), parameter);
        }
    }

    private static byte[] Utf8(long n)
    {
        if (n < 0x80)
        {
            return [(byte)n];
        }

        int more = 1;
        while (n >> ((6 * more) + 6 - more) != 0)
        {
            more++;
        }

        int lead = unchecked((byte)(0xFF << (7 - more)));
        return [(byte)(lead | (int)(n >> (6 * more))), .. Enumerable.Range(0, more).Reverse().Select(i => (byte)(0x80 | (int)((n >> (6 * i)) & 0x3F)))];
    }

    // Bit by bit, apart from the tables of the decoder.
    private static int Crc(byte[] bytes, int width, int polynomial)
    {
        int crc = 0;
        foreach (byte one in bytes)
        {
            for (int bit = 7; bit >= 0; bit--)
            {
                int top = ((crc >> (width - 1)) ^ (one >> bit)) & 1;
                crc = (crc << 1) & ((1 << width) - 1);
                crc ^= top == 1 ? polynomial : 0;
            }
        }

        return crc;
    }

    private sealed class Bits
    {
        private readonly List<byte> _bytes = [];
        private int _used = 8;

        public void Write(long value, int count)
        {
            for (int i = count - 1; i >= 0; i--)
            {
                if (_used == 8)
                {
                    _bytes.Add(0);
                    _used = 0;
                }

                _bytes[^1] |= (byte)(((value >> i) & 1) << (7 - _used));
                _used++;
            }
        }

        public void Align() => _used = 8;

        public byte[] ToArray() => [.. _bytes];
    }
}
