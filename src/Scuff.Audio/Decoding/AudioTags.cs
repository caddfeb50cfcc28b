namespace Scuff.Audio.Decoding;

/// <summary>What a sound file says about itself.</summary>
/// <param name="Title">Name of the track; null where the file names none.</param>
/// <param name="Artist">Who plays it; null where the file names nobody.</param>
/// <param name="Album">The collection it is from; null where the file names none.</param>
/// <param name="Format">Kind of file in words: <c>WAV</c>, <c>MP3</c>, <c>Ogg Vorbis</c>, <c>M4A by ffmpeg</c>.</param>
/// <param name="Rate">Samples a second and channel in the file, before anything is converted.</param>
/// <param name="Channels">Channels in the file; of a file that changes midway, those at its beginning.</param>
/// <param name="Seconds">Length of what was read, in seconds, as a browser would play it (encoder delay and padding left out).</param>
public sealed record AudioTags(string? Title, string? Artist, string? Album, string Format, int Rate, int Channels, double Seconds);
