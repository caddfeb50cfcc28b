using System.Globalization;
using System.Text;

namespace Scuff.App.Playlists;

/// <summary>
/// The playlist as M3U in UTF-8. Of RFC 8216 hold its sections 4.1 (lines, UTF-8 without a mark, no control characters, comments), 4.3.1.1 (<c>#EXTM3U</c>
/// first) and 4.3.2.1 (<c>#EXTINF</c>, whole seconds since no version is stated). It is no stream of that standard: the tags of streams are left out on purpose,
/// since players that see one expect segments. Only common practice are: the artist before the title, <c>#PLAYLIST</c>, <c>#EXTALB</c>, −1 for an unknown length,
/// and names of files beside it that are not escaped.
/// </summary>
internal sealed class M3uPlaylist : IPlaylistFormat
{
    private const int UnknownLength = -1;

    public string Name => "m3u8";

    public string MediaType => "audio/x-mpegurl";

    public string Write(Playlist playlist)
    {
        StringBuilder text = new("#EXTM3U\n");
        Tag("#PLAYLIST:", playlist.Title);
        foreach (string sentence in playlist.LeftOut)
        {
            Tag("# ", sentence);
        }

        foreach (PlaylistEntry entry in playlist.Entries)
        {
            int seconds = entry.Seconds > 0 ? entry.Seconds : UnknownLength;
            Tag("# ", entry.Remark);
            Tag("#EXTALB:", entry.Dance);

            // some players look for the length in the line before the location alone
            Tag(string.Create(CultureInfo.InvariantCulture, $"#EXTINF:{seconds},"), PlaylistText.ArtistAndTitle(entry));
            text.Append(entry.IsBeside ? entry.Location : PlaylistText.FileAddress(entry.Location)).Append('\n');
        }

        return text.ToString();

        void Tag(string tag, string words)
        {
            string line = PlaylistText.InOneLine(words);
            if (line.Length > 0 || tag.StartsWith("#EXTINF", StringComparison.Ordinal))
            {
                text.Append(tag).Append(line).Append('\n');
            }
        }
    }
}
