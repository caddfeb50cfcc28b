using System.Collections.Concurrent;
using Scuff.Audio.Signals;

namespace Scuff.Audio.Voices;

/// <summary>
/// The clips that come with Scuff: the call words of the catalogue, counts, turns, warnings, and single words to put others together from. Rendered
/// when Scuff was made: bench/voice/README.md.
/// </summary>
public sealed class ShippedVoice : IVoice
{
    private const string Resource = "data/voice/clips.bin";

    private static readonly Lazy<VoicePack> Pack = new(Open);

    private readonly ConcurrentDictionary<string, MonoAudio?> _said = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public string Name => "the voice that comes with Scuff";

    /// <summary>All that it can say in one go.</summary>
    public static IEnumerable<string> Words => Pack.Value.Words;

    /// <inheritdoc/>
    public MonoAudio? Say(string phrase) => _said.GetOrAdd(phrase, static p => Pack.Value.SoundOf(p) is { } clip
        ? new MonoAudio(Resampler.Convert(clip.Samples, clip.Rate, IVoice.Rate), IVoice.Rate)
        : null);

    /// <inheritdoc/>
    public double? SecondsOf(string phrase) => Pack.Value.SecondsOf(phrase);

    private static VoicePack Open()
    {
        using Stream stream = typeof(ShippedVoice).Assembly.GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException(Resource + " is not in the program.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return VoicePack.Read(bytes);
    }
}
