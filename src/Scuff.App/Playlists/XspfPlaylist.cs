using System.Globalization;
using System.Text;
using System.Xml;

namespace Scuff.App.Playlists;

/// <summary>
/// The playlist as XSPF version 1. Source: Xiph.Org Foundation, XSPF Version 1, 2006 (https://xspf.org/spec): locations are URIs, relative ones beside the
/// playlist; durations are milliseconds.
/// </summary>
internal sealed class XspfPlaylist : IPlaylistFormat
{
    private const string Namespace = "http://xspf.org/ns/0/";

    public string Name => "xspf";

    public string MediaType => "application/xspf+xml";

    public string Write(Playlist playlist)
    {
        StringBuilder text = new();
        XmlWriterSettings settings = new() { Indent = true, NewLineChars = "\n", OmitXmlDeclaration = true };
        using (XmlWriter xml = XmlWriter.Create(text, settings))
        {
            xml.WriteStartElement("playlist", Namespace);
            xml.WriteAttributeString("version", "1");
            Element("title", playlist.Title);
            Element("annotation", string.Join(' ', playlist.LeftOut));
            xml.WriteStartElement("trackList", Namespace);
            foreach (PlaylistEntry entry in playlist.Entries)
            {
                xml.WriteStartElement("track", Namespace);
                Element("location", entry.IsBeside ? Uri.EscapeDataString(entry.Location) : PlaylistText.FileAddress(entry.Location));
                Element("title", entry.Title);
                Element("creator", entry.Artist);
                Element("annotation", entry.Remark);
                Element("album", entry.Dance);
                if (entry.Seconds > 0)
                {
                    Element("duration", (entry.Seconds * 1000L).ToString(CultureInfo.InvariantCulture));
                }

                xml.WriteEndElement();
            }

            xml.WriteEndElement();
            xml.WriteEndElement();

            void Element(string name, string words)
            {
                string line = PlaylistText.InOneLine(words);
                if (line.Length > 0)
                {
                    xml.WriteElementString(name, Namespace, line);
                }
            }
        }

        // the writer would name the encoding of a string; the file is UTF-8
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + text + "\n";
    }
}
