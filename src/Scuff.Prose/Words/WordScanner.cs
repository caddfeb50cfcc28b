using System.Globalization;
using Scuff.Diagnostics;

namespace Scuff.Prose.Words;

/// <summary>Splits the words of a line into tokens. Every character that is not blank belongs to one token.</summary>
internal static class WordScanner
{
    // A line longer than this many tokens is no line of a step sheet; the rest is kept as unknown words.
    private const int MaximumTokens = 400;

    // No count, wall or tempo is larger; sums of them stay far from overflowing.
    private const int LargestNumber = 99_999;

    /// <summary>The tokens of a stretch of the text.</summary>
    public static List<WordToken> Scan(string text, int start, int end)
    {
        List<WordToken> tokens = [];
        int at = start;
        bool space = true;
        while (at < end && tokens.Count < MaximumTokens)
        {
            char c = text[at];
            if (char.IsWhiteSpace(c) || c is '\u200B' or '\uFEFF' or '\u00AD')
            {
                at++;
                space = true;
                continue;
            }

            WordToken token = ScanOne(text, at, end, space);
            tokens.Add(token);
            at = token.Span.End;
            space = false;
        }

        return tokens;
    }

    /// <summary>The eighths of a fraction character, or null.</summary>
    public static int? EighthsOf(char c) => c switch
    {
        '¼' => 2,
        '½' => 4,
        '¾' => 6,
        '⅛' => 1,
        '⅜' => 3,
        '⅝' => 5,
        '⅞' => 7,
        _ => null,
    };

    private static WordToken ScanOne(string text, int at, int end, bool space)
    {
        char c = text[at];
        if (EighthsOf(c) is int eighths)
        {
            return new WordToken(WordTokenKind.Fraction, text[at..(at + 1)], eighths, new TextSpan(at, 1), space);
        }

        if (char.IsAsciiDigit(c))
        {
            return ScanNumber(text, at, end, space);
        }

        if (char.IsLetter(c))
        {
            int stop = at + 1;
            while (stop < end && (char.IsLetter(text[stop]) || (IsApostrophe(text[stop]) && stop + 1 < end && char.IsLetter(text[stop + 1]))))
            {
                stop++;
            }

            // x2, x3
            if (stop == at + 1 && c is 'x' or 'X' or '×' && stop < end && char.IsAsciiDigit(text[stop]))
            {
                stop++;
            }

            return new WordToken(WordTokenKind.Word, Normalise(text.AsSpan(at, stop - at)), 0, TextSpan.FromBounds(at, stop), space);
        }

        string mark = c switch
        {
            '–' or '—' or '−' or '‐' or '‑' => "-",
            '’' or '‘' or '`' or '´' => "'",
            '“' or '”' or '„' or '«' or '»' => "\"",
            '×' => "x",
            '[' or '{' => "(",
            ']' or '}' => ")",
            _ => char.ToString(c),
        };
        return new WordToken(WordTokenKind.Mark, mark, 0, new TextSpan(at, 1), space);
    }

    private static bool IsApostrophe(char c) => c is '\'' or '’' or '‘';

    private static string Normalise(ReadOnlySpan<char> word)
    {
        Span<char> lower = word.Length <= 64 ? stackalloc char[word.Length] : new char[word.Length];
        int length = 0;
        foreach (char c in word)
        {
            if (!IsApostrophe(c))
            {
                lower[length++] = c is 'é' or 'è' or 'É' ? 'e' : char.ToLowerInvariant(c);
            }
        }

        return new string(lower[..length]);
    }

    private static WordToken ScanNumber(string text, int at, int end, bool space)
    {
        int stop = at;
        int number = Digits(text, ref stop, end);

        // 9:00, and 9.00 as it is printed in much of Europe; a length of 3.45 is none, for no wall lies there
        if (stop + 2 < end && text[stop] is ':' or '.' && char.IsAsciiDigit(text[stop + 1]) && char.IsAsciiDigit(text[stop + 2])
            && (stop + 3 >= end || !char.IsAsciiDigit(text[stop + 3])))
        {
            int minutes = ((text[stop + 1] - '0') * 10) + (text[stop + 2] - '0');
            if (number is >= 1 and <= 12 && ((number % 12 * 60) + minutes) % 90 == 0)
            {
                return new WordToken(WordTokenKind.Clock, text[at..(stop + 3)], ((number % 12 * 60) + minutes) / 90,
                    TextSpan.FromBounds(at, stop + 3), space);
            }
        }

        if (FractionAfter(text, stop, end) is (int simple, int simpleEnd) && number <= 99)
        {
            // 1/4
            int? eighths = ToEighths(number, simple);
            if (eighths is int value)
            {
                return new WordToken(WordTokenKind.Fraction, text[at..simpleEnd], value, TextSpan.FromBounds(at, simpleEnd), space);
            }
        }

        // 1¼, 1 1/4, 1-1/4
        int next = stop;
        while (next < end && text[next] is ' ' or '-' && next - stop < 2)
        {
            next++;
        }

        if (number is 1 or 2 && next < end)
        {
            if (EighthsOf(text[next]) is int part)
            {
                return new WordToken(WordTokenKind.Fraction, text[at..(next + 1)], (number * 8) + part, TextSpan.FromBounds(at, next + 1), space);
            }

            int upperEnd = next;
            int upper = Digits(text, ref upperEnd, end);
            if (upperEnd > next && FractionAfter(text, upperEnd, end) is (int lower, int lowerEnd) && ToEighths(upper, lower) is int more and < 8)
            {
                return new WordToken(WordTokenKind.Fraction, text[at..lowerEnd], (number * 8) + more, TextSpan.FromBounds(at, lowerEnd), space);
            }
        }

        return new WordToken(WordTokenKind.Number, text[at..stop], number, TextSpan.FromBounds(at, stop), space);
    }

    private static (int Lower, int End)? FractionAfter(string text, int stop, int end)
    {
        int slash = stop;
        if (slash + 2 < end && text[slash] == ' ' && text[slash + 1] == '/')
        {
            slash++;
        }

        int digit = slash + 1;
        if (digit + 1 < end && slash < end && text[slash] == '/' && text[digit] == ' ' && text[digit + 1] is '2' or '4' or '8')
        {
            // "1/ 2": a slip
            digit++;
        }

        if (digit < end && text[slash] is '/' or '\u2044' && char.IsAsciiDigit(text[digit]))
        {
            int lowerEnd = digit;
            int lower = Digits(text, ref lowerEnd, end);
            return (lower, lowerEnd);
        }

        return null;
    }

    private static int? ToEighths(int upper, int lower) => lower is 2 or 4 or 8 && upper is >= 1 and <= 32 && upper * 8 / lower <= 32
        ? upper * 8 / lower : null;

    private static int Digits(string text, ref int at, int end)
    {
        int start = at;
        while (at < end && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return int.TryParse(text.AsSpan(start, at - start), NumberStyles.None, CultureInfo.InvariantCulture, out int value)
            ? Math.Min(value, LargestNumber) : LargestNumber;
    }
}
