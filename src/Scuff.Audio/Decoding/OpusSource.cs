using System.Buffers.Binary;
using Concentus;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Decodes Opus in Ogg. Source: RFC 7845 (2016): pre-skip, end trimming, output gain, channel mapping families 0 and 1 (and 255, whose
/// channels have no places). Packets are decoded by Concentus; one that it cannot decode becomes silence of its length.
/// </summary>
internal sealed class OpusSource : SoundSource
{
    /// <summary>Opus always plays at this rate, whatever was recorded.</summary>
    private const int PlayedRate = 48_000;

    // 120 ms, the longest packet
    private const int LongestPacket = 5_760;

    private readonly OggReader _ogg;
    private readonly int _firstChannels;
    private Head _head;
    private IOpusDecoder? _plain;
    private IOpusMultiStreamDecoder? _multi;
    private float[] _sides = [];
    private readonly float[] _mono = new float[LongestPacket];
    private int _monoAt;
    private int _monoCount;
    private long _decoded;
    private long _start = -1;
    private int _skip;

    /// <summary>Reads the head.</summary>
    /// <param name="ogg">The packets, the first of an Opus stream next.</param>
    /// <exception cref="AudioException">The head is damaged.</exception>
    public OpusSource(OggReader ogg)
    {
        _ogg = ogg;
        _head = Begin(ogg.Take()!);
        _firstChannels = _head.Channels;
    }

    public override string Format => "Ogg Opus";

    public override int Rate => PlayedRate;

    public override int Channels => _firstChannels;

    public override int Read(Span<float> mono)
    {
        while (_monoAt == _monoCount)
        {
            if (_ogg.Take() is not OggPacket packet)
            {
                CutShort = !_ogg.Closed;
                Damaged |= _ogg.Damaged;
                return 0;
            }

            if (!packet.IsFirst)
            {
                Decode(packet);
            }
            else if (packet.Data.AsSpan().StartsWith("OpusHead"u8))
            {
                try
                {
                    _head = Begin(packet);
                }
                catch (Exception trouble) when (trouble is AudioException or ForeignSoundException)
                {
                    // the next of a chain cannot be read; what sounded so far stays
                    CutShort = true;
                    return 0;
                }
            }
            else
            {
                // another codec further down the chain
                CutShort = true;
                return 0;
            }
        }

        int count = Math.Min(mono.Length, _monoCount - _monoAt);
        _mono.AsSpan(_monoAt, count).CopyTo(mono);
        _monoAt += count;
        return count;
    }

    private sealed record Head(int Channels, float Scale);

    // Section 5.1 for the head, 5.2 for the comments behind it.
    private Head Begin(OggPacket packet)
    {
        ReadOnlySpan<byte> h = packet.Data;
        if (h.Length < 19 || h[8] >= 16 || h[9] == 0)
        {
            throw new AudioException("The head of this Ogg Opus file is damaged.");
        }

        int channels = h[9];
        int family = h[18];
        _skip = BinaryPrimitives.ReadUInt16LittleEndian(h[10..]);
        int gain = BinaryPrimitives.ReadInt16LittleEndian(h[16..]);
        _plain = null;
        _multi = null;
        _decoded = 0;
        _start = -1;
        try
        {
            if (family == 0 && channels <= 2)
            {
                _plain = Factory.CreateDecoder(PlayedRate, channels);
            }
            else if (family is 1 or 255 && (family == 255 || channels <= 8) && h.Length >= 21 + channels)
            {
                int streams = h[19];
                int coupled = h[20];
                byte[] mapping = h.Slice(21, channels).ToArray();
                if (streams == 0 || coupled > streams || streams + coupled > 255 || mapping.Any(m => m != 255 && m >= streams + coupled))
                {
                    throw new AudioException("The head of this Ogg Opus file is damaged: it names streams that it does not have.");
                }

                SoundLimits.CheckHead("Ogg Opus", PlayedRate, channels);
                _multi = Factory.CreateMultiStreamDecoder(PlayedRate, channels, streams, coupled, mapping);
            }
            else
            {
                throw new ForeignSoundException("an Ogg Opus file for loudspeakers all around", "Ogg Opus");
            }
        }
        catch (Exception trouble) when (trouble is not (AudioException or ForeignSoundException or OperationCanceledException))
        {
            throw new AudioException("The head of this Ogg Opus file is damaged.", trouble);
        }

        if (_ogg.Peek() is { IsFirst: false } comments && comments.Data.AsSpan().StartsWith("OpusTags"u8))
        {
            VorbisComments.Read(comments.Data.AsSpan(8), Tags);
            _ogg.Take();
        }

        _sides = new float[LongestPacket * channels];
        return new Head(channels, (float)(Math.Pow(10, gain / 5120.0) / channels));
    }

    private static ManagedCodecs Factory { get; } = new();

    private void Decode(OggPacket packet)
    {
        int length = Duration(packet.Data);
        int count = 0;
        if (length > 0)
        {
            try
            {
                count = _plain?.Decode(packet.Data, _sides, LongestPacket, false)
                    ?? _multi!.DecodeMultistream(packet.Data, _sides, LongestPacket, false);
            }
            catch (Exception trouble) when (trouble is not OperationCanceledException)
            {
                // the decoder raises whatever its arithmetic ran into
                count = 0;
            }
        }

        int channels = _head.Channels;
        _monoAt = 0;
        if (count <= 0 || count > LongestPacket)
        {
            Damaged |= packet.Data.Length > 0;
            count = length;
            _mono.AsSpan(0, count).Clear();
        }
        else if (Side != SoundSide.Both && channels == 2)
        {
            int side = Side == SoundSide.Left ? 0 : 1;
            for (int i = 0; i < count; i++)
            {
                // the scale is that of a mean
                _mono[i] = _sides[(2 * i) + side] * 2 * _head.Scale;
            }
        }
        else
        {
            for (int i = 0; i < count; i++)
            {
                float sum = 0;
                foreach (float side in _sides.AsSpan(i * channels, channels))
                {
                    sum += side;
                }

                _mono[i] = sum * _head.Scale;
            }
        }

        _monoCount = count;
        long before = _decoded;
        _decoded += count;

        // Section 4.3: a stream cut out of a longer one begins at a later place.
        if (_start < 0 && packet.EndsPage && packet.PageGranule >= 0)
        {
            _start = packet.OnLastPage ? 0 : Math.Max(0, packet.PageGranule - _decoded);
        }

        // Section 4.4: the last page may end before its last packet does.
        if (packet.OnLastPage && packet.PageGranule >= 0)
        {
            long end = packet.PageGranule - Math.Max(0, _start);
            _monoCount = (int)Math.Clamp(end - before, 0, count);
        }

        int skipped = Math.Min(_skip, _monoCount);
        _skip -= skipped;
        _monoAt = skipped;
    }

    // RFC 6716, section 3.1: the first byte says how long a frame is and how many there are. 0 for what cannot be a packet.
    private static int Duration(ReadOnlySpan<byte> packet)
    {
        if (packet.IsEmpty)
        {
            return 0;
        }

        int config = packet[0] >> 3;
        int frame = config switch
        {
            < 12 => (config & 3) == 3 ? 2880 : 480 << (config & 3),
            < 16 => 480 << (config & 1),
            _ => 120 << (config & 3),
        };
        int frames = (packet[0] & 3) switch { 0 => 1, 3 => packet.Length > 1 ? packet[1] & 63 : 0, _ => 2 };
        return frame * frames <= LongestPacket ? frame * frames : 0;
    }

    // The switch is a static of the package; it must be off before the first decoder, or a codec of the machine would answer instead.
    private sealed class ManagedCodecs
    {
        public ManagedCodecs() => OpusCodecFactory.AttemptToUseNativeLibrary = false;

        public IOpusDecoder CreateDecoder(int rate, int channels) => OpusCodecFactory.CreateDecoder(rate, channels, null);

        public IOpusMultiStreamDecoder CreateMultiStreamDecoder(int rate, int channels, int streams, int coupled, byte[] mapping)
            => OpusCodecFactory.CreateMultiStreamDecoder(rate, channels, streams, coupled, mapping, null);
    }
}
