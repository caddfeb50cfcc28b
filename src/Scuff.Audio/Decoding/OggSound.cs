namespace Scuff.Audio.Decoding;

/// <summary>Opens Ogg files by what their first sound stream holds.</summary>
internal static class OggSound
{
    /// <summary>Reads the head up to the samples.</summary>
    /// <param name="bytes">The file from its first page.</param>
    /// <param name="cancel">Ends the reading early.</param>
    /// <exception cref="AudioException">The head is damaged, or no sound is in it.</exception>
    /// <exception cref="ForeignSoundException">Its codec is not known here.</exception>
    public static SoundSource Open(ByteSource bytes, CancellationToken cancel)
    {
        OggReader ogg = new(bytes);
        OggPacket? packet = ogg.Peek();
        while (packet is { IsFirst: false })
        {
            ogg.Take();
            packet = ogg.Peek();
        }

        if (packet is null)
        {
            throw new AudioException("This Ogg file is damaged, or there is no sound in it.");
        }

        return packet.Data.AsSpan() switch
        {
            [0x01, ..] => new VorbisSource(ogg),
            [(byte)'O', ..] => new OpusSource(ogg),
            [0x7F, ..] => new FlacSource(new ByteSource(new OggFlacStream(ogg), cancel), "Ogg FLAC"),
            _ => throw new ForeignSoundException("an Ogg Speex file", "Ogg Speex"),
        };
    }
}
