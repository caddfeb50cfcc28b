using System.Buffers.Binary;
using NVorbis;
using NVorbis.Contracts;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Decodes Vorbis in Ogg. Source: Xiph.Org, Vorbis I specification. The packets are ours, the decoder is NVorbis; heads that would make it
/// ask for more memory than music needs are refused before it sees them.
/// </summary>
internal sealed class VorbisSource : SoundSource
{
    private const int FramesAtOnce = 4_096;

    private readonly OggReader _ogg;
    private readonly int _firstRate;
    private readonly int _firstChannels;
    private StreamDecoder _decoder;
    private Packets _packets;
    private long _given;
    private float[] _sides;
    private bool _ended;

    /// <summary>Reads the heads.</summary>
    /// <param name="ogg">The packets, the first of a Vorbis stream next.</param>
    /// <exception cref="AudioException">The head is damaged.</exception>
    public VorbisSource(OggReader ogg)
    {
        _ogg = ogg;
        (_decoder, _packets) = Begin();
        _firstRate = _decoder.SampleRate;
        _firstChannels = _decoder.Channels;
        _sides = new float[FramesAtOnce * _firstChannels];
    }

    public override string Format => "Ogg Vorbis";

    public override int Rate => _firstRate;

    public override int Channels => _firstChannels;

    public override int Read(Span<float> mono)
    {
        while (!_ended)
        {
            int channels = _decoder.Channels;
            int wanted = Math.Min(mono.Length, FramesAtOnce) * channels;
            int got;
            try
            {
                got = _decoder.Read(_sides, 0, wanted) / channels;
            }
            catch (Exception trouble) when (trouble is not (AudioException or OperationCanceledException))
            {
                // the decoder raises whatever its arithmetic ran into
                Damaged = true;
                got = 0;
            }

            got = (int)Math.Min(got, Math.Max(0, _packets.End - _given));
            _given += got;
            if (got > 0 && Side != SoundSide.Both && channels == 2)
            {
                int side = Side == SoundSide.Left ? 0 : 1;
                for (int i = 0; i < got; i++)
                {
                    mono[i] = _sides[(2 * i) + side];
                }

                return got;
            }

            if (got > 0)
            {
                for (int i = 0; i < got; i++)
                {
                    float sum = 0;
                    foreach (float side in _sides.AsSpan(i * channels, channels))
                    {
                        sum += side;
                    }

                    mono[i] = sum / channels;
                }

                return got;
            }

            NextOfChain();
        }

        return 0;
    }

    protected override void Release() => _decoder.Dispose();

    private void NextOfChain()
    {
        Damaged |= _ogg.Damaged;
        while (_ogg.Peek() is { IsFirst: false })
        {
            _ogg.Take();
        }

        if (_ogg.Peek() is not OggPacket next)
        {
            CutShort = !_ogg.Closed;
            _ended = true;
            return;
        }

        if (!next.Data.AsSpan().StartsWith("\u0001vorbis"u8))
        {
            CutShort = true;
            _ended = true;
            return;
        }

        _decoder.Dispose();
        try
        {
            (_decoder, _packets) = Begin();
            _given = 0;
        }
        catch (Exception trouble) when (trouble is AudioException or ForeignSoundException)
        {
            CutShort = true;
            _ended = true;
            return;
        }

        if (_decoder.SampleRate != _firstRate)
        {
            // the rest plays at another rate: what follows would be out of time
            CutShort = true;
            _ended = true;
        }

        _sides = new float[FramesAtOnce * _decoder.Channels];
    }

    private (StreamDecoder Decoder, Packets Packets) Begin()
    {
        OggPacket? id = _ogg.Take();
        OggPacket? comments = _ogg.Take();
        OggPacket? setup = _ogg.Take();
        if (id is null || id.Data.Length < 30 || comments is not { IsFirst: false } || setup is not { IsFirst: false })
        {
            throw new AudioException("This Ogg Vorbis file ends inside its head, before any sound.");
        }

        SoundLimits.CheckHead("Ogg Vorbis", BinaryPrimitives.ReadUInt32LittleEndian(id.Data.AsSpan(12)), id.Data[11]);
        if (id.Data[11] > 2)
        {
            // the decoder's answer for more than two channels is noise (measured against two others)
            throw new ForeignSoundException("an Ogg Vorbis file for more than two loudspeakers", "Ogg Vorbis");
        }

        if (comments.Data.AsSpan().StartsWith("\u0003vorbis"u8))
        {
            VorbisComments.Read(comments.Data.AsSpan(7), Tags);
        }

        VorbisSetup.Check(setup.Data);
        try
        {
            Packets packets = new(_ogg, [id, WithoutComments, setup]);
            return (new StreamDecoder(packets) { ClipSamples = false }, packets);
        }
        catch (Exception trouble) when (trouble is not (AudioException or OperationCanceledException))
        {
            throw new AudioException("The head of this Ogg Vorbis file is damaged.", trouble);
        }
    }

    // The decoder needs a packet of comments; ours are read already, and its reader would believe any size.
    private static OggPacket WithoutComments { get; } = new([3, .. "vorbis"u8, 0, 0, 0, 0, 0, 0, 0, 0, 1], false, -1, false, false);

    // The packets of one stream, as the decoder wants them.
    private sealed class Packets(OggReader ogg, OggPacket[] heads) : NVorbis.Contracts.IPacketProvider
    {
        private int _head;

        /// <summary>Samples of the whole stream, as its last page says; no end before that page has come.</summary>
        public long End { get; private set; } = long.MaxValue;

        public bool CanSeek => false;

        public int StreamSerial => 0;

        public IPacket GetNextPacket()
        {
            if (_head < heads.Length)
            {
                return new Packet(heads[_head++]);
            }

            if (ogg.Peek() is not { IsFirst: false })
            {
                return null!;
            }

            OggPacket next = ogg.Take()!;
            if (next.OnLastPage && next.PageGranule >= 0)
            {
                End = next.PageGranule;
            }

            return new Packet(next);
        }

        public IPacket PeekNextPacket()
        {
            OggPacket? next = _head < heads.Length ? heads[_head] : ogg.Peek();
            return next is null || (next.IsFirst && _head >= heads.Length) ? null! : new Packet(next);
        }

        public long SeekTo(long granulePos, int preRoll, GetPacketGranuleCount getPacketGranuleCount) => throw new NotSupportedException();

        public long GetGranuleCount() => throw new NotSupportedException();
    }

    private sealed class Packet : DataPacket
    {
        private readonly byte[] _data;
        private int _at;

        // Without its place: the decoder runs in a circle where the last page ends before its own samples begin. We cut the end ourselves.
        public Packet(OggPacket packet) => _data = packet.Data;

        protected override int TotalBits => 8 * _data.Length;

        protected override int ReadNextByte() => _at < _data.Length ? _data[_at++] : -1;

        public override void Reset()
        {
            _at = 0;
            base.Reset();
        }
    }
}
