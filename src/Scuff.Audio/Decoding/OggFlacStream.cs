namespace Scuff.Audio.Decoding;

/// <summary>The packets of an Ogg FLAC stream as the plain FLAC file they were made from. Source: RFC 9639, section 10.1.</summary>
internal sealed class OggFlacStream(OggReader ogg) : Stream
{
    // 0x7F, FLAC, version, number of header packets: then a plain file begins
    private const int MappingHead = 9;

    private byte[] _packet = [];
    private int _at;
    private bool _begun;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(Span<byte> buffer)
    {
        while (_at >= _packet.Length)
        {
            // the next of a chain has its own head, which a plain file cannot have
            if (ogg.Peek() is not OggPacket next || (_begun && next.IsFirst))
            {
                return 0;
            }

            ogg.Take();
            _packet = next.Data;
            _at = _begun ? 0 : MappingHead;
            _begun = true;
        }

        int count = Math.Min(buffer.Length, _packet.Length - _at);
        _packet.AsSpan(_at, count).CopyTo(buffer);
        _at += count;
        return count;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
