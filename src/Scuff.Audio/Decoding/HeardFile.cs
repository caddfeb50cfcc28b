using Scuff.Audio.Signals;

namespace Scuff.Audio.Decoding;

/// <summary>A sound file after reading.</summary>
/// <param name="Audio">The mean of its channels at the rate asked for.</param>
/// <param name="Tags">What the file says about itself.</param>
/// <param name="Warning">A sentence for the reader when only part of the file could be read; null when all is well.</param>
public sealed record HeardFile(MonoAudio Audio, AudioTags Tags, string? Warning);
