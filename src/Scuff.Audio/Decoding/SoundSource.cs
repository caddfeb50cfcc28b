namespace Scuff.Audio.Decoding;

/// <summary>A sound file being decoded: its head when it is opened, then its samples in blocks, then its tags.</summary>
internal abstract class SoundSource : IDisposable
{
    /// <summary>Kind of file in words.</summary>
    public abstract string Format { get; }

    /// <summary>Samples a second and channel.</summary>
    public abstract int Rate { get; }

    /// <summary>Channels in the file.</summary>
    public abstract int Channels { get; }

    /// <summary>Samples a channel that the head announces; null where it does not, or cannot be believed.</summary>
    public virtual long? Frames => null;

    /// <summary>Which channels are read; may be set before the first sample is.</summary>
    public virtual SoundSide Side { get; set; }

    /// <summary>Title, artist, album; complete after the last sample.</summary>
    public TagCollector Tags { get; } = new();

    /// <summary>True when bytes of the file were damaged and what they held was left out or played as silence.</summary>
    public bool Damaged { get; protected set; }

    /// <summary>True when the file ended before its own end.</summary>
    public bool CutShort { get; protected set; }

    /// <summary>The next samples as the mean of all channels, or as <see cref="Side"/> says, at the file's own rate; 0 at the end.</summary>
    public abstract int Read(Span<float> mono);

    /// <summary>Lets go of what the source holds besides the stream.</summary>
    public void Dispose()
    {
        Release();
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets go of what the kind of file needed besides the stream.</summary>
    protected virtual void Release()
    {
    }
}
