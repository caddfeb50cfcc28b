using System.Buffers.Binary;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Takes the packets of the first sound stream out of an Ogg file, and of the sound streams chained behind it. Source: RFC 3533 (2003).
/// Pages with a wrong CRC are left out; streams of other kinds beside the sound (pictures, words) are passed over.
/// </summary>
internal sealed class OggReader(ByteSource bytes)
{
    // headers carry pictures; packets of sound stay below 64 kB
    private const int LongestPacket = 1 << 24;

    // a page at most: 27 bytes, 255 lengths, 255 times 255 bytes
    private const int LongestPage = 27 + 255 + (255 * 255);

    private static readonly uint[] Crc = MakeCrc();

    private readonly Queue<OggPacket> _ready = new();
    private readonly List<byte> _open = [];
    private uint? _serial;
    private bool _carrying;
    private bool _sawSound;
    private uint _nextPage;

    /// <summary>Whether bytes were damaged and left out.</summary>
    public bool Damaged { get; private set; }

    /// <summary>Whether the last stream was closed by its writer.</summary>
    public bool Closed { get; private set; }

    /// <summary>The next packet without taking it; null at the end of the file.</summary>
    public OggPacket? Peek()
    {
        while (_ready.Count == 0)
        {
            if (!NextPage())
            {
                return null;
            }
        }

        return _ready.Peek();
    }

    /// <summary>Takes the next packet; null at the end of the file.</summary>
    public OggPacket? Take()
    {
        OggPacket? packet = Peek();
        if (packet is not null)
        {
            _ready.Dequeue();
        }

        return packet;
    }

    /// <summary>Whether a packet opens a sound stream that this room may know.</summary>
    public static bool IsSound(ReadOnlySpan<byte> packet)
        => packet.StartsWith("\u0001vorbis"u8) || packet.StartsWith("OpusHead"u8) || packet.StartsWith("\u007fFLAC"u8) || packet.StartsWith("Speex   "u8);

    private bool NextPage()
    {
        while (true)
        {
            ReadOnlySpan<byte> look = bytes.Peek(LongestPage);
            if (look.Length < 27)
            {
                return false;
            }

            if (PageSize(look) is int size)
            {
                Read(look[..size]);
                bytes.Take(size);
                return true;
            }

            // the next place that may begin a page
            int next = look[1..].IndexOf("OggS"u8);
            bool tag = look.StartsWith("TAG"u8);
            Damaged |= !tag;
            bytes.Take(next < 0 ? Math.Max(1, look.Length - 3) : next + 1);
        }
    }

    // Bytes of the page that begins here; null when none does, or a damaged one.
    private static int? PageSize(ReadOnlySpan<byte> look)
    {
        if (!look.StartsWith("OggS"u8) || look[4] != 0 || look.Length < 27 + look[26])
        {
            return null;
        }

        int size = 27 + look[26];
        foreach (byte lace in look.Slice(27, look[26]))
        {
            size += lace;
        }

        if (size > look.Length)
        {
            return null;
        }

        uint crc = 0;
        for (int i = 0; i < size; i++)
        {
            byte one = i is >= 22 and < 26 ? (byte)0 : look[i];
            crc = unchecked((crc << 8) ^ Crc[(crc >> 24) ^ one]);
        }

        return crc == BinaryPrimitives.ReadUInt32LittleEndian(look[22..]) ? size : null;
    }

    private void Read(ReadOnlySpan<byte> page)
    {
        bool continues = (page[5] & 1) != 0;
        bool first = (page[5] & 2) != 0;
        bool last = (page[5] & 4) != 0;
        long granule = BinaryPrimitives.ReadInt64LittleEndian(page[6..]);
        uint serial = BinaryPrimitives.ReadUInt32LittleEndian(page[14..]);
        uint number = BinaryPrimitives.ReadUInt32LittleEndian(page[18..]);
        int laces = page[26];
        ReadOnlySpan<byte> body = page[(27 + laces)..];
        if (first)
        {
            // beside a stream that has not begun to sound, this one plays together with it; after it, it is the next of a chain
            if (!IsSound(body) || (_serial is not null && !_sawSound))
            {
                return;
            }

            _serial = serial;
            _sawSound = false;
            _carrying = false;
            _nextPage = number;
            Closed = false;
        }
        else if (serial != _serial)
        {
            return;
        }

        if (number != _nextPage)
        {
            Damaged = true;
            _carrying = false;
        }

        _nextPage = unchecked(number + 1);
        _sawSound |= !first;
        Closed |= last;

        // the tail of a packet whose beginning was lost
        bool drop = continues && !_carrying;
        if (!continues)
        {
            _open.Clear();
        }

        int ends = 0;
        for (int i = 0; i < laces; i++)
        {
            ends += page[27 + i] < 255 ? 1 : 0;
        }

        int at = 0;
        int ended = 0;
        for (int i = 0; i < laces; i++)
        {
            int lace = page[27 + i];
            if (!drop && _open.Count <= LongestPacket)
            {
                _open.AddRange(body.Slice(at, lace));
            }

            at += lace;
            if (lace == 255)
            {
                continue;
            }

            ended++;
            if (!drop && _open.Count <= LongestPacket)
            {
                _ready.Enqueue(new OggPacket([.. _open], first && ended == 1, granule, ended == ends, last));
            }
            else
            {
                Damaged = true;
            }

            drop = false;
            _open.Clear();
        }

        _carrying = laces > 0 && page[27 + laces - 1] == 255 && !drop;
    }

    private static uint[] MakeCrc()
    {
        uint[] table = new uint[256];
        for (uint i = 0; i < 256; i++)
        {
            uint crc = i << 24;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = unchecked((crc & 0x80000000) != 0 ? (crc << 1) ^ 0x04C11DB7 : crc << 1);
            }

            table[i] = crc;
        }

        return table;
    }
}
