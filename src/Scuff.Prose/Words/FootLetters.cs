using System.Text.RegularExpressions;
using Scuff.Stance;

namespace Scuff.Prose.Words;

/// <summary>
/// What letters stand for the feet in a text, where a line of it tells them: "JL is the right leg, BL is the left leg", "OJ = right foot, VJ = left foot".
/// Writers keep the letters of their own tongue, which no word file can know.
/// </summary>
internal static partial class FootLetters
{
    // so many letters are a short form; a longer word may be anything
    private const int LongestLetters = 4;

    /// <summary>The pairs that a line tells; empty for a line that tells anything besides its key.</summary>
    /// <param name="line">The words of the line.</param>
    /// <param name="lexicon">The words that are known without the key.</param>
    public static List<(string Letters, Foot Side, bool IsFoot)> Told(string line, Lexicon lexicon)
    {
        List<(string, Foot, bool)> told = [];
        if (!line.Contains("right", StringComparison.OrdinalIgnoreCase) && !line.Contains("left", StringComparison.OrdinalIgnoreCase))
        {
            return told;
        }

        string words = line.Trim(' ', '\t', '(', ')', '[', ']', '*', '.', '-', '–', '•', '#', '~');
        bool announced = false;
        foreach (ValueMatch head in Announced().EnumerateMatches(words))
        {
            announced = true;
            words = words[head.Length..];
        }

        bool equals = words.Contains('=', StringComparison.Ordinal);
        foreach (string part in Parts().Split(words))
        {
            string pair = part.Trim(' ', '\t', '.', '(', ')');
            if (pair.Length == 0)
            {
                continue;
            }

            Match match = LettersFirst().Match(pair);
            match = match.Success ? match : FootFirst().Match(pair);
            string letters = match.Groups["letters"].Value.Trim('"', '“', '”', '\'');
            string sign = match.Groups["sign"].Value.Trim().ToLowerInvariant();
            bool shortForm = letters.Length is > 0 and <= LongestLetters && letters.All(char.IsLetter);
            if (match.Success && shortForm && sign == "=")
            {
                told.Add((letters.ToLowerInvariant(), SideOf(match), match.Groups["noun"].Success));
                continue;
            }

            // without a sign that is a key's only: capitals, and no word that is danced ("TOE - right foot")
            bool capitals = match.Success && shortForm && letters.Length > 1 && letters.All(char.IsUpper)
                && lexicon.Word(letters.ToLowerInvariant()) is null or { Kind: TermKind.Foot } && lexicon.StandsFor(letters.ToLowerInvariant()) is null;
            bool said = sign.Length > 0 ? match.Groups["noun"].Success || announced || sign is "is" or "means" or "stands for" : told.Count > 0;
            if (capitals && said)
            {
                told.Add((letters.ToLowerInvariant(), SideOf(match), match.Groups["noun"].Success));
            }
            else if (!equals || !pair.Contains('=', StringComparison.Ordinal))
            {
                // "fwd = forward" may stand beside them, other words may not
                return [];
            }
        }

        return told;
    }

    /// <summary>
    /// The letters as the reader takes them: those that differ from what they mean without the key. Null where the key contradicts itself or what the letters
    /// mean to everybody ("RF = left foot"), so that nobody can know which foot is meant.
    /// </summary>
    /// <param name="told">All pairs that the text tells.</param>
    /// <param name="lexicon">The words that are known without the key.</param>
    public static Dictionary<string, string>? Of(List<(string Letters, Foot Side, bool IsFoot)> told, Lexicon lexicon)
    {
        Dictionary<string, string> letters = new(StringComparer.Ordinal);
        foreach ((string word, Foot side, bool isFoot) in told)
        {
            string meant = (side, isFoot) switch { (Foot.Right, true) => "rf", (Foot.Right, false) => "r", (_, true) => "lf", _ => "l" };
            if (lexicon.Word(word) is { Kind: TermKind.Foot or TermKind.Side, Side: Foot known })
            {
                if (known != side)
                {
                    return null;
                }

                continue;
            }

            if (letters.TryGetValue(word, out string? other) && other[0] != meant[0])
            {
                return null;
            }

            letters[word] = meant;
        }

        return letters;
    }

    private static Foot SideOf(Match match) => match.Groups["side"].Value.StartsWith("r", StringComparison.OrdinalIgnoreCase) ? Foot.Right : Foot.Left;

    // "Key:", "Abbreviations used:", "Note that", "In this text"
    [GeneratedRegex(@"^(?:(?:key|legend|abbreviations?|abbr\.?|short forms?|letters|terms|signs|symbols|conventions?|glossary|note|notes|n\.?b\.?|explanation)"
        + @"(?: [\p{L}]+){0,3}\s*[:–-]+\s*|(?:please )?note(?: that)? |(?:in|for) (?:this|the) (?:text|sheet|dance|script|steps)\s*[:,]?\s+|here\s*[:,]?\s+"
        + @"|(?:i|we) (?:write|use|put) )", RegexOptions.IgnoreCase)]
    private static partial Regex Announced();

    // what parts the pairs of a key from each other: a sign, a gap, "and"
    [GeneratedRegex(@"\s*[,;|/\t]\s*(?:and )?|\s{3,}|\s+and\s+|\s*&\s*|\.\s+(?=\p{Lu})"
        + @"|(?<=foot|leg|right|left)\)?\s+(?=\(?\p{Lu}{1,4}\s*[=:–-])", RegexOptions.None)]
    private static partial Regex Parts();

    [GeneratedRegex(@"^(?<letters>[""“']?\p{L}{1,4}[""”']?)\s*(?<sign>=|:|-|–|—|→|\(|is|means|stands for|for|)\s*(?:the |your |my )?(?<side>right|left)"
        + @"(?<noun> ?(?:foot|leg|boot|feet))?$", RegexOptions.IgnoreCase)]
    private static partial Regex LettersFirst();

    [GeneratedRegex(@"^(?:the |your |my )?(?<side>right|left)(?<noun> ?(?:foot|leg|boot|feet))?\s*(?<sign>=|:|-|–|—|→|\(|is|as|)\s*"
        + @"(?<letters>[""“']?\p{L}{1,4}[""”']?)$", RegexOptions.IgnoreCase)]
    private static partial Regex FootFirst();
}
