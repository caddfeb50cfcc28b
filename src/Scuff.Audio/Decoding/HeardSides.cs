using Scuff.Audio.Songs;

namespace Scuff.Audio.Decoding;

/// <summary>A sound file after reading, with both its channels.</summary>
/// <param name="Sound">Left and right at the rate asked for.</param>
/// <param name="Tags">What the file says about itself.</param>
/// <param name="Warning">A sentence for the reader when only part of the file could be read; null when all is well.</param>
public sealed record HeardSides(StereoSound Sound, AudioTags Tags, string? Warning);
