using System.Text;
using System.Text.RegularExpressions;
using Scuff.App.Playlists;
using Tests.App.Handouts;
using Tests.Golden;
using Tests.Sheets;

namespace Tests.App.Playlists;

/// <summary>What the golden file says is read by two parsers of others in <c>tests/browser/handouts.test.mjs</c>.</summary>
public sealed partial class M3uPlaylistTests
{
    [Fact]
    public void A_whole_playlist_looks_as_it_was_last_read_and_approved()
    {
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Small, id => id == "track-first-tide" ? null : $"/music/{id}.mp3", copies: true);

        GoldenFile.Matches("harbour-social.m3u8", new M3uPlaylist().Write(playlist));
        GoldenFile.Matches("hostile.m3u8", new M3uPlaylist().Write(HandoutSamples.HostilePlaylist));
    }

    // RFC 8216, section 4.1: UTF-8 without a mark, lines of LF, no control characters, and lines that are blank, begin with # or are locations.
    [Fact]
    public void Whatever_titles_hold_the_lines_stay_lines()
    {
        Playlist playlist = HandoutSamples.HostilePlaylist;
        string text = new M3uPlaylist().Write(playlist);

        Assert.Equal(text, new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(new UTF8Encoding(false, throwOnInvalidBytes: true).GetBytes(text)));
        string[] lines = text.TrimEnd('\n').Split('\n');
        Assert.Equal("#EXTM3U", lines[0]);
        Assert.DoesNotContain(lines, l => l.Any(char.IsControl) || l.Length == 0);
        Assert.Equal(playlist.Entries.Select(e => e.Location), lines.Where(l => l[0] != '#'));

        // right before each location stands its length
        string[] lengths = [.. lines.Where((_, i) => i + 1 < lines.Length && lines[i + 1][0] != '#')];
        Assert.All(lengths, l => Assert.Matches(Length(), l));
        Assert.Equal(playlist.Entries.Select(e => e.Seconds), lengths.Select(l => int.Parse(Length().Match(l).Groups[1].Value, null)));
    }

    [Fact]
    public void An_unknown_length_is_minus_one_as_players_expect()
    {
        string text = new M3uPlaylist().Write(new Playlist { Title = "x", Entries = [new PlaylistEntry { Title = "Song", Seconds = 0, Source = "/a.mp3", Location = "01 Song.mp3" }] });

        Assert.Equal("#EXTM3U\n#PLAYLIST:x\n#EXTINF:-1,Song\n01 Song.mp3\n", text);
    }

    [Theory]
    [InlineData("/media/Musik & Tänze/50 % #1.mp3", "file:///media/Musik%20%26%20T%C3%A4nze/50%20%25%20%231.mp3")]
    [InlineData("D:\\Musik\\a b.mp3", "file:///D:/Musik/a%20b.mp3")]
    public void A_file_elsewhere_is_named_by_its_address(string path, string address)
    {
        Assert.Equal(address, PlaylistText.FileAddress(path));
        Assert.True(Uri.TryCreate(address, UriKind.Absolute, out Uri? read) && read.IsFile);
        Assert.Equal(path.Replace('\\', '/'), Uri.UnescapeDataString(read.AbsolutePath).TrimStart(path[0] == '/' ? '\0' : '/'));
    }

    [GeneratedRegex("^#EXTINF:([0-9]+),(?! )")]
    private static partial Regex Length();
}
