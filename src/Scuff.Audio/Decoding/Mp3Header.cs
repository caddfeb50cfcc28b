namespace Scuff.Audio.Decoding;

/// <summary>The first four bytes of an MPEG audio frame. Source: ISO/IEC 11172-3, 2.4.1.3 and 2.4.2.3; 13818-3; MPEG 2.5 has its eleventh bit at zero.</summary>
/// <param name="Version">1, 2, or 3 for 2.5.</param>
/// <param name="Layer">1 to 3.</param>
/// <param name="RateRow">Row of the rate in the tables: 0 to 2 for MPEG 1, 3 to 5 for 2, 6 to 8 for 2.5.</param>
/// <param name="Bits">Bits a second; 0 when the frame has a size of its own ("free format").</param>
/// <param name="Padding">1 when the frame is a byte longer.</param>
/// <param name="HasCrc">Whether two bytes of CRC follow.</param>
/// <param name="Channels">1 or 2.</param>
/// <param name="MiddleSide">Whether the two channels are sum and difference.</param>
/// <param name="Intensity">Whether the upper bands share their values.</param>
internal readonly record struct Mp3Header(
    int Version, int Layer, int RateRow, int Bits, int Padding, bool HasCrc, int Channels, bool MiddleSide, bool Intensity)
{
    private static readonly int[] Rates = [44100, 48000, 32000, 22050, 24000, 16000, 11025, 12000, 8000];

    // thousands of bits a second, layer III
    private static readonly int[] FullRateBits = [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
    private static readonly int[] LowRateBits = [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];

    /// <summary>Samples a second and channel.</summary>
    public int Rate => Rates[RateRow];

    /// <summary>Samples a channel in a frame of layer III.</summary>
    public int Samples => Version == 1 ? 1152 : 576;

    /// <summary>Bytes of side information in layer III.</summary>
    public int SideBytes => Version == 1 ? (Channels == 1 ? 17 : 32) : Channels == 1 ? 9 : 17;

    /// <summary>Bytes of a frame of layer III without the padding; 0 for free format.</summary>
    public int PlainBytes => (int)((long)(Version == 1 ? 144 : 72) * Bits / Rate);

    /// <summary>Reads a head; null when the bytes are none, or name what is reserved.</summary>
    public static Mp3Header? Read(ReadOnlySpan<byte> b)
    {
        if (b.Length < 4 || b[0] != 0xFF || (b[1] & 0xE0) != 0xE0)
        {
            return null;
        }

        int version = (b[1] >> 3) & 3;
        int layer = (b[1] >> 1) & 3;
        int bits = b[2] >> 4;
        int rate = (b[2] >> 2) & 3;
        if (version == 1 || layer == 0 || bits == 15 || rate == 3 || (b[3] & 3) == 2)
        {
            return null;
        }

        int number = version == 3 ? 1 : version == 2 ? 2 : 3;
        bool joint = b[3] >> 6 == 1;
        return new Mp3Header(
            number,
            4 - layer,
            rate + (3 * (number - 1)),
            1000 * (number == 1 ? FullRateBits : LowRateBits)[bits],
            (b[2] >> 1) & 1,
            (b[1] & 1) == 0,
            b[3] >> 6 == 3 ? 1 : 2,
            joint && (b[3] & 0x20) != 0,
            joint && (b[3] & 0x10) != 0);
    }

    /// <summary>Whether another frame may belong to the same stream.</summary>
    public bool Continues(Mp3Header other) => Version == other.Version && Layer == other.Layer && RateRow == other.RateRow && (Bits == 0) == (other.Bits == 0);
}
