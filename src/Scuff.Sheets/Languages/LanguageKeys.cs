using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Sheets.Languages;

/// <summary>Which keys a language's file may hold, and which places each may have.</summary>
internal static class LanguageKeys
{
    /// <summary>Families in which a language may say more than English does, or less, and what may stand in their braces.</summary>
    private static readonly (string Family, string[] Places)[] Free =
    [
        ("act", ["foot", "other", "side", "across", "size", "verb", "place", "turn"]),
        ("place", ["foot", "other", "side", "across"]),
        ("size", []),
        ("turning", ["act", "turn", "side"]),
        ("turn", ["amount", "number", "side"]),
        ("share", ["amount"]),
        ("ordinal", ["number"]),
        ("figure", ["name", "foot", "place", "way"]),
        ("article", []),
        ("rhythm", []),
        ("field", []),
        ("gesture", []),
        ("note", []),
        ("option", []),
    ];

    /// <summary>Actions told apart beside the primitives: for their weight, or because both feet land crossed.</summary>
    public static IReadOnlyList<string> MoreActs { get; } = ["stomp-up", "pivot-on", "jump-crossed"];

    /// <summary>Whether every language needs an entry of a key that English has.</summary>
    public static bool IsNeeded(string key)
    {
        string[] words = key.Split('.');
        return words[0] switch
        {
            "act" => words.Length == 1,
            "place" or "size" => words.Length == 2,
            "turn" => words[1] != "half",
            "ordinal" => !words[1].StartsWith("ends-", StringComparison.Ordinal),
            "figure" => words.Length == 1,
            "article" => false,

            // lesson plans and evenings are English until somebody who teaches in the language puts them into it
            "lesson" or "evening" => false,
            _ => true,
        };
    }

    /// <summary>What is wrong with an entry, or null.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="english">The English words of its key, or null.</param>
    public static string? Fault(LanguageEntry entry, string? english)
    {
        string[] words = entry.Key.Split('.');
        (string Family, string[] Places) free = Array.Find(Free, f => f.Family == words[0]);
        if (english is null && (free.Family is null || !IsKnown(words)))
        {
            return $"there is no key {entry.Key}";
        }

        IReadOnlyList<string> places = WordTemplate.PlacesOf(entry.Text);
        IReadOnlyList<string> allowed = free.Places ?? WordTemplate.PlacesOf(english!);
        if (places.FirstOrDefault(p => !allowed.Contains(p)) is { } unknown)
        {
            return $"{entry.Key} has no {{{unknown}}}"
                + (allowed.Count > 0 ? $"; it may have {string.Join(", ", allowed.Select(p => "{" + p + "}"))}" : "");
        }

        if (entry.Key == "figures-told" && entry.Text.Split(' ').FirstOrDefault(id => StepCatalogue.Default.Find(id) is null) is { } stranger)
        {
            return $"figures-told names {stranger}, which is in no file of steps";
        }

        // an article is English; all else that the sentence tells must be told
        return free.Family is null && allowed.FirstOrDefault(p => p != "a" && !places.Contains(p)) is { } missing
            ? $"{entry.Key} leaves out {{{missing}}}"
            : null;
    }

    private static bool IsKnown(string[] words) => words[0] switch
    {
        "act" => words.Length is 2 or 3 or 4 && IsAct(words[1]) && words.Skip(2).All(w => w == "alone" || IsDirection(w)),
        "place" => words.Length is 3 or 4 && IsDirection(words[1]) && words.Skip(2).All(w => w == "alone" || IsAct(w)),
        "size" => words.Length == 3 && IsAct(words[2]),
        "figure" => words.Length == 2 && StepCatalogue.Default.Find(words[1]) is not null,
        "turn" => words.Length == 2 && words[1] is "half",
        "turning" => words.Length == 2 && words[1] is "full",
        "ordinal" => words.Length == 2 && words[1] is "ends-1" or "ends-2" or "ends-3",
        "article" or "rhythm" or "field" or "gesture" or "note" or "option" => words.Length == 2,
        _ => false,
    };

    private static bool IsAct(string word)
        => MoreActs.Contains(word) || Enum.GetNames<ActionKind>().Any(n => SheetLanguage.KeyOf(n) == word);

    private static bool IsDirection(string word) => Enum.GetNames<Direction>().Any(n => SheetLanguage.KeyOf(n) == word);
}
