using Scuff.Audio.Signals;

namespace Scuff.Audio.Voices;

/// <summary>Words as sound.</summary>
/// <param name="Sound">One channel at <see cref="IVoice.Rate"/>, its first sample the first sound; of no length where nothing could be said.</param>
/// <param name="Unspoken">The words that no voice could say, in order; they are missing from the sound.</param>
public sealed record Spoken(MonoAudio Sound, ValueList<string> Unspoken);
