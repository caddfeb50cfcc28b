using System.Text;
using Concentus;
using Concentus.Enums;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;

namespace Scuff.Audio.Voices;

/// <summary>
/// Many clips of speech in one file: their words and lengths, then their sound in Opus packets of 20 ms (RFC 6716). Little-endian: the mark, samples a
/// second, samples to leave out at the start of each clip, clips; of each clip its words, samples, packets and their lengths; then all packets.
/// </summary>
public sealed class VoicePack
{
    private const int Rate = 16_000;
    private const int Frame = Rate / 50;
    private const int BitsASecond = 18_000;

    // silence before each clip, in which the coder warms up
    private const int Lead = Frame / 2;
    private const int LongestPacket = 255;
    private const int MostClips = 100_000;

    private static readonly byte[] Mark = Encoding.ASCII.GetBytes("SCUFFVO1");

    private readonly byte[] _bytes;
    private readonly int _rate;
    private readonly int _skip;
    private readonly Dictionary<string, Clip> _clips;

    private VoicePack(byte[] bytes, int rate, int skip, Dictionary<string, Clip> clips) => (_bytes, _rate, _skip, _clips) = (bytes, rate, skip, clips);

    /// <summary>The words of all clips.</summary>
    public IEnumerable<string> Words => _clips.Keys;

    /// <summary>Packs clips.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="clips">Words with a recording of them; silence around them is cut, their level evened.</param>
    /// <exception cref="ArgumentException">A recording has no sound in it.</exception>
    public static void Write(Stream output, IEnumerable<(string Words, MonoAudio Recording)> clips)
    {
        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        List<(string Words, int Samples, List<byte[]> Packets)> packed = [];
        int skip = 0;
        foreach ((string words, MonoAudio recording) in clips)
        {
            MonoAudio trimmed = VoiceTrim.Of(recording with { Samples = Resampler.Convert(recording.Samples, recording.Rate, Rate), Rate = Rate })
                ?? throw new ArgumentException($"There is no sound in the recording of \"{words}\".", nameof(clips));
            using IOpusEncoder encoder = OpusCodecFactory.CreateEncoder(Rate, 1, OpusApplication.OPUS_APPLICATION_VOIP, null);
            encoder.Bitrate = BitsASecond;
            encoder.Complexity = 10;
            encoder.UseVBR = true;
            skip = Lead + encoder.Lookahead;
            int frames = (skip + trimmed.Samples.Length + Frame - 1) / Frame;
            float[] whole = new float[frames * Frame];
            trimmed.Samples.CopyTo(whole, Lead);
            List<byte[]> packets = [];
            byte[] packet = new byte[LongestPacket];
            for (int i = 0; i < frames; i++)
            {
                int bytes = encoder.Encode(whole.AsSpan(i * Frame, Frame), Frame, packet, packet.Length);
                packets.Add(packet[..bytes]);
            }

            packed.Add((words, trimmed.Samples.Length, packets));
        }

        using BinaryWriter writer = new(output, Encoding.UTF8, leaveOpen: true);
        writer.Write(Mark);
        writer.Write(Rate);
        writer.Write(skip);
        writer.Write(packed.Count);
        foreach ((string words, int samples, List<byte[]> packets) in packed)
        {
            writer.Write(words);
            writer.Write(samples);
            writer.Write((ushort)packets.Count);
            foreach (byte[] packet in packets)
            {
                writer.Write((byte)packet.Length);
            }
        }

        foreach (byte[] packet in packed.SelectMany(p => p.Packets))
        {
            writer.Write(packet);
        }
    }

    /// <summary>Reads a pack; the sound of a clip is decoded when it is asked for.</summary>
    /// <exception cref="AudioException">The bytes are no pack, or end early.</exception>
    public static VoicePack Read(byte[] bytes)
    {
        try
        {
            using BinaryReader reader = new(new MemoryStream(bytes), Encoding.UTF8);
            if (!reader.ReadBytes(Mark.Length).AsSpan().SequenceEqual(Mark))
            {
                throw new AudioException("This is no pack of spoken words.");
            }

            int rate = reader.ReadInt32();
            int skip = reader.ReadInt32();
            int count = reader.ReadInt32();
            if (rate is not (8_000 or 12_000 or 16_000 or 24_000 or 48_000) || skip is < 0 or > 48_000 || count is < 0 or > MostClips)
            {
                throw new AudioException("The head of this pack of spoken words is damaged.");
            }

            Dictionary<string, Clip> clips = new(count, StringComparer.Ordinal);
            int at = 0;
            for (int i = 0; i < count; i++)
            {
                string words = reader.ReadString();
                int samples = reader.ReadInt32();
                byte[] lengths = reader.ReadBytes(reader.ReadUInt16());
                clips[words] = new Clip(samples, at, lengths);
                at += lengths.Sum(l => l);
            }

            int body = (int)reader.BaseStream.Position;
            if (body + at > bytes.Length)
            {
                throw new AudioException("This pack of spoken words ends early.");
            }

            return new VoicePack(bytes, rate, skip, clips.ToDictionary(c => c.Key, c => c.Value with { At = c.Value.At + body }, StringComparer.Ordinal));
        }
        catch (Exception trouble) when (trouble is IOException or ArgumentException or DecoderFallbackException)
        {
            throw new AudioException("This pack of spoken words is damaged.", trouble);
        }
    }

    /// <summary>Seconds that a clip takes; null where there is none of these words.</summary>
    public double? SecondsOf(string words) => _clips.TryGetValue(words, out Clip? clip) ? (double)clip.Samples / _rate : null;

    /// <summary>The sound of a clip; null where there is none of these words.</summary>
    /// <exception cref="AudioException">Its packets cannot be decoded.</exception>
    public MonoAudio? SoundOf(string words)
    {
        if (!_clips.TryGetValue(words, out Clip? clip))
        {
            return null;
        }

        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        using IOpusDecoder decoder = OpusCodecFactory.CreateDecoder(_rate, 1, null);
        int frame = _rate / 50;
        float[] all = new float[clip.Lengths.Length * frame];
        int at = clip.At;
        try
        {
            for (int i = 0; i < clip.Lengths.Length; i++)
            {
                decoder.Decode(_bytes.AsSpan(at, clip.Lengths[i]), all.AsSpan(i * frame, frame), frame, false);
                at += clip.Lengths[i];
            }
        }
        catch (Exception trouble) when (trouble is not OperationCanceledException)
        {
            // the decoder raises whatever its arithmetic ran into
            throw new AudioException("This pack of spoken words is damaged.", trouble);
        }

        int until = Math.Min(all.Length, _skip + clip.Samples);
        return new MonoAudio(all[Math.Min(_skip, until)..until], _rate);
    }

    private sealed record Clip(int Samples, int At, byte[] Lengths);
}
