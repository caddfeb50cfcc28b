using System.Buffers.Binary;
using System.Text;

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
    /// <param name="output">Where to.</param>
    /// <param name="title">What it is called; empty for nothing.</param>
    /// <param name="artist">Who plays it; empty for nothing.</param>
    public void WriteWav(Stream output, string title = "", string artist = "")
    {
        const int bytesAFrame = 4;
        byte[] info = InfoOf(("INAM", title), ("IART", artist));
        int size = Left.Length * bytesAFrame;
        Span<byte> head = stackalloc byte[44];
        "RIFF"u8.CopyTo(head);
        BinaryPrimitives.WriteInt32LittleEndian(head[4..], 36 + size + info.Length);
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

        output.Write(info);

        static short Sample(float value) => (short)MathF.Round(Math.Clamp(value, -1, 1) * short.MaxValue);
    }

    // A chunk of facts about the sound, as the Multimedia Programming Interface and Data Specifications 1.0 (1991) have it.
    private static byte[] InfoOf(params ReadOnlySpan<(string Name, string Words)> facts)
    {
        using MemoryStream body = new();
        Span<byte> number = stackalloc byte[4];
        foreach ((string name, string words) in facts)
        {
            if (words.Length > 0)
            {
                byte[] text = [.. Encoding.UTF8.GetBytes(words), 0];
                BinaryPrimitives.WriteInt32LittleEndian(number, text.Length);
                body.Write(Encoding.ASCII.GetBytes(name));
                body.Write(number);
                body.Write(text);
                if (text.Length % 2 == 1)
                {
                    body.WriteByte(0);
                }
            }
        }

        if (body.Length == 0)
        {
            return [];
        }

        BinaryPrimitives.WriteInt32LittleEndian(number, (int)body.Length + 4);
        return [.. "LIST"u8, .. number, .. "INFO"u8, .. body.ToArray()];
    }
}
