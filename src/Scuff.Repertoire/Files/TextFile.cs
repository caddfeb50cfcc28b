namespace Scuff.Repertoire.Files;

/// <summary>A file read as a text, or the sentence that says why it was not.</summary>
/// <param name="Text">The text; empty when there is a trouble.</param>
/// <param name="Form">How it was written.</param>
/// <param name="Bytes">Its bytes; empty when they were not read.</param>
/// <param name="Trouble">One sentence, or null when it was read.</param>
public sealed record TextFile(string Text, TextForm Form, ReadOnlyMemory<byte> Bytes, string? Trouble)
{
    /// <summary>Larger files are refused unread. A 10,000-line text is well below a tenth of it.</summary>
    public const int LargestBytes = 10 * 1024 * 1024;

    /// <summary>The ending of a file that holds a dance.</summary>
    public const string DanceEnding = ".dance";

    /// <summary>Reads a file. Never throws for a trouble of the world: it is told in the answer.</summary>
    /// <param name="name">The file as a sentence about it calls it.</param>
    /// <param name="path">Its full path.</param>
    public static TextFile Read(string name, string path)
        // a stream without a buffer of its own: the whole file is read at once
        => Read(name, () => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0));

    /// <summary>Reads what a stream holds. Never throws for a trouble of the world: it is told in the answer.</summary>
    /// <param name="name">The text as a sentence about it calls it.</param>
    /// <param name="open">Opens the stream.</param>
    public static TextFile Read(string name, Func<Stream> open)
    {
        try
        {
            using Stream stream = open();
            if (stream.CanSeek && stream.Length > LargestBytes)
            {
                return Refused($"{name} is {Megabytes(stream.Length)} MB; a dance is a short text, so a file above {Megabytes(LargestBytes)} MB is not read.");
            }

            byte[] buffer = new byte[stream.CanSeek ? (int)Math.Max(stream.Length, 1) + 1 : 16 * 1024];
            int length = 0;
            while (true)
            {
                int read = stream.Read(buffer, length, buffer.Length - length);
                if (read == 0)
                {
                    break;
                }

                length += read;
                if (length > LargestBytes)
                {
                    return Refused($"{name} is above {Megabytes(LargestBytes)} MB; a dance is a short text, so it is not read.");
                }

                if (length == buffer.Length)
                {
                    Array.Resize(ref buffer, buffer.Length * 2);
                }
            }

            DecodedText decoded = TextDecoding.Decode(buffer.AsSpan(0, length));
            return decoded switch
            {
                { Trouble: { } trouble } => Refused($"{name} {trouble}."),
                _ when string.IsNullOrWhiteSpace(decoded.Text) => Refused($"{name} is empty: there is no dance in it."),
                _ => new TextFile(decoded.Text, decoded.Form, buffer.AsMemory(0, length), null),
            };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(FileWords.NotRead(name, e));
        }
    }

    private static TextFile Refused(string trouble) => new("", TextForm.Utf8, default, trouble);

    private static long Megabytes(long bytes) => bytes / (1024 * 1024);
}
