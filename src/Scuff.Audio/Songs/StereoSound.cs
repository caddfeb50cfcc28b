using System.Buffers.Binary;

namespace Scuff.Audio.Songs;

/// <summary>A piece of sound in two channels of equal length.</summary>
/// <param name="Left">Samples from -1 to 1. Not copied: do not write to them.</param>
/// <param name="Right">Samples from -1 to 1. Not copied: do not write to them.</param>
/// <param name="Rate">Samples a second.</param>
public sealed record StereoSound(float[] Left, float[] Right, int Rate)
{
    /// <summary>Length in seconds.</summary>
    public double Seconds => (double)Left.Length / Rate;

    /// <summary>Writes the sound as a WAV file of 16 bits.</summary>
    public void WriteWav(Stream output)
    {
        const int bytesAFrame = 4;
        int size = Left.Length * bytesAFrame;
        Span<byte> head = stackalloc byte[44];
        "RIFF"u8.CopyTo(head);
        BinaryPrimitives.WriteInt32LittleEndian(head[4..], 36 + size);
        "WAVEfmt "u8.CopyTo(head[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(head[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(head[20..], 1); // plain numbers
        BinaryPrimitives.WriteInt16LittleEndian(head[22..], 2);
        BinaryPrimitives.WriteInt32LittleEndian(head[24..], Rate);
        BinaryPrimitives.WriteInt32LittleEndian(head[28..], Rate * bytesAFrame);
        BinaryPrimitives.WriteInt16LittleEndian(head[32..], bytesAFrame);
        BinaryPrimitives.WriteInt16LittleEndian(head[34..], 16);
        "data"u8.CopyTo(head[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(head[40..], size);
        output.Write(head);

        byte[] block = new byte[bytesAFrame * 4096];
        for (int from = 0; from < Left.Length; from += 4096)
        {
            int frames = Math.Min(4096, Left.Length - from);
            for (int i = 0; i < frames; i++)
            {
                BinaryPrimitives.WriteInt16LittleEndian(block.AsSpan(i * bytesAFrame), Sample(Left[from + i]));
                BinaryPrimitives.WriteInt16LittleEndian(block.AsSpan((i * bytesAFrame) + 2), Sample(Right[from + i]));
            }

            output.Write(block.AsSpan(0, frames * bytesAFrame));
        }

        static short Sample(float value) => (short)MathF.Round(Math.Clamp(value, -1, 1) * short.MaxValue);
    }
}
