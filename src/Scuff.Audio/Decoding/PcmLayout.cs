using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Scuff.Audio.Decoding;

/// <summary>Plain samples in bytes, channels side by side.</summary>
/// <param name="Kind">What a sample is.</param>
/// <param name="Bytes">Bytes a sample, 1 to 4, or 8 for long floats. A sample of fewer bits lies at the upper end (WAVE and AIFF both).</param>
/// <param name="BigEndian">True when the highest byte comes first.</param>
/// <param name="Channels">Channels side by side.</param>
internal sealed record PcmLayout(PcmKind Kind, int Bytes, bool BigEndian, int Channels)
{
    /// <summary>Bytes of one sample of every channel.</summary>
    public int FrameBytes => Bytes * Channels;

    /// <summary>Whether a decoder of this layout exists.</summary>
    public bool IsKnown => Kind switch
    {
        PcmKind.Unsigned8 or PcmKind.ALaw or PcmKind.MuLaw => Bytes == 1,
        PcmKind.Signed => Bytes is >= 1 and <= 4,
        _ => Bytes is 4 or 8,
    };

    /// <summary>Turns whole frames into the mean of their channels.</summary>
    /// <param name="bytes">Whole frames, as many as <paramref name="mono"/> is long.</param>
    /// <param name="mono">Takes the means, -1 to 1.</param>
    /// <param name="side">Which channels are taken.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void ToMono(ReadOnlySpan<byte> bytes, Span<float> mono, SoundSide side = SoundSide.Both)
    {
        if (side != SoundSide.Both && Channels == 2)
        {
            int from = side == SoundSide.Left ? 0 : Bytes;
            for (int i = 0; i < mono.Length; i++)
            {
                mono[i] = (float)Sample(bytes.Slice((i * FrameBytes) + from, Bytes));
            }

            return;
        }

        // The two layouts that nearly every file has.
        if (Kind == PcmKind.Signed && Bytes == 2 && !BigEndian && BitConverter.IsLittleEndian && Channels <= 2)
        {
            ReadOnlySpan<short> all = MemoryMarshal.Cast<byte, short>(bytes);
            for (int i = 0; i < mono.Length; i++)
            {
                mono[i] = Channels == 1 ? all[i] / 32768f : (all[2 * i] + all[(2 * i) + 1]) / 65536f;
            }

            return;
        }

        for (int i = 0; i < mono.Length; i++)
        {
            ReadOnlySpan<byte> frame = bytes.Slice(i * FrameBytes, FrameBytes);
            double sum = 0;
            for (int c = 0; c < Channels; c++)
            {
                sum += Sample(frame.Slice(c * Bytes, Bytes));
            }

            mono[i] = (float)(sum / Channels);
        }
    }

    private double Sample(ReadOnlySpan<byte> b) => Kind switch
    {
        PcmKind.Unsigned8 => (b[0] - 128) / 128.0,
        PcmKind.ALaw => FromALaw(b[0]),
        PcmKind.MuLaw => FromMuLaw(b[0]),
        PcmKind.Float when Bytes == 4 => Finite(BigEndian ? BinaryPrimitives.ReadSingleBigEndian(b) : BinaryPrimitives.ReadSingleLittleEndian(b)),
        PcmKind.Float => Finite(BigEndian ? BinaryPrimitives.ReadDoubleBigEndian(b) : BinaryPrimitives.ReadDoubleLittleEndian(b)),
        _ => Whole(b) / 2147483648.0,
    };

    // The sample at the upper end of 32 bits.
    private int Whole(ReadOnlySpan<byte> b)
    {
        unchecked
        {
            uint all = 0;
            for (int i = 0; i < b.Length; i++)
            {
                all |= (uint)b[BigEndian ? i : b.Length - 1 - i] << (24 - (8 * i));
            }

            return (int)all;
        }
    }

    private static double Finite(double value) => double.IsFinite(value) ? value : 0;

    // G.711 table 1: segment of three bits, four bits inside it, every second bit turned over.
    private static double FromALaw(byte code)
    {
        int turned = code ^ 0x55;
        int segment = (turned >> 4) & 7;
        int inside = ((turned & 15) << 1) + 1;
        int size = segment == 0 ? inside : (inside + 32) << (segment - 1);
        return ((turned & 0x80) != 0 ? size : -size) / 4096.0;
    }

    // G.711 table 2: all bits turned over, a bias of 33.
    private static double FromMuLaw(byte code)
    {
        int turned = ~code & 0xFF;
        int size = ((((turned & 15) << 1) + 33) << ((turned >> 4) & 7)) - 33;
        return ((turned & 0x80) != 0 ? -size : size) / 8192.0;
    }
}
