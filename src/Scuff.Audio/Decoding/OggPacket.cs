namespace Scuff.Audio.Decoding;

/// <summary>One packet out of an Ogg file.</summary>
/// <param name="Data">Its bytes.</param>
/// <param name="IsFirst">Whether it opens a stream.</param>
/// <param name="PageGranule">The codec's place at the end of the page it ends on; negative when that page names none.</param>
/// <param name="EndsPage">Whether it is the last that ends on its page.</param>
/// <param name="OnLastPage">Whether its page closes the stream.</param>
internal sealed record OggPacket(byte[] Data, bool IsFirst, long PageGranule, bool EndsPage, bool OnLastPage);
