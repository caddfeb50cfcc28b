using Scuff.Audio.Signals;

namespace Scuff.Audio.Voices;

/// <summary>Something that can say words: recordings of her own, a program of the machine, or the clips that come with Scuff.</summary>
public interface IVoice
{
    /// <summary>The rate of what is said, samples a second.</summary>
    public const int Rate = 44_100;

    /// <summary>What it is, for a sentence: <c>your recordings</c>.</summary>
    string Name { get; }

    /// <summary>
    /// Says words in one go. The first sample is the first sound, the last one its end; speech of any voice is about equally loud.
    /// </summary>
    /// <param name="phrase">Small letters with single blanks, numbers as words: what <see cref="SpokenText.Phrase"/> makes.</param>
    /// <returns>One channel at <see cref="Rate"/>; null where it cannot say this as it stands.</returns>
    MonoAudio? Say(string phrase);

    /// <summary>How long it takes to say words in one go, in seconds; null where it cannot, or would have to say them first.</summary>
    /// <param name="phrase">As for <see cref="Say"/>.</param>
    double? SecondsOf(string phrase);
}
