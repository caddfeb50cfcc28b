using System.Globalization;
using Scuff.Diagnostics;

namespace Scuff.Prose.Reading;

/// <summary>A line of the text.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Start">Offset of its first character.</param>
/// <param name="End">Offset after its last, without the line break.</param>
internal readonly record struct TextLine(int Number, int Start, int End)
{
    public TextSpan Span => TextSpan.FromBounds(Start, End);

    // so many lines with marks one after the other are quoted; fewer may be an aside of hers (">> say this twice")
    private const int LinesOfQuote = 4;

    /// <summary>All lines of a text, whatever its line breaks, and what a mail quotes ("> 1-2 walk R, L") without its marks.</summary>
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

        if (text.Contains("\n>", StringComparison.Ordinal) || text.Contains("\r>", StringComparison.Ordinal))
        {
            TakeQuotesOff(text, lines);
        }

        return lines;
    }

    private static void TakeQuotesOff(string text, List<TextLine> lines)
    {
        int first = 0;
        for (int i = 0; i <= lines.Count; i++)
        {
            if (i < lines.Count && WithoutQuote(text, lines[i]) != lines[i])
            {
                continue;
            }

            for (int quoted = first; i - first >= LinesOfQuote && quoted < i; quoted++)
            {
                lines[quoted] = WithoutQuote(text, lines[quoted]);
            }

            first = i + 1;
        }
    }

    // "> ", ">> ", "> > ": marks and the one blank behind them, so that what is set in stays set in
    private static TextLine WithoutQuote(string text, TextLine line)
    {
        int start = line.Start;
        for (int at = line.Start; at < line.End && text[at] is '>' or ' '; at++)
        {
            start = text[at] == '>' ? at + 1 : start;
        }

        return line with { Start = start > line.Start && start < line.End && text[start] == ' ' ? start + 1 : start };
    }

    /// <summary>The line without blanks at its ends.</summary>
    public TextLine Trimmed(string text)
    {
        int start = Start;
        int end = End;
        // the bars of a table are its edges, and small pictures adorn it
        while (start < end && (char.IsWhiteSpace(text[start]) || text[start] == '|' || IsPicture(text[start])))
        {
            start++;
        }

        while (end > start && (char.IsWhiteSpace(text[end - 1]) || text[end - 1] == '|' || IsPicture(text[end - 1])))
        {
            end--;
        }

        return new TextLine(Number, start, end);
    }

    // "💃 CORN DOLLY 💃", "★ Section 1 ★": halves of pictures, what joins them, and signs that are none of words ("90°", "©")
    private static bool IsPicture(char sign) => sign > '\u2010' && (char.IsSurrogate(sign) || sign is '\uFE0F' or '\u200D' or '\u20E3'
        || (sign is >= '\u2300' and < '\u2C00' && char.GetUnicodeCategory(sign) == UnicodeCategory.OtherSymbol));
}
