namespace Scuff.Audio.Decoding;

/// <summary>Plain samples out of a container that is read chunk by chunk: what WAV and AIFF share.</summary>
/// <param name="format">Kind of file in words.</param>
/// <param name="bytes">The file, at the first sample.</param>
/// <param name="layout">How the samples lie.</param>
/// <param name="rate">Samples a second and channel.</param>
/// <param name="dataBytes">Bytes of samples; null when they go on to the end of the file.</param>
/// <param name="readRest">Reads the chunks after the samples into the tags, given the bytes to leave out first.</param>
internal sealed class PcmSource(string format, ByteSource bytes, PcmLayout layout, int rate, long? dataBytes, Action<long, TagCollector> readRest) : SoundSource
{
    private long _left = dataBytes ?? long.MaxValue;
    private bool _ended;

    public override string Format => format;

    public override int Rate => rate;

    public override int Channels => layout.Channels;

    public override long? Frames
    {
        get
        {
            long? all = bytes.Left is long there ? Math.Min(there, dataBytes ?? there) : dataBytes;
            return all / layout.FrameBytes;
        }
    }

    public override int Read(Span<float> mono)
    {
        int frames = (int)Math.Min(Math.Min(mono.Length, Math.Max(1, (1 << 16) / layout.FrameBytes)), _left / layout.FrameBytes);
        if (_ended || frames == 0)
        {
            End();
            return 0;
        }

        ReadOnlySpan<byte> next = bytes.Peek(frames * layout.FrameBytes);
        int got = next.Length / layout.FrameBytes;
        if (got < frames)
        {
            CutShort = dataBytes is not null;
        }

        if (got == 0)
        {
            End();
            return 0;
        }

        layout.ToMono(next[..(got * layout.FrameBytes)], mono[..got], Side);
        bytes.Take(got * layout.FrameBytes);
        _left -= got * layout.FrameBytes;
        return got;
    }

    private void End()
    {
        if (!_ended && dataBytes is not null && !CutShort)
        {
            readRest(_left, Tags);
        }

        _ended = true;
    }
}
