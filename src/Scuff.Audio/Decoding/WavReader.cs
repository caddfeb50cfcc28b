using System.Buffers.Binary;
using System.Text;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Opens WAV files: RIFF and big-endian RIFX, RF64 and BW64 for more than 4 GB. Sources: IBM and Microsoft, Multimedia Programming
/// Interface and Data Specifications 1.0 (1991); the WAVEFORMATEXTENSIBLE note; EBU Tech 3306 for RF64.
/// </summary>
internal static class WavReader
{
    // size of a chunk whose writer did not know it yet
    private const uint Unknown = 0xFFFFFFFF;

    // chunks that may follow samples; after a size of zero they tell a file without sound from one that was streamed
    private static readonly string[] Followers = ["LIST", "id3 ", "ID3 ", "bext", "fact", "PEAK", "cue ", "smpl", "junk", "JUNK", "afsp", "acid", "iXML"];

    /// <summary>Reads the head up to the samples.</summary>
    /// <param name="bytes">The file from its first byte.</param>
    /// <exception cref="AudioException">The head is damaged.</exception>
    /// <exception cref="ForeignSoundException">The samples are compressed in a way not known here.</exception>
    public static SoundSource Open(ByteSource bytes)
    {
        ReadOnlySpan<byte> head = bytes.Peek(12);
        bool big = head[..4].SequenceEqual("RIFX"u8);
        bytes.Take(12);
        TagCollector early = new();
        PcmLayout? layout = null;
        int rate = 0;
        long? wideData = null;
        while (true)
        {
            ReadOnlySpan<byte> chunk = bytes.Peek(8);
            if (chunk.Length < 8)
            {
                throw new AudioException(layout is null
                    ? "This WAV file ends inside its head, before any sound."
                    : "This WAV file has a head but no sound in it.");
            }

            string id = Encoding.Latin1.GetString(chunk[..4]);
            uint size = big ? BinaryPrimitives.ReadUInt32BigEndian(chunk[4..]) : BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
            bytes.Take(8);
            switch (id)
            {
                case "fmt ":
                    (layout, rate) = ReadFormat(bytes.Peek((int)Math.Min(size, 64)), big);
                    break;
                case "ds64" when size >= 16:
                    wideData = ReadWideSize(bytes.Peek(16));
                    break;
                case "LIST":
                    RiffInfo.Read(bytes.Peek((int)Math.Min(size, 1 << 16)), big, early);
                    break;
                case "data" when layout is null:
                    throw new AudioException("This WAV file does not say how its samples are written; its head is damaged.");
                case "data":
                    PcmSource source = new("WAV", bytes, layout, rate, DataBytes(bytes, size, wideData), (left, tags) => ReadRest(bytes, left, big, tags));
                    source.Tags.Offer(early);
                    return source;
            }

            if (!bytes.Skip((long)size + (size & 1)) && layout is null)
            {
                throw new AudioException("This WAV file ends inside its head, before any sound.");
            }
        }
    }

    private static long? ReadWideSize(ReadOnlySpan<byte> chunk)
        => chunk.Length < 16 || BinaryPrimitives.ReadInt64LittleEndian(chunk[8..]) is not (> 0 and long size) ? null : size;

    private static long? DataBytes(ByteSource bytes, uint size, long? wide)
    {
        if (size == Unknown)
        {
            return wide;
        }

        if (size != 0)
        {
            return size;
        }

        ReadOnlySpan<byte> next = bytes.Peek(4);
        return next.Length < 4 || Followers.Contains(Encoding.Latin1.GetString(next)) ? 0 : null;
    }

    private static (PcmLayout Layout, int Rate) ReadFormat(ReadOnlySpan<byte> f, bool big)
    {
        if (f.Length < 16)
        {
            throw new AudioException("The head of this WAV file is damaged: it does not say how its samples are written.");
        }

        int tag = U16(f, big);
        int channels = U16(f[2..], big);
        uint rate = big ? BinaryPrimitives.ReadUInt32BigEndian(f[4..]) : BinaryPrimitives.ReadUInt32LittleEndian(f[4..]);
        int align = U16(f[12..], big);
        int bits = U16(f[14..], big);
        if (tag == 0xFFFE && f.Length >= 26)
        {
            // the first two bytes of the sub-format are the plain tag
            tag = U16(f[24..], big);
        }

        PcmKind kind = tag switch
        {
            1 => bits <= 8 ? PcmKind.Unsigned8 : PcmKind.Signed,
            3 => PcmKind.Float,
            6 => PcmKind.ALaw,
            7 => PcmKind.MuLaw,
            _ => throw new ForeignSoundException("a WAV file with compressed samples", "WAV"),
        };
        SoundLimits.CheckHead("WAV", rate, channels);
        int container = align > 0 && align % channels == 0 ? align / channels : (bits + 7) / 8;
        PcmLayout layout = new(kind, container, big, channels);
        if (!layout.IsKnown || bits < 1 || bits > 8 * container)
        {
            throw new AudioException($"This WAV file says that a sample has {bits} bits in {container} bytes, which cannot be; its head is damaged.");
        }

        return (layout, (int)rate);
    }

    private static void ReadRest(ByteSource bytes, long left, bool big, TagCollector tags)
    {
        // the samples are padded to an even number of bytes
        if (!bytes.Skip(left + (bytes.Position + left & 1)))
        {
            return;
        }

        while (bytes.Peek(8) is { Length: 8 } chunk)
        {
            bool list = chunk[..4].SequenceEqual("LIST"u8);
            bool id3 = chunk[..4].SequenceEqual("id3 "u8) || chunk[..4].SequenceEqual("ID3 "u8);
            uint size = big ? BinaryPrimitives.ReadUInt32BigEndian(chunk[4..]) : BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
            bytes.Take(8);
            if (list)
            {
                RiffInfo.Read(bytes.Peek((int)Math.Min(size, 1 << 16)), big, tags);
            }
            else if (id3 && bytes.Peek((int)Math.Min(size, Id3.LongestTag)) is { Length: > 10 } tag && Id3.BodySize(tag) is int body)
            {
                Id3.Read(tag[..Math.Min(tag.Length, 10 + body)], tags);
            }

            if (!bytes.Skip((long)size + (size & 1)))
            {
                return;
            }
        }
    }

    private static int U16(ReadOnlySpan<byte> b, bool big) => big ? BinaryPrimitives.ReadUInt16BigEndian(b) : BinaryPrimitives.ReadUInt16LittleEndian(b);
}
