using System.Buffers.Binary;
using System.Text;

namespace Scuff.Audio.Decoding;

/// <summary>
/// ID3 tags. Sources: ID3 tag version 2.2.0, 2.3.0 and 2.4.0 (id3.org, 1998 to 2000), and ID3v1 as MP3 players write it: 128 bytes at the
/// very end.
/// </summary>
internal static class Id3
{
    /// <summary>The largest tag that is read, in bytes; a larger one is left out. Room for several pictures.</summary>
    public const int LongestTag = 1 << 24;

    // a title or artist; longer text frames are lyrics
    private const int LongestText = 1 << 14;

    /// <summary>Bytes of the tag behind its ten bytes of head (a footer counts in); null when no version 2 tag begins here.</summary>
    public static int? BodySize(ReadOnlySpan<byte> head)
    {
        if (head.Length < 10 || !head[..3].SequenceEqual("ID3"u8) || head[3] is < 2 or > 4 || (head[6] | head[7] | head[8] | head[9]) >= 0x80)
        {
            return null;
        }

        bool footer = head[3] == 4 && (head[5] & 0x10) != 0;
        return SyncSafe(head[6..]) + (footer ? 10 : 0);
    }

    /// <summary>Takes title, artist and album from a whole version 2 tag; what is damaged is left out.</summary>
    /// <param name="tag">The tag with its head; may be cut short.</param>
    /// <param name="tags">Takes what is found.</param>
    public static void Read(ReadOnlySpan<byte> tag, TagCollector tags)
    {
        int version = tag[3];
        byte flags = tag[5];
        ReadOnlySpan<byte> body = tag[10..];
        if (version < 4 && (flags & 0x80) != 0)
        {
            body = WithoutUnsync(body);
        }

        // version 2.2 uses this bit for a compression that was never defined
        if (version == 2 && (flags & 0x40) != 0)
        {
            return;
        }

        if (version > 2 && (flags & 0x40) != 0 && body.Length >= 4)
        {
            long extended = version == 3 ? 4L + BinaryPrimitives.ReadUInt32BigEndian(body) : SyncSafe(body);
            body = extended < body.Length ? body[(int)extended..] : [];
        }

        ReadFrames(body, version, tags);
    }

    /// <summary>Takes title, artist and album from the last 128 bytes of a file, if they are a version 1 tag.</summary>
    public static void ReadVersion1(ReadOnlySpan<byte> tail, TagCollector tags)
    {
        if (tail.Length != 128 || !tail[..3].SequenceEqual("TAG"u8))
        {
            return;
        }

        tags.OfferTitle(RiffInfo.TextOf(tail.Slice(3, 30)));
        tags.OfferArtist(RiffInfo.TextOf(tail.Slice(33, 30)));
        tags.OfferAlbum(RiffInfo.TextOf(tail.Slice(63, 30)));
    }

    private static void ReadFrames(ReadOnlySpan<byte> body, int version, TagCollector tags)
    {
        int headSize = version == 2 ? 6 : 10;
        int idSize = version == 2 ? 3 : 4;
        ReadOnlySpan<byte> rest = body;
        while (rest.Length > headSize && rest[0] != 0)
        {
            long size = version switch
            {
                2 => (rest[3] << 16) | (rest[4] << 8) | rest[5],
                3 => BinaryPrimitives.ReadUInt32BigEndian(rest[4..]),
                _ => FrameSize(rest),
            };
            if (size > rest.Length - headSize)
            {
                return;
            }

            string id = Encoding.Latin1.GetString(rest[..idSize]);
            int format = version == 2 ? 0 : rest[9];
            ReadOnlySpan<byte> content = rest.Slice(headSize, (int)size);
            if (id is "TT2" or "TIT2" or "TP1" or "TPE1" or "TAL" or "TALB" && Plain(content, version, format, out ReadOnlySpan<byte> plain))
            {
                string? text = Text(plain);
                switch (id)
                {
                    case "TT2" or "TIT2":
                        tags.OfferTitle(text);
                        break;
                    case "TP1" or "TPE1":
                        tags.OfferArtist(text);
                        break;
                    default:
                        tags.OfferAlbum(text);
                        break;
                }
            }

            rest = rest[(headSize + (int)size)..];
        }
    }

    // Sizes of version 2.4 leave out the top bit of every byte; some writers forgot, and then a plain size leads to the next frame.
    private static long FrameSize(ReadOnlySpan<byte> frame)
    {
        uint plain = BinaryPrimitives.ReadUInt32BigEndian(frame[4..]);
        if ((plain & 0x80808080) != 0)
        {
            return plain;
        }

        int safe = SyncSafe(frame[4..]);
        return plain == safe || LeadsOn(frame, safe) || !LeadsOn(frame, plain) ? safe : plain;
    }

    private static bool LeadsOn(ReadOnlySpan<byte> frame, long size)
    {
        long next = 10 + size;
        return next == frame.Length || (next + 4 <= frame.Length && (frame[(int)next] == 0 || !frame.Slice((int)next, 4).ContainsAnyExceptInRange((byte)'0', (byte)'Z')));
    }

    // The bytes of a frame as they were before flags; false when they are packed or locked.
    private static bool Plain(ReadOnlySpan<byte> content, int version, int format, out ReadOnlySpan<byte> plain)
    {
        plain = content;
        bool packed = version == 3 ? (format & 0xC0) != 0 : version == 4 && (format & 0x0C) != 0;
        if (packed || content.Length > LongestText)
        {
            return false;
        }

        int extra = version switch
        {
            3 => (format & 0x20) != 0 ? 1 : 0,
            4 => ((format & 0x40) != 0 ? 1 : 0) + ((format & 0x01) != 0 ? 4 : 0),
            _ => 0,
        };
        plain = content[Math.Min(extra, content.Length)..];
        if (version == 4 && (format & 0x02) != 0)
        {
            plain = WithoutUnsync(plain);
        }

        return true;
    }

    private static string? Text(ReadOnlySpan<byte> content)
    {
        if (content.Length < 2)
        {
            return null;
        }

        ReadOnlySpan<byte> text = content[1..];
        return content[0] switch
        {
            // Latin 1 by the standard; many writers put UTF-8 there
            0 => RiffInfo.TextOf(text),
            1 => text is [0xFE, 0xFF, ..] ? Encoding.BigEndianUnicode.GetString(text[2..]) : Encoding.Unicode.GetString(text is [0xFF, 0xFE, ..] ? text[2..] : text),
            2 => Encoding.BigEndianUnicode.GetString(text),
            3 => Encoding.UTF8.GetString(text),
            _ => null,
        };
    }

    // A zero after a byte of ones was put there so that no player takes it for a frame of sound.
    private static byte[] WithoutUnsync(ReadOnlySpan<byte> bytes)
    {
        byte[] kept = new byte[bytes.Length];
        int count = 0;
        for (int i = 0; i < bytes.Length; i++)
        {
            if (i == 0 || bytes[i] != 0 || bytes[i - 1] != 0xFF)
            {
                kept[count++] = bytes[i];
            }
        }

        return kept[..count];
    }

    private static int SyncSafe(ReadOnlySpan<byte> b) => ((b[0] & 0x7F) << 21) | ((b[1] & 0x7F) << 14) | ((b[2] & 0x7F) << 7) | (b[3] & 0x7F);
}
