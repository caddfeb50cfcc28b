using System.Buffers.Binary;
using System.Text;

namespace Tests.Audio.Decoding;

/// <summary>Writes WAV and AIFF files chunk by chunk, right or wrong as a test needs them.</summary>
internal static class WavFile
{
    /// <summary>A whole file.</summary>
    /// <param name="chunks">Its chunks.</param>
    /// <param name="head">RIFF, RIFX or RF64.</param>
    public static byte[] Of(IEnumerable<byte[]> chunks, string head = "RIFF")
    {
        byte[] body = [.. Encoding.ASCII.GetBytes("WAVE"), .. chunks.SelectMany(c => c)];
        return [.. Encoding.ASCII.GetBytes(head), .. Number(body.Length, 4, head == "RIFX"), .. body];
    }

    /// <summary>A chunk, padded to an even length; its size may be a lie.</summary>
    public static byte[] Chunk(string id, byte[] body, long? size = null, bool big = false)
        => [.. Encoding.ASCII.GetBytes(id), .. Number(size ?? body.Length, 4, big), .. body, .. body.Length % 2 == 1 ? new byte[1] : []];

    /// <summary>The chunk that says how samples lie.</summary>
    public static byte[] Format(int tag, int channels, int rate, int bits, int? container = null, bool extensible = false, bool big = false)
    {
        int bytes = container ?? ((bits + 7) / 8);
        byte[] plain =
        [
            .. Number(extensible ? 0xFFFE : tag, 2, big), .. Number(channels, 2, big), .. Number(rate, 4, big), .. Number((long)rate * bytes * channels, 4, big),
            .. Number(bytes * channels, 2, big), .. Number(extensible ? 8 * bytes : bits, 2, big),
        ];
        return Chunk(
            "fmt ",
            extensible ? [.. plain, .. Number(22, 2, big), .. Number(bits, 2, big), .. Number(0, 4, big), .. Number(tag, 2, big), .. Convert.FromHexString("000000001000800000AA00389B71")] : plain,
            big: big);
    }

    /// <summary>Samples side by side, each at the upper end of its bytes.</summary>
    public static byte[] Samples(IReadOnlyList<int[]> channels, int bits, int? container = null, bool big = false)
    {
        int bytes = container ?? ((bits + 7) / 8);
        return
        [
            .. Enumerable.Range(0, channels[0].Length).SelectMany(i => channels.SelectMany(c => bytes == 1 && !big
                ? [(byte)(c[i] + 128)]
                : Number((long)c[i] << ((8 * bytes) - bits), bytes, big))),
        ];
    }

    /// <summary>A usual file of 16 bits.</summary>
    public static byte[] Plain(float[][] channels, int rate) => Of(
    [
        Format(1, channels.Length, rate, 16),
        Chunk("data", Samples([.. channels.Select(c => c.Select(v => (int)Math.Round(v * 32767)).ToArray())], 16)),
    ]);

    /// <summary>An AIFF file of whole numbers, or AIFC with a code.</summary>
    public static byte[] Aiff(IReadOnlyList<int[]> channels, int bits, int rate, string? code = null, params byte[][] more)
    {
        byte[] common =
        [
            .. Number(channels.Count, 2, true), .. Number(channels[0].Length, 4, true), .. Number(bits, 2, true), .. Extended(rate),
            .. code is null ? [] : Encoding.ASCII.GetBytes(code + "\0\0"),
        ];
        byte[] body =
        [
            .. Encoding.ASCII.GetBytes(code is null ? "AIFF" : "AIFC"), .. Chunk("COMM", common, big: true),
            .. Chunk("SSND", [.. new byte[8], .. code == "sowt" ? Samples(channels, bits, container: null) : Samples(channels, bits, big: true)], big: true),
            .. more.SelectMany(m => m),
        ];
        return [.. Encoding.ASCII.GetBytes("FORM"), .. Number(body.Length, 4, true), .. body];
    }

    /// <summary>A whole number in bytes.</summary>
    public static byte[] Number(long value, int bytes, bool big = false)
    {
        byte[] eight = new byte[8];
        BinaryPrimitives.WriteInt64LittleEndian(eight, value);
        byte[] some = eight[..bytes];
        return big ? [.. some.Reverse()] : some;
    }

    // A whole number as an extended float: the leading one at the top of 64 bits.
    private static byte[] Extended(int value)
    {
        int top = 31 - int.LeadingZeroCount(value);
        return [.. Number(16383 + top, 2, true), .. Number(unchecked((long)((ulong)value << (63 - top))), 8, true)];
    }
}
