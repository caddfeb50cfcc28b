using System.Globalization;
using System.Xml;

namespace Scuff.Sheets.Formats.Docx;

/// <summary>
/// Writes the XML of a word processor's document. Names are written with their usual prefix (<c>w:p</c>); an attribute is a name and
/// a value, whose prefix is the element's when it is a word processor's own.
/// </summary>
internal sealed class DocxXml : IDisposable
{
    private static readonly Dictionary<string, string> Spaces = new(StringComparer.Ordinal)
    {
        ["w"] = "http://schemas.openxmlformats.org/wordprocessingml/2006/main",
        ["r"] = "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
        ["a"] = "http://schemas.openxmlformats.org/drawingml/2006/main",
        ["wp"] = "http://schemas.openxmlformats.org/drawingml/2006/wordprocessingDrawing",
        ["wpg"] = "http://schemas.microsoft.com/office/word/2010/wordprocessingGroup",
        ["wps"] = "http://schemas.microsoft.com/office/word/2010/wordprocessingShape",
        ["mc"] = "http://schemas.openxmlformats.org/markup-compatibility/2006",
        ["cp"] = "http://schemas.openxmlformats.org/package/2006/metadata/core-properties",
        ["dc"] = "http://purl.org/dc/elements/1.1/",
        ["ep"] = "http://schemas.openxmlformats.org/officeDocument/2006/extended-properties",
        ["ct"] = "http://schemas.openxmlformats.org/package/2006/content-types",
        ["rel"] = "http://schemas.openxmlformats.org/package/2006/relationships",
    };

    private readonly XmlWriter _writer;

    /// <summary>A part that begins with one element.</summary>
    /// <param name="stream">Where it goes; not closed.</param>
    /// <param name="root">Name of the element.</param>
    /// <param name="prefixes">Prefixes to declare on it.</param>
    public DocxXml(Stream stream, string root, params ReadOnlySpan<string> prefixes)
    {
        _writer = XmlWriter.Create(stream, new XmlWriterSettings { CloseOutput = false, NewLineChars = "\n" });
        _writer.WriteStartDocument(standalone: true);
        (string prefix, string name) = Split(root);

        // readers of packages expect these two kinds of part without a prefix
        _writer.WriteStartElement(prefix is "ct" or "rel" or "ep" ? "" : prefix, name, Spaces[prefix]);
        foreach (string each in prefixes)
        {
            _writer.WriteAttributeString("xmlns", each, null, Spaces[each]);
        }
    }

    /// <summary>Opens an element.</summary>
    public DocxXml Open(string name, params ReadOnlySpan<(string Name, object Value)> attributes)
    {
        (string prefix, string local) = Split(name);
        _writer.WriteStartElement(prefix is "ct" or "rel" or "ep" ? "" : prefix, local, Spaces[prefix]);
        foreach ((string attribute, object value) in attributes)
        {
            string text = value is IFormattable number ? number.ToString(null, CultureInfo.InvariantCulture) : (string)value;
            if (attribute == "xml:space")
            {
                _writer.WriteAttributeString("xml", "space", null, text);
            }
            else if (attribute.Contains(':', StringComparison.Ordinal))
            {
                (string space, string bare) = Split(attribute);
                _writer.WriteAttributeString(space, bare, Spaces[space], text);
            }
            else if (prefix == "w")
            {
                _writer.WriteAttributeString("w", attribute, Spaces["w"], text);
            }
            else
            {
                _writer.WriteAttributeString(attribute, text);
            }
        }

        return this;
    }

    /// <summary>Closes the last open element.</summary>
    public DocxXml Close()
    {
        _writer.WriteEndElement();
        return this;
    }

    /// <summary>An element without content.</summary>
    public DocxXml Empty(string name, params ReadOnlySpan<(string Name, object Value)> attributes) => Open(name, attributes).Close();

    /// <summary>An element that holds words.</summary>
    public DocxXml Words(string name, string words, params ReadOnlySpan<(string Name, object Value)> attributes)
    {
        Open(name, attributes);
        _writer.WriteString(DocxText.Safe(words));
        return Close();
    }

    public void Dispose()
    {
        _writer.WriteEndDocument();
        _writer.Dispose();
    }

    private static (string Prefix, string Name) Split(string name)
    {
        int colon = name.IndexOf(':', StringComparison.Ordinal);
        return (name[..colon], name[(colon + 1)..]);
    }
}
