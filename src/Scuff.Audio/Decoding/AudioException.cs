namespace Scuff.Audio.Decoding;

/// <summary>A sound file that cannot be heard. The message is one or two finished sentences for the reader, without the file's name.</summary>
/// <param name="message">What is wrong, in plain words.</param>
/// <param name="inner">What went wrong underneath, where something did; null when the file itself tells.</param>
public sealed class AudioException(string message, Exception? inner = null) : Exception(message, inner);
