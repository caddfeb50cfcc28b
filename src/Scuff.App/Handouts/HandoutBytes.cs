using System.Text;

namespace Scuff.App.Handouts;

/// <summary>How handouts of small size reach a stream: made whole first, then sent.</summary>
internal static class HandoutBytes
{
    /// <summary>Sends what is drawn into memory; a fault while drawing leaves the stream untouched.</summary>
    public static async Task SendAsync(Action<Stream> draw, Stream stream, CancellationToken cancel)
    {
        using MemoryStream drawn = new();
        draw(drawn);
        await stream.WriteAsync(drawn.GetBuffer().AsMemory(0, (int)drawn.Length), cancel);
    }

    /// <summary>Sends a text as UTF-8.</summary>
    /// <param name="text">The text.</param>
    /// <param name="withMark">Whether it begins with a byte order mark.</param>
    /// <param name="stream">Where it goes.</param>
    /// <param name="cancel">Ends it early.</param>
    public static async Task SendAsync(string text, bool withMark, Stream stream, CancellationToken cancel)
    {
        UTF8Encoding encoding = new(withMark);
        await stream.WriteAsync((byte[])[.. encoding.GetPreamble(), .. encoding.GetBytes(text)], cancel);
    }
}
