namespace Scuff.Audio.Decoding;

/// <summary>Finds out what kind of sound file some bytes are, and opens it.</summary>
internal static class SoundKind
{
    // more tags than these, one behind the other, are a trap
    private const int MostTags = 8;

    /// <summary>Opens a file at its first byte.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="tags">Takes what tags before the sound say.</param>
    /// <param name="cancel">Ends the reading early.</param>
    /// <exception cref="AudioException">It is empty or damaged.</exception>
    /// <exception cref="ForeignSoundException">It is of a kind that is not decoded here; with an empty name, of a kind that is not known.</exception>
    public static SoundSource Open(ByteSource bytes, TagCollector tags, CancellationToken cancel)
    {
        if (bytes.Peek(1).IsEmpty)
        {
            throw new AudioException("The file is empty.");
        }

        SkipTags(bytes, tags);
        ReadOnlySpan<byte> head = bytes.Peek(64);
        if (head.Length >= 12)
        {
            ReadOnlySpan<byte> form = head.Slice(8, 4);
            if ((head.StartsWith("RIFF"u8) || head.StartsWith("RIFX"u8) || head.StartsWith("RF64"u8) || head.StartsWith("BW64"u8)) && form.SequenceEqual("WAVE"u8))
            {
                return WavReader.Open(bytes);
            }

            if (head.StartsWith("FORM"u8) && (form.SequenceEqual("AIFF"u8) || form.SequenceEqual("AIFC"u8)))
            {
                return AiffReader.Open(bytes);
            }
        }

        if (head.StartsWith("fLaC"u8))
        {
            return new FlacSource(bytes);
        }

        if (head.StartsWith("OggS"u8))
        {
            return OggSound.Open(bytes, cancel);
        }

        if (NameOf(head) is (string kind, string name))
        {
            throw new ForeignSoundException(kind, name);
        }

        return (SoundSource?)Mp3Source.TryOpen(bytes) ?? throw new ForeignSoundException("", "");
    }

    // ID3 stands before MP3, and some programs put it before anything.
    private static void SkipTags(ByteSource bytes, TagCollector tags)
    {
        for (int i = 0; i < MostTags && Id3.BodySize(bytes.Peek(10)) is int size; i++)
        {
            long whole = 10L + size;
            if (bytes.Left is long left && whole > left)
            {
                // a size beyond the file: only the head can be believed
                bytes.Take(10);
                return;
            }

            if (whole <= Id3.LongestTag)
            {
                Id3.Read(bytes.Peek((int)whole), tags);
            }

            bytes.Skip(whole);
        }
    }

    // Kinds that ffmpeg knows, by the bytes they begin with: the sentence should name them where it is absent.
    private static (string Kind, string Name)? NameOf(ReadOnlySpan<byte> h)
    {
        if (h.Length >= 12 && h[4..].StartsWith("ftyp"u8))
        {
            return ("an M4A file", "M4A");
        }

        if (h.Length >= 7 && h[0] == 0xFF && (h[1] & 0xF6) == 0xF0)
        {
            return ("an AAC file", "AAC");
        }

        return h switch
        {
            [0x30, 0x26, 0xB2, 0x75, 0x8E, 0x66, 0xCF, 0x11, ..] => ("a WMA file", "WMA"),
            [0x1A, 0x45, 0xDF, 0xA3, ..] => ("a WebM or Matroska file", "WebM"),
            [(byte)'M', (byte)'A', (byte)'C', (byte)' ', ..] => ("a Monkey's Audio file", "Monkey's Audio"),
            [(byte)'w', (byte)'v', (byte)'p', (byte)'k', ..] => ("a WavPack file", "WavPack"),
            [(byte)'c', (byte)'a', (byte)'f', (byte)'f', ..] => ("a CAF file", "CAF"),
            [(byte)'T', (byte)'T', (byte)'A', (byte)'1', ..] => ("a TTA file", "TTA"),
            [(byte)'#', (byte)'!', (byte)'A', (byte)'M', (byte)'R', ..] => ("an AMR file", "AMR"),
            [(byte)'.', (byte)'s', (byte)'n', (byte)'d', ..] => ("an AU file", "AU"),
            [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, _, _, _, _, ..] => ("an AVI or other RIFF file", "RIFF"),
            _ => null,
        };
    }
}
