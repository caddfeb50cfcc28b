using System.Buffers.Binary;

namespace Scuff.Audio.Decoding;

/// <summary>The comments of Ogg and FLAC files. Source: Xiph.Org, Ogg Vorbis I specification, section 5; RFC 9639, section 8.6.</summary>
internal static class VorbisComments
{
    /// <summary>Takes title, artist and album; whatever lies beyond the piece is left out.</summary>
    /// <param name="body">From the length of the vendor's name on.</param>
    /// <param name="tags">Takes what is found.</param>
    public static void Read(ReadOnlySpan<byte> body, TagCollector tags)
    {
        ReadOnlySpan<byte> rest = body;
        if (!Next(ref rest, out _) || rest.Length < 4)
        {
            return;
        }

        uint count = BinaryPrimitives.ReadUInt32LittleEndian(rest);
        rest = rest[4..];
        for (uint i = 0; i < count && Next(ref rest, out ReadOnlySpan<byte> comment); i++)
        {
            int equals = comment.IndexOf((byte)'=');
            if (equals is < 1 or > 20)
            {
                continue;
            }

            string text = RiffInfo.TextOf(comment[(equals + 1)..]);
            switch (RiffInfo.TextOf(comment[..equals]).ToUpperInvariant())
            {
                case "TITLE":
                    tags.OfferTitle(text);
                    break;
                case "ARTIST":
                    tags.OfferArtist(text);
                    break;
                case "ALBUM":
                    tags.OfferAlbum(text);
                    break;
            }
        }
    }

    private static bool Next(ref ReadOnlySpan<byte> rest, out ReadOnlySpan<byte> text)
    {
        text = [];
        if (rest.Length < 4 || BinaryPrimitives.ReadUInt32LittleEndian(rest) is var size && size > rest.Length - 4)
        {
            return false;
        }

        text = rest.Slice(4, (int)size);
        rest = rest[(4 + (int)size)..];
        return true;
    }
}
