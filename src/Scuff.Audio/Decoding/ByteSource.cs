namespace Scuff.Audio.Decoding;

/// <summary>The bytes of a file from front to back, with a look ahead. Needs no seeking; where the stream can seek, its length is known.</summary>
internal sealed class ByteSource
{
    /// <summary>The farthest look ahead, in bytes; asking for more gives no more.</summary>
    public const int FarthestLook = 1 << 24;

    private readonly Stream _stream;
    private readonly CancellationToken _cancel;
    private readonly long _origin;
    private byte[] _buffer = new byte[1 << 16];
    private int _start;
    private int _end;
    private bool _atEnd;

    public ByteSource(Stream stream, CancellationToken cancel)
    {
        _stream = stream;
        _cancel = cancel;
        if (stream.CanSeek)
        {
            _origin = stream.Position;
            Length = Math.Max(0, stream.Length - _origin);
        }
    }

    /// <summary>Bytes taken so far.</summary>
    public long Position { get; private set; }

    /// <summary>All bytes there are; null for a stream that cannot tell.</summary>
    public long? Length { get; }

    /// <summary>Bytes not yet taken; null for a stream that cannot tell.</summary>
    public long? Left => Length - Position;

    /// <summary>The next bytes without taking them: as many as asked for, or fewer at the end. Valid until the next call.</summary>
    public ReadOnlySpan<byte> Peek(int count)
    {
        int wanted = Math.Min(count, FarthestLook);
        while (_end - _start < wanted && !_atEnd)
        {
            Fill(wanted);
        }

        return _buffer.AsSpan(_start, Math.Min(wanted, _end - _start));
    }

    /// <summary>Takes bytes that were looked at; at most as many as the last look gave.</summary>
    public void Take(int count)
    {
        _start += Math.Min(count, _end - _start);
        Position += count;
    }

    /// <summary>Leaves bytes out; false when the file ends before.</summary>
    public bool Skip(long count)
    {
        if (count < 0)
        {
            return false;
        }

        int held = (int)Math.Min(count, _end - _start);
        Take(held);
        long left = count - held;
        if (left > 0 && Length is long length)
        {
            long there = Math.Min(left, Math.Max(0, length - Position));
            _stream.Seek(there, SeekOrigin.Current);
            Position += there;
            return there == left;
        }

        while (left > 0)
        {
            int some = Peek((int)Math.Min(left, 1 << 16)).Length;
            if (some == 0)
            {
                return false;
            }

            Take(some);
            left -= some;
        }

        return true;
    }

    /// <summary>Takes bytes into a place of the caller's; gives how many there were, fewer than its length only at the end.</summary>
    public int Read(Span<byte> into)
    {
        int done = 0;
        while (done < into.Length)
        {
            ReadOnlySpan<byte> next = Peek(Math.Min(into.Length - done, 1 << 16));
            if (next.IsEmpty)
            {
                break;
            }

            next.CopyTo(into[done..]);
            Take(next.Length);
            done += next.Length;
        }

        return done;
    }

    /// <summary>The last bytes of the whole file, leaving the place as it is; none where the stream cannot seek or is shorter.</summary>
    public byte[] Tail(int count)
    {
        if (Length is not long length || length < count)
        {
            return [];
        }

        long here = _stream.Position;
        byte[] tail = new byte[count];
        _stream.Position = _origin + length - count;
        int got = _stream.ReadAtLeast(tail, count, throwOnEndOfStream: false);
        _stream.Position = here;
        return got == count ? tail : [];
    }

    private void Fill(int wanted)
    {
        _cancel.ThrowIfCancellationRequested();
        if (_start > 0)
        {
            _buffer.AsSpan(_start, _end - _start).CopyTo(_buffer);
            _end -= _start;
            _start = 0;
        }

        if (_buffer.Length < wanted)
        {
            // by doubling, so that a size which only a header claims costs nothing
            Array.Resize(ref _buffer, Math.Min(Math.Max(_buffer.Length * 2, 1 << 16), FarthestLook));
        }

        int got = _stream.Read(_buffer, _end, _buffer.Length - _end);
        _end += got;
        _atEnd = got == 0;
    }
}
