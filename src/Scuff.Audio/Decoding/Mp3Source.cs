using System.Buffers.Binary;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Reads MP3 files: finds the frames, and leaves out what browsers leave out, so that a second here is a second there. With a tag of the
/// encoder (its name begins with LAME, Lavc or Lavf) the delay it names and the decoder's 529 samples are cut at the front and the padding
/// at the end; with any other tag, or none, nothing is. Sources: ISO/IEC 11172-3; the Xing and LAME tags as the encoders write them, the
/// VBRI tag of Fraunhofer; what is cut was measured in Chromium.
/// </summary>
internal sealed class Mp3Source : SoundSource
{
    // a decoder begins to answer after so many samples
    private const int DecoderDelay = 529;

    // a first frame may lie behind so many bytes of something else
    private const int FarthestStart = 1 << 18;

    // a frame of free format at most (640 kbit/s at 32 kHz, and some)
    private const int LongestFrame = 4_096;

    private readonly ByteSource _bytes;
    private readonly Mp3Header _first;
    private readonly int _freeBytes;
    private readonly Mp3Decoder _decoder = new();
    private readonly float[] _mono = new float[1152];
    private readonly long _startCut;
    private readonly long? _announced;
    private readonly long _endCutFrom = long.MaxValue;
    private readonly long _endCutTo = long.MaxValue;
    private long _position;
    private int _monoAt;
    private int _monoCount;
    private bool _ended;

    private Mp3Source(ByteSource bytes, Mp3Header first, int freeBytes)
    {
        _bytes = bytes;
        _first = first;
        _freeBytes = freeBytes;
        ReadOnlySpan<byte> frame = bytes.Peek(Size(first));
        Info? info = ReadXing(frame, first);
        if (info is not null || IsVbri(frame))
        {
            bytes.Take(frame.Length);
        }

        if (info is { Frames: long frames })
        {
            _announced = frames * first.Samples;
        }

        if (info is { Delay: int delay, Padding: int padding })
        {
            _startCut = delay + DecoderDelay;
            if (_announced is long all)
            {
                _endCutFrom = Math.Max(0, all - padding + DecoderDelay);
                _endCutTo = all;
            }
        }
    }

    public override string Format => "MP3";

    public override int Rate => _first.Rate;

    public override int Channels => _first.Channels;

    public override SoundSide Side
    {
        get => _decoder.Side;
        set => _decoder.Side = value;
    }

    // A tag may claim anything: only as many frames are believed as there are bytes for, 24 the least frame.
    public override long? Frames => _announced is long all && (_bytes.Left is not long left || all / _first.Samples <= left / 24)
        ? Math.Max(0, Math.Min(all, _endCutFrom) - _startCut)
        : null;

    /// <summary>Looks for the first frame, also behind some bytes of something else; null when there is none.</summary>
    /// <param name="bytes">The file; taken up to the first frame when there is one.</param>
    /// <exception cref="ForeignSoundException">It is MPEG audio of another layer.</exception>
    public static Mp3Source? TryOpen(ByteSource bytes)
    {
        ReadOnlySpan<byte> look = bytes.Peek(FarthestStart + (4 * LongestFrame));
        for (int at = 0; at + 4 <= look.Length && at < FarthestStart; at++)
        {
            int next = look[at..].IndexOf((byte)0xFF);
            if (next < 0)
            {
                return null;
            }

            at += next;
            if (Mp3Header.Read(look[at..]) is not Mp3Header head)
            {
                continue;
            }

            if (head.Layer != 3)
            {
                if (at == 0 && OtherLayerGoesOn(look, head))
                {
                    throw new ForeignSoundException(head.Layer == 2 ? "an MP2 file" : "an MP1 file", head.Layer == 2 ? "MP2" : "MP1");
                }

                continue;
            }

            int free = head.Bits == 0 ? FreeBytes(look[at..], head) : 0;
            if ((head.Bits != 0 || free > 0) && GoesOn(look[at..], head, free, at == 0))
            {
                bytes.Take(at);
                return new Mp3Source(bytes, head, free);
            }
        }

        return null;
    }

    public override int Read(Span<float> mono)
    {
        while (_monoAt == _monoCount)
        {
            if (_ended || !NextFrame())
            {
                _ended = true;
                CutShort |= _announced is long all && _position < all - (2 * _first.Samples);
                if (_bytes.Tail(128) is { Length: 128 } tail)
                {
                    Id3.ReadVersion1(tail, Tags);
                }

                return 0;
            }
        }

        int count = Math.Min(mono.Length, _monoCount - _monoAt);
        _mono.AsSpan(_monoAt, count).CopyTo(mono);
        _monoAt += count;
        return count;
    }

    private int Size(Mp3Header head) => (head.Bits == 0 ? _freeBytes : head.PlainBytes) + head.Padding;

    private bool NextFrame()
    {
        bool lost = false;
        while (true)
        {
            ReadOnlySpan<byte> look = _bytes.Peek(LongestFrame + 8);
            if (look.Length < 4)
            {
                return false;
            }

            if (Mp3Header.Read(look) is Mp3Header head && head.Continues(_first) && Size(head) is int size && size >= 4 + head.SideBytes)
            {
                if (size > look.Length)
                {
                    CutShort = _announced is null && look.Length > 8;
                    return false;
                }

                // after a gap, one head alone may be chance
                if (!lost || look.Length < size + 4 || (Mp3Header.Read(look[size..]) is Mp3Header after && after.Continues(_first)))
                {
                    Damaged |= lost;
                    Decode(head, look[..size]);
                    _bytes.Take(size);
                    return true;
                }
            }
            else if (SkipTag(look))
            {
                continue;
            }

            lost = true;
            int next = look[1..].IndexOf((byte)0xFF);
            _bytes.Take(next < 0 ? look.Length : next + 1);
        }
    }

