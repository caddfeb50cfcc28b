namespace Scuff.Audio.Decoding;

/// <summary>Looks through the code books of a Vorbis head before a decoder believes their sizes. Source: Vorbis I specification, section 3.2.1.</summary>
internal static class VorbisSetup
{
    // the books of the usual encoders add up to some ten thousands of each
    private const long MostEntries = 1 << 20;
    private const long MostValues = 1 << 22;

    /// <summary>Refuses books that cannot be, or are far larger than music needs.</summary>
    /// <exception cref="AudioException">They are.</exception>
    public static void Check(ReadOnlySpan<byte> packet)
    {
        LowFirstBits bits = new(packet);
        bool good = packet.StartsWith("\u0005vorbis"u8);
        bits.Skip(56);
        int books = (int)bits.Read(8) + 1;
        long entriesOfAll = 0;
        long valuesOfAll = 0;
        for (int book = 0; good && book < books; book++)
        {
            good = bits.Read(24) == 0x564342;
            long dimensions = bits.Read(16);
            long entries = bits.Read(24);
            entriesOfAll += entries;
            valuesOfAll += entries * dimensions;
            good = good && entriesOfAll <= MostEntries && valuesOfAll <= MostValues && SkipLengths(ref bits, entries) && SkipValues(ref bits, entries, dimensions);
        }

        if (!good || bits.Overran)
        {
            throw new AudioException("The head of this Ogg Vorbis file is damaged.");
        }
    }

    private static bool SkipLengths(ref LowFirstBits bits, long entries)
    {
        if (bits.Read(1) != 0)
        {
            bits.Skip(5);
            for (long at = 0; at < entries;)
            {
                long count = bits.Read(BitsFor(entries - at));
                if (bits.Overran || count > entries - at)
                {
                    return false;
                }

                // an empty run makes no way, but the code grows longer and soon the bits are over
                at += count;
            }

            return true;
        }

        bool sparse = bits.Read(1) != 0;
        for (long i = 0; i < entries && !bits.Overran; i++)
        {
            if (!sparse || bits.Read(1) != 0)
            {
                bits.Skip(5);
            }
        }

        return !bits.Overran;
    }

    private static bool SkipValues(ref LowFirstBits bits, long entries, long dimensions)
    {
        uint kind = bits.Read(4);
        if (kind == 0)
        {
            return true;
        }

        if (kind > 2 || dimensions == 0)
        {
            return false;
        }

        bits.Skip(64);
        int width = (int)bits.Read(4) + 1;
        bits.Skip(1);
        long values = kind == 2 ? entries * dimensions : Root(entries, dimensions);
        bits.Skip(values * width);
        return !bits.Overran;
    }

    // The largest whole number whose power is not above the entries.
    private static long Root(long entries, long dimensions)
    {
        long root = (long)Math.Floor(Math.Pow(entries, 1.0 / dimensions)) + 1;
        while (root > 0 && Math.Pow(root, dimensions) > entries)
        {
            root--;
        }

        return root;
    }

    private static int BitsFor(long value)
    {
        int count = 0;
        while (value > 0)
        {
            count++;
            value >>= 1;
        }

        return count;
    }

    // Bits of bytes, lowest first, as Vorbis has them.
    private ref struct LowFirstBits(ReadOnlySpan<byte> bytes)
    {
        private readonly ReadOnlySpan<byte> _bytes = bytes;
        private long _at;

        public readonly bool Overran => _at > 8L * _bytes.Length;

        public void Skip(long count) => _at += count;

        public uint Read(int count)
        {
            uint value = 0;
            for (int i = 0; i < count; i++, _at++)
            {
                long index = _at >> 3;
                if (index < _bytes.Length && ((_bytes[(int)index] >> (int)(_at & 7)) & 1) != 0)
                {
                    value |= 1u << i;
                }
            }

            return value;
        }
    }
}
