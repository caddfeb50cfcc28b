using Scuff.Diagnostics;

namespace Scuff.Prose.Reading;

/// <summary>A line of the text.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Start">Offset of its first character.</param>
/// <param name="End">Offset after its last, without the line break.</param>
internal readonly record struct TextLine(int Number, int Start, int End)
{
    public TextSpan Span => TextSpan.FromBounds(Start, End);

    /// <summary>All lines of a text, whatever its line breaks.</summary>
    public static List<TextLine> Of(string text)
    {
        List<TextLine> lines = [];
        int start = 0;
        int number = 1;
        for (int i = 0; i <= text.Length; i++)
        {
            if (i == text.Length || text[i] is '\n' or '\r' or '\u2028' or '\u0085')
            {
                lines.Add(new TextLine(number++, start, i));
                if (i + 1 < text.Length && text[i] == '\r' && text[i + 1] == '\n')
                {
                    i++;
                }

                start = i + 1;
            }
        }

        return lines;
    }

    /// <summary>The line without blanks at its ends.</summary>
    public TextLine Trimmed(string text)
    {
        int start = Start;
        int end = End;
        // the bars of a table are its edges
        while (start < end && (char.IsWhiteSpace(text[start]) || text[start] == '|'))
        {
            start++;
        }

        while (end > start && (char.IsWhiteSpace(text[end - 1]) || text[end - 1] == '|'))
        {
            end--;
        }

        return new TextLine(Number, start, end);
    }
}
