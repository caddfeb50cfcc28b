using System.Globalization;
using System.Text;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>
/// Puts the characters of a line into the order in which they stand from left to right. Source: Unicode Standard Annex 9, rules
/// P2-P3, W1-W7, N1-N2, I1-I2, L1, L2 and L4; marks that steer the direction by hand are taken out before, and brackets are
/// neutral (no rule N0).
/// </summary>
internal static class Bidi
{
    private const string Mirrored = "()[]{}<>«»‹›≤≥";

    private enum Kind
    {
        Left,
        Right,
        ArabicLetter,
        Digit,
        ArabicDigit,
        Sign,
        Ending,
        Divider,
        Mark,
        Space,
        Neutral,
    }

    /// <summary>Whether anything in the words runs from right to left.</summary>
    public static bool Concerns(string words)
    {
        foreach (Rune rune in words.EnumerateRunes())
        {
            if (rune.Value >= 0x590 && KindOf(rune) is Kind.Right or Kind.ArabicLetter or Kind.ArabicDigit)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether the first letter with a direction runs from right to left.</summary>
    public static bool StartsRight(string words)
    {
        foreach (Rune rune in words.EnumerateRunes())
        {
            switch (KindOf(rune))
            {
                case Kind.Left:
                    return false;
                case Kind.Right or Kind.ArabicLetter:
                    return true;
                default:
                    break;
            }
        }

        return false;
    }

    /// <summary>Where the characters of a line stand.</summary>
    /// <param name="elements">Its characters in the order of reading, each with its marks.</param>
    /// <param name="fromRight">Whether the paragraph runs from right to left.</param>
    /// <returns>From left to right: which of them, and whether it is to be mirrored.</returns>
    public static (int Index, bool IsMirrored)[] Order(IReadOnlyList<string> elements, bool fromRight)
    {
        Kind[] original = [.. elements.Select(e => KindOf(Rune.GetRuneAt(e, 0)))];
        int[] levels = Levels([.. original], fromRight);

        // spaces at the end of the line belong to the paragraph
        for (int i = levels.Length - 1; i >= 0 && original[i] == Kind.Space; i--)
        {
            levels[i] = fromRight ? 1 : 0;
        }

        int[] order = [.. Enumerable.Range(0, elements.Count)];
        for (int level = levels.DefaultIfEmpty(0).Max(); level > 0; level--)
        {
            for (int i = 0; i < order.Length; i++)
            {
                int start = i;
                while (i < order.Length && levels[order[i]] >= level)
                {
                    i++;
                }

                Array.Reverse(order, start, i - start);
            }
        }

        return [.. order.Select(i => (i, levels[i] % 2 == 1))];
    }

    /// <summary>The character seen in a mirror, or the same.</summary>
    public static string Mirror(string element)
    {
        int at = element.Length == 1 ? Mirrored.IndexOf(element[0], StringComparison.Ordinal) : -1;
        return at < 0 ? element : Mirrored[at ^ 1].ToString();
    }

    private static int[] Levels(Kind[] kinds, bool fromRight)
    {
        Kind paragraph = fromRight ? Kind.Right : Kind.Left;
        Weak(kinds, paragraph);
        for (int i = 0; i < kinds.Length; i++)
        {
            int start = i;
            while (i < kinds.Length && kinds[i] is Kind.Space or Kind.Neutral)
            {
                i++;
            }

            if (i > start)
            {
                Kind before = start == 0 ? paragraph : Direction(kinds[start - 1]);
                Kind after = i == kinds.Length ? paragraph : Direction(kinds[i]);
                Array.Fill(kinds, before == after ? before : paragraph, start, i - start);
            }
        }

        return [.. kinds.Select(k => k switch
        {
            Kind.Left => fromRight ? 2 : 0,
            Kind.Right => 1,
            _ => 2,
        })];
    }

    private static void Weak(Kind[] kinds, Kind paragraph)
    {
        Kind strong = paragraph;
        for (int i = 0; i < kinds.Length; i++)
        {
            if (kinds[i] == Kind.Mark)
            {
                kinds[i] = i == 0 ? paragraph : kinds[i - 1];
            }

            strong = kinds[i] is Kind.Left or Kind.Right or Kind.ArabicLetter ? kinds[i] : strong;
            if (kinds[i] == Kind.Digit && strong == Kind.ArabicLetter)
            {
                kinds[i] = Kind.ArabicDigit;
            }
        }

        for (int i = 0; i < kinds.Length; i++)
        {
            kinds[i] = kinds[i] == Kind.ArabicLetter ? Kind.Right : kinds[i];
        }

        for (int i = 1; i + 1 < kinds.Length; i++)
        {
            if (kinds[i - 1] == kinds[i + 1]
                && ((kinds[i] is Kind.Sign or Kind.Divider && kinds[i - 1] == Kind.Digit)
                    || (kinds[i] == Kind.Divider && kinds[i - 1] == Kind.ArabicDigit)))
            {
                kinds[i] = kinds[i - 1];
            }
        }

        for (int i = 0; i < kinds.Length; i++)
        {
            int start = i;
            while (i < kinds.Length && kinds[i] == Kind.Ending)
            {
                i++;
            }

            bool atDigits = i > start && ((start > 0 && kinds[start - 1] == Kind.Digit) || (i < kinds.Length && kinds[i] == Kind.Digit));
            Array.Fill(kinds, atDigits ? Kind.Digit : Kind.Neutral, start, i - start);
        }

        strong = paragraph;
        for (int i = 0; i < kinds.Length; i++)
        {
            kinds[i] = kinds[i] is Kind.Sign or Kind.Divider ? Kind.Neutral : kinds[i];
            strong = kinds[i] is Kind.Left or Kind.Right ? kinds[i] : strong;
            kinds[i] = kinds[i] == Kind.Digit && strong == Kind.Left ? Kind.Left : kinds[i];
        }
    }

    // Digits count as running from the right where neutrals ask for a direction.
    private static Kind Direction(Kind kind) => kind == Kind.Left ? Kind.Left : Kind.Right;

    private static Kind KindOf(Rune rune) => rune.Value switch
    {
        >= '0' and <= '9' or 0xB2 or 0xB3 or 0xB9 or (>= 0x6F0 and <= 0x6F9) => Kind.Digit,
        (>= 0x660 and <= 0x669) or 0x66B or 0x66C => Kind.ArabicDigit,
        '+' or '-' or 0x2212 => Kind.Sign,
        '#' or '$' or '%' or (>= 0xA2 and <= 0xA5) or 0xB0 or 0xB1 or 0x2030 or (>= 0x20A0 and <= 0x20CF) or 0x66A => Kind.Ending,
        ',' or '.' or '/' or ':' or 0xA0 or 0x60C => Kind.Divider,
        _ => Rune.GetUnicodeCategory(rune) switch
        {
            UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark => Kind.Mark,
            UnicodeCategory.SpaceSeparator => Kind.Space,
            _ => rune.Value switch
            {
                (>= 0x600 and <= 0x7BF) or (>= 0x860 and <= 0x8FF) or (>= 0xFB50 and <= 0xFDFF) or (>= 0xFE70 and <= 0xFEFE) => Kind.ArabicLetter,
                (>= 0x590 and <= 0x5FF) or (>= 0x7C0 and <= 0x85F) or (>= 0xFB1D and <= 0xFB4F) or (>= 0x10800 and <= 0x10FFF)
                    or (>= 0x1E800 and <= 0x1EFFF) => Kind.Right,
                _ => Rune.IsLetterOrDigit(rune) || Rune.GetUnicodeCategory(rune) == UnicodeCategory.SpacingCombiningMark ? Kind.Left : Kind.Neutral,
            },
        },
    };
}