    private void Decode(Mp3Header head, ReadOnlySpan<byte> frame)
    {
        // a frame that leans on one before the file's first cannot sound: that is no damage
        bool good = _decoder.Decode(head, frame, _mono);
        Damaged |= !good && _position > 2 * head.Samples;
        long begin = _position;
        _position += head.Samples;
        _monoAt = (int)Math.Clamp(_startCut - begin, 0, head.Samples);
        _monoCount = head.Samples;
        if (begin < _endCutTo && _position > _endCutFrom)
        {
            _monoCount = (int)Math.Max(_monoAt, _endCutFrom - begin);
        }
    }

    // Tags between or behind the frames.
    private bool SkipTag(ReadOnlySpan<byte> look)
    {
        if (Id3.BodySize(look) is int size)
        {
            return _bytes.Skip(10L + size) || _bytes.Left == 0;
        }

        if (look.StartsWith("TAG"u8) && _bytes.Left is null or <= 128)
        {
            return _bytes.Skip(Math.Min(128, look.Length));
        }

        if (look.StartsWith("APETAGEX"u8) && look.Length >= 32)
        {
            uint body = BinaryPrimitives.ReadUInt32LittleEndian(look[12..]);
            bool isHead = (look[23] & 0x20) != 0;
            return _bytes.Skip(isHead ? 32L + body : 32) || _bytes.Left == 0;
        }

        return false;
    }

    // Whether at least two more frames follow, or the file ends where one would begin.
    private static bool GoesOn(ReadOnlySpan<byte> look, Mp3Header first, int free, bool atStart)
    {
        int at = 0;
        Mp3Header head = first;
        for (int found = 1; found < 3; found++)
        {
            int size = (head.Bits == 0 ? free : head.PlainBytes) + head.Padding;
            if (size < 4 + head.SideBytes)
            {
                return false;
            }

            at += size;
            if (at + 4 > look.Length)
            {
                return at <= look.Length + LongestFrame && (found > 1 || (atStart && at <= look.Length));
            }

            if (Mp3Header.Read(look[at..]) is not Mp3Header next || !next.Continues(first))
            {
                return found > 1 && (look[at..].StartsWith("TAG"u8) || look[at..].StartsWith("APETAGEX"u8));
            }

            head = next;
        }

        return true;
    }

    // Bytes of a frame of free format without padding: the way to the next head of the same kind, if the one after is as far.
    private static int FreeBytes(ReadOnlySpan<byte> look, Mp3Header first)
    {
        for (int size = 24; size < LongestFrame && size + 4 <= look.Length; size++)
        {
            if (Same(look, size, first) is not Mp3Header second)
            {
                continue;
            }

            int plain = size - first.Padding;
            if (Same(look, size + plain + second.Padding, first) is not null)
            {
                return plain;
            }
        }

        return 0;
    }

    private static Mp3Header? Same(ReadOnlySpan<byte> look, int at, Mp3Header first)
        => at + 4 <= look.Length && Mp3Header.Read(look[at..]) is Mp3Header head && head.Continues(first) ? head : null;

    // Layers I and II have frames of other sizes; a second head where layer II has it is enough to name the kind.
    private static bool OtherLayerGoesOn(ReadOnlySpan<byte> look, Mp3Header head)
    {
        for (int at = 24; at < LongestFrame && at + 4 <= look.Length; at++)
        {
            if (Mp3Header.Read(look[at..]) is Mp3Header next && next.Continues(head) && Mp3Header.Read(look[Math.Min(look.Length, 2 * at)..]) is Mp3Header third
                && third.Continues(head))
            {
                return true;
            }
        }

        return false;
    }

    private sealed record Info(long? Frames, int? Delay, int? Padding);

    private static Info? ReadXing(ReadOnlySpan<byte> frame, Mp3Header head)
    {
        int at = 4 + head.SideBytes;
        if (head.HasCrc && frame.Length > at + 6 && !IsXing(frame[at..]))
        {
            at += 2;
        }

        if (frame.Length < at + 8 || !IsXing(frame[at..]))
        {
            return null;
        }

        uint flags = BinaryPrimitives.ReadUInt32BigEndian(frame[(at + 4)..]);
        int next = at + 8;
        long? frames = null;
        if ((flags & 1) != 0 && frame.Length >= next + 4)
        {
            frames = BinaryPrimitives.ReadUInt32BigEndian(frame[next..]);
            frames = frames == 0 ? null : frames;
        }

        next += ((flags & 1) != 0 ? 4 : 0) + ((flags & 2) != 0 ? 4 : 0) + ((flags & 4) != 0 ? 100 : 0) + ((flags & 8) != 0 ? 4 : 0);
        if (frame.Length < next + 24)
        {
            return new Info(frames, null, null);
        }

        ReadOnlySpan<byte> encoder = frame.Slice(next, 4);
        if (!encoder.SequenceEqual("LAME"u8) && !encoder.SequenceEqual("Lavc"u8) && !encoder.SequenceEqual("Lavf"u8))
        {
            return new Info(frames, null, null);
        }

        int both = (frame[next + 21] << 16) | (frame[next + 22] << 8) | frame[next + 23];
        return new Info(frames, both >> 12, both & 4095);
    }

    private static bool IsXing(ReadOnlySpan<byte> b) => b.StartsWith("Xing"u8) || b.StartsWith("Info"u8);

    private static bool IsVbri(ReadOnlySpan<byte> frame) => frame.Length >= 40 && frame[36..].StartsWith("VBRI"u8);
}
