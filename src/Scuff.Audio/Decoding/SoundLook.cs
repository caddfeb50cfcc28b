namespace Scuff.Audio.Decoding;

/// <summary>What a look into the head of a sound file shows.</summary>
/// <param name="Format">The kind by name: <c>MP3</c>, <c>M4A</c>.</param>
/// <param name="IsDecodedHere">Whether Scuff decodes it itself; otherwise a browser or the program ffmpeg has to.</param>
/// <param name="Title">The title that tags before the sound give, or null.</param>
/// <param name="Artist">Who plays it by those tags, or null.</param>
public sealed record SoundLook(string Format, bool IsDecodedHere, string? Title, string? Artist);
