namespace Scuff.Analysis.Calls;

/// <summary>How long words take to be said, where no voice is there to be asked.</summary>
public static class SpokenLength
{
    /// <summary>
    /// Seconds a syllable: five in a second, as a caller half sings them. Measured: single words of one syllable from a speaking program, trimmed
    /// of silence, lasted 0.20 to 0.34 s; in a phrase they are shorter. Design value.
    /// </summary>
    public const double SecondsPerSyllable = 0.2;

    /// <summary>What the last sound takes to fade; design value.</summary>
    public const double Tail = 0.05;

    /// <summary>The longest that is said in one breath; words above it are not called. Source: teaching notes, section 2: four to six words at most.</summary>
    public const int MostWords = 6;

    /// <summary>Seconds that words take.</summary>
    /// <param name="words">The words; none take no time.</param>
    public static double Of(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        int syllables = 0;
        foreach (Range range in Split(words))
        {
            syllables += Syllables(words.AsSpan()[range]);
        }

        return syllables == 0 ? 0 : (syllables * SecondsPerSyllable) + Tail;
    }

    /// <summary>How many words there are.</summary>
    public static int WordsIn(string words) => Split(words).Count;

    // Vowels in a row are one syllable; an e at the end is silent ("vine", "home") but not alone ("the") and not after an l ("shuffle").
    private static int Syllables(ReadOnlySpan<char> word)
    {
        if (char.IsAsciiDigit(word[0]))
        {
            return word.Length; // a caller says "sev'n" in the time of one
        }

        int count = 0;
        bool inVowels = false;
        for (int i = 0; i < word.Length; i++)
        {
            bool vowel = "aeiouyAEIOUY".Contains(word[i], StringComparison.Ordinal);
            if (vowel && !inVowels)
            {
                count++;
            }

            inVowels = vowel;
        }

        bool silent = word.Length > 2 && word[^1] is 'e' && !"aeiouyl".Contains(word[^2], StringComparison.Ordinal);
        bool silentPlural = word.Length > 4 && word.EndsWith("es", StringComparison.Ordinal) && !"csxz".Contains(word[^3], StringComparison.Ordinal);
        return Math.Max(1, count - (silent || silentPlural ? 1 : 0));
    }

    private static List<Range> Split(string words)
    {
        List<Range> found = [];
        int start = -1;
        for (int i = 0; i <= words.Length; i++)
        {
            bool inside = i < words.Length && (char.IsLetterOrDigit(words[i]) || words[i] is '\'' or '’');
            if (inside && start < 0)
            {
                start = i;
            }
            else if (!inside && start >= 0)
            {
                found.Add(start..i);
                start = -1;
            }
        }

        return found;
    }
}
