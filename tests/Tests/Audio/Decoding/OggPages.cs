using System.Buffers.Binary;

namespace Tests.Audio.Decoding;

/// <summary>Changes pages of Ogg files so that they stay valid (RFC 3533).</summary>
internal static class OggPages
{
    /// <summary>Gives all pages another stream number.</summary>
    public static void ChangeSerial(byte[] file, int serial)
    {
        foreach ((int at, int _) in All(file))
        {
            BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(at + 14), serial);
        }

        Mend(file);
    }

    /// <summary>Gives every page the CRC of what it now holds.</summary>
    public static void Mend(byte[] file)
    {
        foreach ((int at, int size) in All(file))
        {
            Span<byte> page = file.AsSpan(at, size);
            page.Slice(22, 4).Clear();
            uint crc = 0;
            foreach (byte one in page)
            {
                crc ^= (uint)one << 24;
                for (int bit = 0; bit < 8; bit++)
                {
                    crc = unchecked((crc & 0x80000000) != 0 ? (crc << 1) ^ 0x04C11DB7 : crc << 1);
                }
            }

            BinaryPrimitives.WriteUInt32LittleEndian(page[22..], crc);
        }
    }

    private static List<(int At, int Size)> All(byte[] file)
    {
        List<(int, int)> pages = [];
        for (int at = 0; at + 27 <= file.Length;)
        {
            int next = file.AsSpan(at).IndexOf("OggS"u8);
            if (next < 0 || at + next + 27 > file.Length)
            {
                break;
            }

            at += next;
            int laces = file[at + 26];
            if (at + 27 + laces > file.Length)
            {
                break;
            }

            int size = 27 + laces;
            foreach (byte lace in file.AsSpan(at + 27, laces))
            {
                size += lace;
            }

            if (at + size > file.Length)
            {
                break;
            }

            pages.Add((at, size));
            at += size;
        }

        return pages;
    }
}
