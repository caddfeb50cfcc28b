namespace Scuff.Prose.Words;

/// <summary>Slips of the fingers: all words one slip away.</summary>
internal static class Slips
{
    private const string Letters = "abcdefghijklmnopqrstuvwxyz";

    /// <summary>Words with two neighbours exchanged, a letter dropped, changed or added; likeliest first.</summary>
    public static IEnumerable<string> Of(string word)
    {
        if (word.Length > 20)
        {
            yield break;
        }

        for (int i = 0; i + 1 < word.Length; i++)
        {
            if (word[i] != word[i + 1])
            {
                yield return word[..i] + word[i + 1] + word[i] + word[(i + 2)..];
            }
        }

        for (int i = 0; i < word.Length; i++)
        {
            yield return word[..i] + word[(i + 1)..];
        }

        for (int i = 0; i <= word.Length; i++)
        {
            foreach (char letter in Letters)
            {
                yield return word[..i] + letter + word[i..];
                if (i < word.Length && word[i] != letter)
                {
                    yield return word[..i] + letter + word[(i + 1)..];
                }
            }
        }
    }
}
