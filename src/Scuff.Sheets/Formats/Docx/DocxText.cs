using System.Text;

namespace Scuff.Sheets.Formats.Docx;

/// <summary>Her words on their way into a document: what XML cannot hold is left out, and words that run from right to left are found.</summary>
internal static class DocxText
{
    /// <summary>The words without what XML cannot hold; line ends and tabs become spaces.</summary>
    public static string Safe(string words)
    {
        StringBuilder safe = new(words.Length);
        for (int i = 0; i < words.Length; i++)
        {
            char c = words[i];
            if (char.IsHighSurrogate(c) && i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]))
            {
                safe.Append(c).Append(words[++i]);
            }
            else if (c is '\t' or '\n' or '\r' or '\u0085' or '\u2028' or '\u2029')
            {
                safe.Append(' ');
            }
            else if (!char.IsControl(c) && !char.IsSurrogate(c) && c is not ('\uFFFE' or '\uFFFF'))
            {
                safe.Append(c);
            }
        }

        return safe.ToString();
    }

    /// <summary>
    /// Whether the words begin with a letter that runs from right to left. Source: Unicode Bidirectional Algorithm (UAX 9), rule P2.
    /// </summary>
    public static bool IsRightToLeft(string words)
    {
        foreach (Rune rune in words.EnumerateRunes())
        {
            if (RunsLeft(rune))
            {
                return true;
            }

            if (Rune.IsLetter(rune))
            {
                return false;
            }
        }

        return false;
    }

    /// <summary>The words cut where their direction changes; spaces and signs stay with what comes before them.</summary>
    public static IEnumerable<(string Words, bool IsRightToLeft)> Runs(string words)
    {
        string safe = Safe(words);
        bool? direction = null;
        int start = 0;
        int at = 0;
        foreach (Rune rune in safe.EnumerateRunes())
        {
            bool runsLeft = RunsLeft(rune);
            if ((runsLeft || Rune.IsLetter(rune) || Rune.IsDigit(rune)) && direction != runsLeft)
            {
                if (direction is { } known)
                {
                    yield return (safe[start..at], known);
                    start = at;
                }

                direction = runsLeft;
            }

            at += rune.Utf16SequenceLength;
        }

        if (start < safe.Length)
        {
            yield return (safe[start..], direction ?? false);
        }
    }

    // The blocks of the scripts that run from right to left. Source: Unicode 16, DerivedBidiClass, ranges reserved for R and AL.
    private static bool RunsLeft(Rune rune) => rune.Value is (>= 0x0590 and <= 0x08FF) or (>= 0xFB1D and <= 0xFDFF)
        or (>= 0xFE70 and <= 0xFEFE) or (>= 0x10800 and <= 0x10FFF) or (>= 0x1E800 and <= 0x1EFFF);
}
