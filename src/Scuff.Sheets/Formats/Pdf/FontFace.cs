using System.Buffers.Binary;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>
/// A typeface that travels with Scuff, and what setting type needs of it: which characters it has and how wide they are.
/// Read from the TrueType file. Source: OpenType 1.9, tables cmap (formats 4 and 12), head, hhea, hmtx.
/// </summary>
internal sealed class FontFace
{
    private readonly Dictionary<int, ushort> _glyphs = [];
    private readonly byte[] _file;

    // Nearly all text is of these characters; -1 is one that the face lacks.
    private readonly double[] _near = new double[0x300];
    private readonly int _widths;
    private readonly int _widthCount;
    private readonly double _unitsPerEm;

    /// <summary>Reads the file.</summary>
    /// <param name="name">Name of the file without its extension.</param>
    /// <param name="file">All of it.</param>
    public FontFace(string name, byte[] file)
    {
        Name = name;
        _file = file;
        Dictionary<string, int> tables = [];
        int count = U16(4);
        for (int i = 0; i < count; i++)
        {
            int entry = 12 + (16 * i);
            tables[System.Text.Encoding.ASCII.GetString(file, entry, 4)] = checked((int)U32(entry + 8));
        }

        _unitsPerEm = U16(tables["head"] + 18);
        _widths = tables["hmtx"];
        _widthCount = U16(tables["hhea"] + 34);
        ReadCharacters(tables["cmap"]);
        for (int c = 0; c < _near.Length; c++)
        {
            _near[c] = _glyphs.ContainsKey(c) ? Far(c) : -1;
        }
    }

    /// <summary>Name of the file without its extension; names the face everywhere.</summary>
    public string Name { get; }

    /// <summary>The file.</summary>
    public byte[] File => _file;

    /// <summary>Whether it can draw a character.</summary>
    public bool Has(int character) => character < _near.Length ? _near[character] >= 0 : _glyphs.ContainsKey(character);

    /// <summary>Width of a character in parts of the type's size; 0 when it has none.</summary>
    public double WidthOf(int character) => character < _near.Length ? Math.Max(0, _near[character]) : Far(character);

    private double Far(int character) => _glyphs.TryGetValue(character, out ushort glyph)
        ? U16(_widths + (4 * Math.Min(glyph, _widthCount - 1))) / _unitsPerEm
        : 0;

    private void ReadCharacters(int table)
    {
        int count = U16(table + 2);
        for (int i = 0; i < count; i++)
        {
            int at = table + checked((int)U32(table + 4 + (8 * i) + 4));
            switch (U16(at))
            {
                case 4:
                    ReadSegments(at);
                    break;
                case 12:
                    ReadGroups(at);
                    break;
                default:
                    break;
            }
        }
    }

    private void ReadSegments(int at)
    {
        int segments = U16(at + 6) / 2;
        int ends = at + 14;
        int starts = ends + (2 * segments) + 2;
        int deltas = starts + (2 * segments);
        int ranges = deltas + (2 * segments);
        for (int s = 0; s < segments; s++)
        {
            int end = U16(ends + (2 * s));
            int start = U16(starts + (2 * s));
            int delta = U16(deltas + (2 * s));
            int range = U16(ranges + (2 * s));
            for (int c = start; c <= end && c != 0xFFFF; c++)
            {
                int glyph = range == 0 ? c : U16(ranges + (2 * s) + range + (2 * (c - start)));
                if (range == 0 || glyph != 0)
                {
                    Add(c, (glyph + delta) & 0xFFFF);
                }
            }
        }
    }

    private void ReadGroups(int at)
    {
        uint groups = U32(at + 12);
        for (int g = 0; g < groups; g++)
        {
            int group = at + 16 + (12 * g);
            int start = (int)U32(group);
            int end = (int)U32(group + 4);
            int glyph = (int)U32(group + 8);
            for (int c = start; c <= end; c++)
            {
                Add(c, glyph + c - start);
            }
        }
    }

    private void Add(int character, int glyph)
    {
        if (glyph != 0)
        {
            _glyphs[character] = (ushort)glyph;
        }
    }

    private ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_file.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(_file.AsSpan(at));
}
