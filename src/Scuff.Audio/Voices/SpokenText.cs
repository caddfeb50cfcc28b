using System.Text;

namespace Scuff.Audio.Voices;

/// <summary>Written words as they are spoken: small letters, numbers and fractions in words, signs read aloud or left out.</summary>
public static class SpokenText
{
    private static readonly string[] Small =
    [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen",
        "seventeen", "eighteen", "nineteen",
    ];

    private static readonly string[] Tens = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

    private static readonly Dictionary<string, string> Fractions = new(StringComparer.Ordinal)
    {
        ["1/8"] = "eighth",
        ["1/4"] = "quarter",
        ["1/2"] = "half",
        ["3/4"] = "three quarters",
        ["3/8"] = "three eighths",
        ["5/8"] = "five eighths",
        ["7/8"] = "seven eighths",
        ["¼"] = "quarter",
        ["½"] = "half",
        ["¾"] = "three quarters",
        ["⅛"] = "eighth",
    };

    // what dancers shorten
    private static readonly Dictionary<string, string> Short = new(StringComparer.Ordinal)
    {
        ["&"] = "and",
        ["+"] = "and",
        ["r"] = "right",
        ["l"] = "left",
        ["fwd"] = "forward",
        ["bk"] = "back",
        ["tog"] = "together",
        ["centre"] = "center",
    };

    /// <summary>The words in one row, with single blanks and nothing between; empty for nothing that can be said.</summary>
    public static string Phrase(string words) => string.Join(' ', Tokens(words).Select(t => t.Word));

    /// <summary>The words one by one, and whether a comma or the like stands before each.</summary>
    internal static List<(string Word, bool AfterPause)> Tokens(string words)
    {
        List<(string Word, bool AfterPause)> tokens = [];
        bool pauses = false;
        int at = 0;
        while (at < words.Length)
        {
            int end = at;
            while (end < words.Length && IsInside(words, end))
            {
                end++;
            }

            if (end == at)
            {
                pauses |= words[at] is ',' or ';' or '.' or ':' or '!' or '?' or '…' or '(' or ')';
                at++;
                if (words[at - 1] is not ('&' or '+' or '¼' or '½' or '¾' or '⅛'))
                {
                    continue;
                }

                end = at;
                at--;
            }

            foreach (string word in Read(words[at..end].ToLowerInvariant()))
            {
                tokens.Add((word, pauses && tokens.Count > 0));
                pauses = false;
            }

            at = end;
        }

        return tokens;
    }

    // letters and figures, a stroke between figures (1/4), and the mark of what is left out (let's)
    private static bool IsInside(string words, int at)
        => char.IsLetter(words[at]) || char.IsDigit(words[at])
            || (words[at] == '/' && at > 0 && char.IsDigit(words[at - 1]) && at + 1 < words.Length && char.IsDigit(words[at + 1]))
            || (words[at] is '\'' or '’' && at > 0 && char.IsLetter(words[at - 1]) && at + 1 < words.Length && char.IsLetter(words[at + 1]));

    private static IEnumerable<string> Read(string word)
    {
        if (Fractions.TryGetValue(word, out string? fraction))
        {
            return fraction.Split(' ');
        }

        if (Short.TryGetValue(word, out string? whole))
        {
            return [whole];
        }

        if (word.All(char.IsAsciiDigit) && word.Length <= 3)
        {
            return Number(int.Parse(word, System.Globalization.CultureInfo.InvariantCulture));
        }

        // figures and letters in one ("3rd", "2x") fall apart, as do figures with a stroke that are no fraction
        if (word.Any(char.IsDigit) && word.Any(c => !char.IsDigit(c)))
        {
            return Parts(word).SelectMany(Read);
        }

        StringBuilder plain = new(word.Length);
        foreach (char c in word)
        {
            if (char.IsLetterOrDigit(c))
            {
                plain.Append(c);
            }
        }

        return plain.Length == 0 ? [] : [plain.ToString()];
    }

    private static IEnumerable<string> Parts(string word)
    {
        int from = 0;
        for (int i = 1; i <= word.Length; i++)
        {
            if (i == word.Length || char.IsDigit(word[i]) != char.IsDigit(word[i - 1]))
            {
                string part = word[from..i];
                if (part != "/")
                {
                    yield return part;
                }

                from = i;
            }
        }
    }

    private static IEnumerable<string> Number(int value)
        => value < Small.Length ? [Small[value]]
            : value < 100 ? value % 10 == 0 ? [Tens[value / 10]] : [Tens[value / 10], Small[value % 10]]
            : [Small[value / 100], "hundred", .. value % 100 == 0 ? [] : Number(value % 100)];
}
