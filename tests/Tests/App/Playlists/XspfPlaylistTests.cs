using System.Xml;
using System.Xml.Linq;
using System.Xml.Schema;
using Scuff.App.Playlists;
using Tests.App.Handouts;
using Tests.Golden;
using Tests.House;
using Tests.Sheets;

namespace Tests.App.Playlists;

public sealed class XspfPlaylistTests
{
    private static readonly XNamespace Xspf = "http://xspf.org/ns/0/";

    [Fact]
    public void A_whole_playlist_looks_as_it_was_last_read_and_approved()
    {
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Small, id => id == "track-first-tide" ? null : $"/music/{id}.mp3", copies: true);

        GoldenFile.Matches("harbour-social.xspf", new XspfPlaylist().Write(playlist));
    }

    [Fact]
    public void Whatever_titles_hold_it_is_what_the_standard_describes()
    {
        foreach (Playlist playlist in (Playlist[])
        [
            HandoutSamples.HostilePlaylist,
            EveningPlaylist.ForFolder(EveningSamples.Social, id => $"/music/{id}.mp3", copies: true),
            EveningPlaylist.OfSongs(EveningSamples.Social, id => $"C:\\Music & more\\{id} 50 %.mp3"),
            new Playlist { Title = "", Entries = default },
        ])
        {
            Assert.Empty(Faults(new XspfPlaylist().Write(playlist)));
        }
    }

    [Fact]
    public void The_schema_finds_faults()
    {
        string good = new XspfPlaylist().Write(HandoutSamples.HostilePlaylist);

        Assert.NotEmpty(Faults(good.Replace("version=\"1\"", "version=\"2\"", StringComparison.Ordinal)));
        Assert.NotEmpty(Faults(good.Replace("<duration>", "<length>", StringComparison.Ordinal).Replace("</duration>", "</length>", StringComparison.Ordinal)));
        Assert.NotEmpty(Faults(good.Replace("01%20song.mp3", "01 song.mp3", StringComparison.Ordinal)));
    }

    [Fact]
    public void Order_lengths_words_and_places_come_back()
    {
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Social, id => $"/music/{id}.mp3", copies: true);
        XElement[] tracks = [.. XDocument.Parse(new XspfPlaylist().Write(playlist)).Descendants(Xspf + "track")];

        Assert.Equal(playlist.Entries.Select(e => e.Location), tracks.Select(t => Uri.UnescapeDataString((string)t.Element(Xspf + "location")!)));
        Assert.Equal(playlist.Entries.Select(e => e.Seconds * 1000), tracks.Select(t => (int)t.Element(Xspf + "duration")!));
        Assert.Equal(playlist.Entries.Select(e => e.Title), tracks.Select(t => (string)t.Element(Xspf + "title")!));
        Assert.Equal(playlist.Entries.Select(e => e.Dance), tracks.Select(t => (string?)t.Element(Xspf + "album") ?? ""));
    }

    [Fact]
    public void What_had_to_be_left_out_is_told_in_it()
    {
        Playlist playlist = EveningPlaylist.ForFolder(EveningSamples.Small, id => id == "track-first-tide" ? null : $"/music/{id}.mp3", copies: true);

        Assert.Contains("no audio of “Low Water Lullaby”", (string)XDocument.Parse(new XspfPlaylist().Write(playlist)).Root!.Element(Xspf + "annotation")!, StringComparison.Ordinal);
    }

    private static List<string> Faults(string text)
    {
        XmlSchemaSet schemas = new();
        using StringReader schema = new(Repository.Read("tests/Tests/App/Playlists/Xspf.xsd"));
        using XmlReader schemaReader = XmlReader.Create(schema);
        schemas.Add(Xspf.NamespaceName, schemaReader);
        List<string> faults = [];
        XDocument.Parse(text).Validate(schemas, (_, fault) => faults.Add(fault.Message));
        return faults;
    }
}
