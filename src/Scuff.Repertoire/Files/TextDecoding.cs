using System.Text;

namespace Scuff.Repertoire.Files;

/// <summary>Finds out how a file wrote its characters and reads it, or says in words why it is no text.</summary>
public static class TextDecoding
{
    private const string Binary = "is not a text (it holds zero bytes, as pictures, sound and programs do)";
    private const string Damaged = "begins like a UTF-16 text but is damaged after that";

    // Windows-1252 for the bytes 0x80 to 0x9F, from the Unicode Consortium's mapping table CP1252.TXT; the rest
    // equals Latin-1. A zero stands for the five bytes that mean nothing.
    private static readonly char[] Upper =
    [
        '\u20AC', '\0', '\u201A', '\u0192', '\u201E', '\u2026', '\u2020', '\u2021',
        '\u02C6', '\u2030', '\u0160', '\u2039', '\u0152', '\0', '\u017D', '\0',
        '\0', '\u2018', '\u2019', '\u201C', '\u201D', '\u2022', '\u2013', '\u2014',
        '\u02DC', '\u2122', '\u0161', '\u203A', '\u0153', '\0', '\u017E', '\u0178',
    ];

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads the bytes; never throws.</summary>
    public static DecodedText Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Utf16(bytes);
        }

        bool hasMark = bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]);
        ReadOnlySpan<byte> body = hasMark ? bytes[3..] : bytes;
        if (body.Contains((byte)0))
        {
            return new DecodedText("", TextForm.Utf8, Binary);
        }

        try
        {
            return new DecodedText(StrictUtf8.GetString(body), hasMark ? TextForm.Utf8WithMark : TextForm.Utf8);
        }
        catch (DecoderFallbackException)
        {
            return Windows1252(body);
        }
    }

    private static DecodedText Utf16(ReadOnlySpan<byte> bytes)
    {
        UnicodeEncoding strict = new(bigEndian: bytes[0] == 0xFE, byteOrderMark: false, throwOnInvalidBytes: true);
        try
        {
            string text = strict.GetString(bytes[2..]);
            return text.Contains('\0', StringComparison.Ordinal)
                ? new DecodedText("", TextForm.Utf16, Binary)
                : new DecodedText(text, TextForm.Utf16);
        }
        catch (DecoderFallbackException)
        {
            return new DecodedText("", TextForm.Utf16, Damaged);
        }
    }

    private static DecodedText Windows1252(ReadOnlySpan<byte> bytes)
    {
        StringBuilder text = new(bytes.Length);
        foreach (byte b in bytes)
        {
            char c = b is >= 0x80 and <= 0x9F ? Upper[b - 0x80] : (char)b;
            if (c == '\0')
            {
                return new DecodedText("", TextForm.Windows1252, "is neither UTF-8 nor any other form of text that Scuff reads; save it as UTF-8");
            }

            text.Append(c);
        }

        return new DecodedText(text.ToString(), TextForm.Windows1252);
    }
}
