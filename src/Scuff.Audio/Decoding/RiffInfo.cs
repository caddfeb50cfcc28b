using System.Buffers.Binary;
using System.Text;

namespace Scuff.Audio.Decoding;

/// <summary>The INFO list of a RIFF file (same source as <see cref="WavReader"/>): four letters, a size, a text that ends in a zero.</summary>
internal static class RiffInfo
{
    /// <summary>Takes title, artist and album from the body of a LIST chunk; anything else is left.</summary>
    public static void Read(ReadOnlySpan<byte> body, bool big, TagCollector tags)
    {
        if (body.Length < 4 || !body[..4].SequenceEqual("INFO"u8))
        {
            return;
        }

        ReadOnlySpan<byte> rest = body[4..];
        while (rest.Length >= 8)
        {
            uint size = big ? BinaryPrimitives.ReadUInt32BigEndian(rest[4..]) : BinaryPrimitives.ReadUInt32LittleEndian(rest[4..]);
            if (size > rest.Length - 8)
            {
                return;
            }

            string text = TextOf(rest.Slice(8, (int)size));
            if (rest[..4].SequenceEqual("INAM"u8))
            {
                tags.OfferTitle(text);
            }
            else if (rest[..4].SequenceEqual("IART"u8))
            {
                tags.OfferArtist(text);
            }
            else if (rest[..4].SequenceEqual("IPRD"u8))
            {
                tags.OfferAlbum(text);
            }

            rest = rest[Math.Min(rest.Length, 8 + (int)size + ((int)size & 1))..];
        }
    }

    /// <summary>A text whose encoding nobody wrote down: UTF-8 where it is valid, else Latin 1.</summary>
    public static string TextOf(ReadOnlySpan<byte> bytes)
    {
        int zero = bytes.IndexOf((byte)0);
        ReadOnlySpan<byte> text = zero < 0 ? bytes : bytes[..zero];
        return System.Text.Unicode.Utf8.IsValid(text) ? Encoding.UTF8.GetString(text) : Encoding.Latin1.GetString(text);
    }
}
