using System.Globalization;
using System.Text;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>What stands in for characters that no face has. See docs/decisions/2026-11-25-type-for-any-script.md.</summary>
internal static class Substitutes
{
    private static readonly Dictionary<int, string> Known = new()
    {
        [0x2010] = "-",
        [0x2011] = "-",
        [0x2190] = "<-",
        [0x2192] = "->",
        [0x2194] = "<->",
        [0x21D0] = "<=",
        [0x21D2] = "=>",
        [0x2605] = "\u2B50",
        [0x2606] = "\u2B50",
        [0x2661] = "\u2665",
        [0x2669] = "\u266A",
        [0x266B] = "\u266A",
        [0x266C] = "\u266A",
        [0x266D] = "b",
        [0x266F] = "#",
        [0x2713] = "\u2714",
        [0x21BA] = "[turn left]",
        [0x21BB] = "[turn right]",
    };

    // A mark, the letters it is put upon, and each of them with the mark as one character.
    private static readonly (char Mark, string Letters, string Whole)[] Composed =
    [
        ('\u0300', "AEIOUaeiouNn", "ÀÈÌÒÙàèìòùǸǹ"),
        ('\u0301', "AEIOUYaeiouyCcLlNnRrSsZz", "ÁÉÍÓÚÝáéíóúýĆćĹĺŃńŔŕŚśŹź"),
        ('\u0302', "AEIOUaeiouCcGgHhJjSsWwYy", "ÂÊÎÔÛâêîôûĈĉĜĝĤĥĴĵŜŝŴŵŶŷ"),
        ('\u0303', "ANOanoIiUu", "ÃÑÕãñõĨĩŨũ"),
        ('\u0308', "AEIOUYaeiouy", "ÄËÏÖÜŸäëïöüÿ"),
        ('\u030A', "AaUu", "ÅåŮů"),
        ('\u030C', "CcDdEeNnRrSsTtZz", "ČčĎďĚěŇňŘřŠšŤťŽž"),
        ('\u0327', "CcSsTt", "ÇçŞşŢţ"),
        ('\u0328', "AaEeIiUu", "ĄąĘęĮįŲų"),
    ];

    /// <summary>
    /// Words without what cannot be printed: control characters, halves of a pair, and the marks that only steer how others are
    /// drawn. Letters with a mark put on afterwards become one character where there is one.
    /// </summary>
    public static string Clean(string words)
    {
        if (!words.Any(NeedsCare))
        {
            return words;
        }

        StringBuilder clean = new(words.Length);
        foreach (Rune rune in words.EnumerateRunes())
        {
            if (rune.Value is '\t' or '\n' or '\r' or 0x85 or 0x2028 or 0x2029)
            {
                clean.Append(' ');
            }
            else if (Whole(clean, rune) is { } whole)
            {
                clean[^1] = whole;
            }
            else if (rune != Rune.ReplacementChar
                && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format)
                && rune.Value is not ((>= 0xFE00 and <= 0xFE0F) or (>= 0x1F3FB and <= 0x1F3FF) or 0xFFFE or 0xFFFF))
            {
                clean.Append(rune.ToString());
            }
        }

        return clean.ToString();
    }

    /// <summary>Characters that mean the same, or null; whether a face has them is for the caller to see.</summary>
    public static string? For(string element)
    {
        int c = Rune.GetRuneAt(element, 0).Value;
        return Known.TryGetValue(c, out string? known)
            ? known
            : c switch
            {
                >= 0xFF01 and <= 0xFF5E => ((char)(c - 0xFEE0)).ToString(),
                >= 0x1D400 and <= 0x1D6A3 => Letter((c - 0x1D400) % 52),
                >= 0x1D7CE and <= 0x1D7FF => ((char)('0' + ((c - 0x1D7CE) % 10))).ToString(),
                _ => null,
            };
    }

    /// <summary>The numbers of characters that nothing stands in for: <c>[U+6E2F U+706F]</c>.</summary>
    public static string Numbers(IEnumerable<string> elements) => "["
        + string.Join(' ', elements.SelectMany(e => e.EnumerateRunes().ToArray()).Select(r => string.Create(CultureInfo.InvariantCulture, $"U+{r.Value:X4}")))
        + "]";

    // Bold, slanted and curly letters of the mathematical alphabets run A to Z, a to z, over and over.
    private static string Letter(int place) => ((char)(place < 26 ? 'A' + place : 'a' + place - 26)).ToString();

    private static bool NeedsCare(char c) => c is < ' ' or (>= '\u007F' and <= '\u00A0') or '\u00AD' or >= '\u0300';

    private static char? Whole(StringBuilder before, Rune mark)
    {
        if (before.Length == 0 || mark.Value is < 0x300 or > 0x328)
        {
            return null;
        }

        foreach ((char sign, string letters, string whole) in Composed)
        {
            int at = sign == mark.Value ? letters.IndexOf(before[^1], StringComparison.Ordinal) : -1;
            if (at >= 0)
            {
                return whole[at];
            }
        }

        return null;
    }
}
