using System.Text;

namespace Scuff.Sheets.Formats;

/// <summary>How formats that are text write: UTF-8 without a mark, ends of lines as given.</summary>
internal static class TextOutput
{
    /// <summary>A writer onto the stream, which stays open when the writer is closed.</summary>
    public static StreamWriter Open(Stream stream)
        => new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 16 * 1024, leaveOpen: true);
}
