using System.Buffers.Binary;
using System.Text;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Opens AIFF and AIFC files. Sources: Apple, Audio Interchange File Format 1.3 (1989) and the AIFF-C draft (1991); the codes sowt, fl32,
/// fl64, in24 and in32 as QuickTime defines them.
/// </summary>
internal static class AiffReader
{
    /// <summary>Reads the head up to the samples.</summary>
    /// <param name="bytes">The file from its first byte.</param>
    /// <exception cref="AudioException">The head is damaged.</exception>
    /// <exception cref="ForeignSoundException">The samples are compressed in a way not known here.</exception>
    public static SoundSource Open(ByteSource bytes)
    {
        bool compressed = bytes.Peek(12)[8..12].SequenceEqual("AIFC"u8);
        bytes.Take(12);
        TagCollector early = new();
        PcmLayout? layout = null;
        int rate = 0;
        long frames = 0;
        while (true)
        {
            ReadOnlySpan<byte> chunk = bytes.Peek(8);
            if (chunk.Length < 8)
            {
                throw new AudioException(layout is null
                    ? "This AIFF file ends inside its head, before any sound."
                    : "This AIFF file has a head but no sound in it.");
            }

            string id = Encoding.Latin1.GetString(chunk[..4]);
            uint size = BinaryPrimitives.ReadUInt32BigEndian(chunk[4..]);
            bytes.Take(8);
            if (id == "COMM")
            {
                (layout, rate, frames) = ReadCommon(bytes.Peek((int)Math.Min(size, 22)), compressed);
            }
            else if (id == "SSND")
            {
                return OpenSamples(bytes, size, layout, rate, frames, early);
            }
            else
            {
                ReadText(id, bytes.Peek((int)Math.Min(size, 4096)), early);
            }

            if (!bytes.Skip((long)size + (size & 1)) && layout is null)
            {
                throw new AudioException("This AIFF file ends inside its head, before any sound.");
            }
        }
    }

    private static PcmSource OpenSamples(ByteSource bytes, uint size, PcmLayout? layout, int rate, long frames, TagCollector early)
    {
        if (layout is null)
        {
            throw new AudioException("This AIFF file does not say how its samples are written before they begin; its head is damaged.");
        }

        ReadOnlySpan<byte> head = bytes.Peek(8);
        if (head.Length < 8 || size < 8)
        {
            throw new AudioException("This AIFF file has a head but no sound in it.");
        }

        uint offset = BinaryPrimitives.ReadUInt32BigEndian(head);
        bytes.Take(8);
        if (offset > size - 8 || !bytes.Skip(offset))
        {
            throw new AudioException("This AIFF file says that its sound begins behind its end; its head is damaged.");
        }

        long there = size - 8 - offset;
        long data = frames > 0 ? Math.Min(there, frames * layout.FrameBytes) : there;
        PcmSource source = new("AIFF", bytes, layout, rate, data, (left, tags) => ReadRest(bytes, left + there - data, tags));
        source.Tags.Offer(early);
        return source;
    }

    private static (PcmLayout Layout, int Rate, long Frames) ReadCommon(ReadOnlySpan<byte> c, bool compressed)
    {
        if (c.Length < 18)
        {
            throw new AudioException("The head of this AIFF file is damaged: it does not say how its samples are written.");
        }

        int channels = BinaryPrimitives.ReadInt16BigEndian(c);
        uint frames = BinaryPrimitives.ReadUInt32BigEndian(c[2..]);
        int bits = BinaryPrimitives.ReadInt16BigEndian(c[6..]);
        double rate = Extended(c.Slice(8, 10));
        string code = compressed && c.Length >= 22 ? Encoding.Latin1.GetString(c.Slice(18, 4)) : "NONE";
        int width = (bits + 7) / 8;
        (PcmKind kind, int bytes, bool big) = code switch
        {
            "NONE" or "twos" => (PcmKind.Signed, width, true),
            "sowt" => (PcmKind.Signed, width, false),
            "in24" => (PcmKind.Signed, 3, true),
            "in32" => (PcmKind.Signed, 4, true),
            "raw " => (PcmKind.Unsigned8, 1, true),
            "fl32" or "FL32" => (PcmKind.Float, 4, true),
            "fl64" or "FL64" => (PcmKind.Float, 8, true),
            "alaw" or "ALAW" => (PcmKind.ALaw, 1, true),
            "ulaw" or "ULAW" => (PcmKind.MuLaw, 1, true),
            _ => throw new ForeignSoundException("an AIFF file with compressed samples", "AIFF"),
        };
        SoundLimits.CheckHead("AIFF", double.IsFinite(rate) ? (long)Math.Clamp(Math.Round(rate), -1, 1e12) : -1, channels);
        PcmLayout layout = new(kind, bytes, big, channels);
        if (!layout.IsKnown)
        {
            throw new AudioException($"This AIFF file says that a sample has {bits} bits, which cannot be; its head is damaged.");
        }

        return (layout, (int)Math.Round(rate), frames);
    }

    // IEEE 754 extended: sign, 15 bits of exponent, 64 bits of significand with its leading one written out.
    private static double Extended(ReadOnlySpan<byte> b)
    {
        int head = BinaryPrimitives.ReadUInt16BigEndian(b);
        double size = Math.ScaleB(BinaryPrimitives.ReadUInt64BigEndian(b[2..]), (head & 0x7FFF) - 16383 - 63);
        return (head & 0x8000) != 0 ? -size : size;
    }

    private static void ReadText(string id, ReadOnlySpan<byte> body, TagCollector tags)
    {
        if (id == "NAME")
        {
            tags.OfferTitle(RiffInfo.TextOf(body));
        }
        else if (id == "AUTH")
        {
            tags.OfferArtist(RiffInfo.TextOf(body));
        }
    }

    private static void ReadRest(ByteSource bytes, long left, TagCollector tags)
    {
        if (!bytes.Skip(left + (bytes.Position + left & 1)))
        {
            return;
        }

        while (bytes.Peek(8) is { Length: 8 } chunk)
        {
            string id = Encoding.Latin1.GetString(chunk[..4]);
            uint size = BinaryPrimitives.ReadUInt32BigEndian(chunk[4..]);
            bytes.Take(8);
            if (id == "ID3 " && bytes.Peek((int)Math.Min(size, Id3.LongestTag)) is { Length: > 10 } tag && Id3.BodySize(tag) is int body)
            {
                Id3.Read(tag[..Math.Min(tag.Length, 10 + body)], tags);
            }
            else
            {
                ReadText(id, bytes.Peek((int)Math.Min(size, 4096)), tags);
            }

            if (!bytes.Skip((long)size + (size & 1)))
            {
                return;
            }
        }
    }
}
