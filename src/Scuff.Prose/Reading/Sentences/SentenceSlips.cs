using Scuff.Prose.Words;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>Slips of the fingers and short forms in sentences about the pattern: "Restrat on wal 2", "Rst on W2".</summary>
internal static class SentenceSlips
{
    private static readonly string[] Restarts = ["restart", "restarts", "restarted"];

    // what such sentences are made of; a word of two or three letters is believed to be one of them only with two letters exchanged
    private static readonly string[] Vocabulary =
    [
        .. Restarts, "wall", "walls", "count", "counts", "beats", "tag", "tags", "bridge", "after", "section", "sections", "facing", "repetition", "during",
        "the", "and", "end", "dance", "start", "following", "repeat", "before", "then", "with", "times", "twice",
    ];

    private static readonly Dictionary<string, string?> Meant = AllSlips();

    private static readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> OfRestart
        = new HashSet<string>([.. Restarts.SelectMany(Slips.Of).Where(s => s.Length > 5), "rst", "rstrt"], StringComparer.OrdinalIgnoreCase)
            .GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>Whether one of the words is a restart with a slip in it, or cut short.</summary>
    public static bool SaysRestart(ReadOnlySpan<char> words)
    {
        int start = -1;
        for (int i = 0; i <= words.Length; i++)
        {
            bool letter = i < words.Length && char.IsLetter(words[i]);
            if (letter && start < 0)
            {
                start = i;
            }
            else if (!letter && start >= 0)
            {
                if (i - start is > 2 and < 11 && words[start] is 'r' or 'R' or 'e' or 'E' && OfRestart.Contains(words[start..i]))
                {
                    return true;
                }

                start = -1;
            }
        }

        return false;
    }

    /// <summary>The word that is meant by one with a slip in it, or null.</summary>
    public static string? Of(string word) => word is "rst" or "rstrt" ? "restart" : Meant.GetValueOrDefault(word);

    private static Dictionary<string, string?> AllSlips()
    {
        Dictionary<string, string?> meant = new(StringComparer.Ordinal);
        foreach (string word in Vocabulary)
        {
            foreach (string slip in Slips.Of(word))
            {
                bool exchanged = slip.Length == word.Length && slip.Order().SequenceEqual(word.Order());
                if (slip.Length < 3 || (word.Length < 4 && !exchanged) || Vocabulary.Contains(slip))
                {
                    continue;
                }

                // a slip of two words tells neither; one word and its plural it tells well enough
                meant[slip] = !meant.TryGetValue(slip, out string? other) || other == word ? word
                    : other is not null && (other == word + "s" || word == other + "s") ? (other.Length < word.Length ? other : word) : null;
            }
        }

        return meant;
    }
}
