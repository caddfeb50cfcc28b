namespace Scuff.Prose.Words;

/// <summary>The endings of English verbs and names: regular rules only; exceptions stand in the word file.</summary>
internal static class Inflections
{
    /// <summary>The phrase with its first word in every ending of a verb.</summary>
    public static IEnumerable<(string Form, bool IsIng)> OfPhrase(string phrase)
    {
        yield return (phrase, false);
        int space = phrase.IndexOf(' ', StringComparison.Ordinal);
        string first = space < 0 ? phrase : phrase[..space];
        string rest = space < 0 ? "" : phrase[space..];
        if (first.Length < 3 || first.EndsWith("ing", StringComparison.Ordinal) || first.EndsWith('s') && first is not "press" and not "cross"
            || first is "heel" or "toe" or "knee" or "hip" or "shoulder" or "weight" or "back")
        {
            yield break;
        }

        yield return (first + (EndsInHiss(first) ? "es" : "s") + rest, false);
        foreach (string stem in Stems(first))
        {
            yield return (stem + "ing" + rest, true);
            yield return (stem + "ed" + rest, false);
        }
    }

    /// <summary>Plural of the last word, and the -ing form of the first word, of a figure's name.</summary>
    public static IEnumerable<string> OfName(string name)
    {
        if (name.Length < 3)
        {
            yield break;
        }

        if (char.IsLetter(name[^1]) && name[^1] != 's')
        {
            yield return name + (EndsInHiss(name) ? "es" : "s");
        }

        int space = name.IndexOf(' ', StringComparison.Ordinal);
        string first = space < 0 ? name : name[..space];
        string rest = space < 0 ? "" : name[space..];
        if (first is "shuffle" or "mambo" or "lock" or "strut" or "skate" or "vine" or "weave" or "paddle" or "chasse")
        {
            foreach (string stem in Stems(first))
            {
                yield return stem + "ing" + rest;
            }

            if (rest.Length > 0)
            {
                yield return first + "s" + rest;
            }
        }
    }

    private static bool EndsInHiss(string word) => word[^1] is 's' or 'x' or 'z'
        || word.EndsWith("ch", StringComparison.Ordinal) || word.EndsWith("sh", StringComparison.Ordinal);

    private static IEnumerable<string> Stems(string word)
    {
        if (word[^1] == 'e')
        {
            yield return word[..^1];
        }
        else if (IsConsonant(word[^1]) && IsVowel(word[^2]) && (word.Length <= 7 || word.EndsWith("fer", StringComparison.Ordinal))
            && word[^1] is not ('w' or 'y' or 'x') && (word.Length < 3 || !IsVowel(word[^3])))
        {
            yield return word + word[^1];
            yield return word;
        }
        else
        {
            yield return word;
        }
    }

    private static bool IsVowel(char c) => c is 'a' or 'e' or 'i' or 'o' or 'u';

    private static bool IsConsonant(char c) => char.IsAsciiLetter(c) && !IsVowel(c);
}
