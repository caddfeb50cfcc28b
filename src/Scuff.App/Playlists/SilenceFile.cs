using System.Buffers.Binary;
using System.Globalization;

namespace Scuff.App.Playlists;

/// <summary>
/// Silence as a sound file: WAV, 8 bits, one channel, which every player takes. Source of the form: IBM and Microsoft, Multimedia Programming Interface and Data
/// Specifications 1.0, 1991, chapter 3 (8-bit samples are unsigned, silence is 128).
/// </summary>
internal static class SilenceFile
{
    /// <summary>Samples a second; those of most music, so that no player has to switch.</summary>
    public const int UsualRate = 44_100;

    /// <summary>Samples a second of a long silence (a lesson, a rest), where a file five times as large would help nobody.</summary>
    public const int LongRate = 8_000;

    /// <summary>Longer silences have <see cref="LongRate"/>.</summary>
    public const int LongestOfUsualRate = 180;

    private const int HeadBytes = 44;
    private const byte Silence = 128;

    /// <summary>The name of the file of a length: <c>silence 40 s.wav</c>.</summary>
    public static string NameOf(int seconds) => string.Create(CultureInfo.InvariantCulture, $"silence {seconds} s.wav");

    /// <summary>Writes silence of exactly so many seconds.</summary>
    /// <param name="stream">Where it goes; not closed.</param>
    /// <param name="seconds">How long; from 1 to a day.</param>
    /// <param name="cancel">Ends it early.</param>
    public static async Task WriteAsync(Stream stream, int seconds, CancellationToken cancel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(seconds, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(seconds, 24 * 60 * 60);
        int rate = seconds > LongestOfUsualRate ? LongRate : UsualRate;

        // both rates are even, so no byte has to be put behind the samples
        int samples = seconds * rate;
        byte[] head = new byte[HeadBytes];
        "RIFF"u8.CopyTo(head);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(4), HeadBytes - 8 + samples);
        "WAVEfmt "u8.CopyTo(head.AsSpan(8));
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(16), 16);
        BinaryPrimitives.WriteInt16LittleEndian(head.AsSpan(20), 1);
        BinaryPrimitives.WriteInt16LittleEndian(head.AsSpan(22), 1);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(24), rate);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(28), rate);
        BinaryPrimitives.WriteInt16LittleEndian(head.AsSpan(32), 1);
        BinaryPrimitives.WriteInt16LittleEndian(head.AsSpan(34), 8);
        "data"u8.CopyTo(head.AsSpan(36));
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(40), samples);
        await stream.WriteAsync(head, cancel);
        byte[] second = new byte[rate];
        Array.Fill(second, Silence);
        for (int i = 0; i < seconds; i++)
        {
            await stream.WriteAsync(second, cancel);
        }
    }
}
