using System.Text;

namespace Scuff.App.Playlists;

/// <summary>Titles as a line of a playlist can hold them.</summary>
internal static class PlaylistText
{
    /// <summary>
    /// The words in one line: ends of lines and tabs become a blank; what no format may hold (control characters, halves of characters, and what XML 1.0 forbids)
    /// goes. RFC 8216, section 4.1, and XML 1.0, section 2.2.
    /// </summary>
    public static string InOneLine(string words)
    {
        StringBuilder line = new(words.Length);
        foreach (Rune rune in words.EnumerateRunes())
        {
            if (Rune.IsWhiteSpace(rune))
            {
                line.Append(' ');
            }
            else if (!Rune.IsControl(rune) && rune.Value is not (0xFFFD or 0xFFFE or 0xFFFF))
            {
                line.Append(rune.ToString());
            }
        }

        return string.Join(' ', line.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>The artist and the title, as players read them from one line.</summary>
    public static string ArtistAndTitle(PlaylistEntry entry) => InOneLine(entry.Artist.Length > 0 ? entry.Artist + " - " + entry.Title : entry.Title);

    /// <summary>The address of a full path: <c>file:///C:/Music/a%20b.mp3</c>. RFC 8089.</summary>
    public static string FileAddress(string path)
    {
        string[] parts = [.. path.Replace('\\', '/').Split('/').Select(Uri.EscapeDataString)];
        bool hasDrive = path is [_, ':', ..];
        return "file://" + (hasDrive ? "/" + path[..2] + "/" + string.Join('/', parts.Skip(1)) : string.Join('/', parts));
    }
}
