using Scuff.Diagnostics;

namespace Scuff.App.Complaints;

/// <summary>The lines of a text, to turn offsets into lines and columns for people.</summary>
internal sealed class TextLines
{
    private readonly string _text;
    private readonly List<int> _starts = [0];

    /// <summary>Finds the lines; <c>\n</c>, <c>\r\n</c> and a lone <c>\r</c> end one.</summary>
    public TextLines(string text)
    {
        _text = text;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                _starts.Add(i + 1);
            }
        }
    }

    /// <summary>The one-based line and column (in UTF-16 units) of an offset; an offset beyond the text is its end.</summary>
    public (int Line, int Column) PlaceOf(int offset)
    {
        int at = Math.Clamp(offset, 0, _text.Length);
        int found = _starts.BinarySearch(at);
        int line = found >= 0 ? found : ~found - 1;
        return (line + 1, at - _starts[line] + 1);
    }

    /// <summary>The words of a one-based line, without its end.</summary>
    public string WordsOf(int line)
    {
        int start = _starts[line - 1];
        int end = line < _starts.Count ? _starts[line] : _text.Length;
        return _text[start..end].TrimEnd('\n', '\r');
    }

    /// <summary>The part of the span that lies on its first line, at least one character long.</summary>
    public (int Line, int Column, int Length) FirstLineOf(TextSpan span)
    {
        (int line, int column) = PlaceOf(span.Start);
        int room = Math.Max(1, WordsOf(line).Length - column + 1);
        return (line, column, Math.Clamp(span.Length, 1, room));
    }
}
