using Scuff.Steps;

namespace Scuff.App.Commands;

/// <summary>Finds moves by words.</summary>
internal static class CatalogueSearch
{
    /// <summary>
    /// The moves in whose id, names or call all words occur, best first: named exactly so, then a name that holds them,
    /// then the call. Without words, all moves by name.
    /// </summary>
    public static IReadOnlyList<StepDefinition> Find(StepCatalogue catalogue, IReadOnlyList<string> words)
    {
        string[] sought = [.. words.SelectMany(Split)];
        return
        [
            .. catalogue.Definitions
                .Select(d => (Definition: d, Rank: Rank(d, sought)))
                .Where(f => f.Rank is not null)
                .OrderBy(f => f.Rank)
                .ThenBy(f => f.Definition.Name, StringComparer.OrdinalIgnoreCase)
                .ThenBy(f => f.Definition.Id, StringComparer.Ordinal)
                .Select(f => f.Definition),
        ];
    }

    private static int? Rank(StepDefinition definition, string[] sought)
    {
        if (sought.Length == 0)
        {
            return 0;
        }

        List<string[]> names = [.. definition.Aliases.Prepend(definition.Name).Prepend(definition.Id).Select(Split)];
        if (names.Exists(n => n.SequenceEqual(sought, StringComparer.Ordinal)))
        {
            return 0;
        }

        if (names.Exists(n => Array.TrueForAll(sought, s => n.Contains(s, StringComparer.Ordinal))))
        {
            return 1;
        }

        if (names.Exists(n => Array.TrueForAll(sought, s => Array.Exists(n, w => w.StartsWith(s, StringComparison.Ordinal)))))
        {
            return 2;
        }

        string[] call = Split(definition.Call);
        return Array.TrueForAll(sought, s => call.Contains(s, StringComparer.Ordinal)) ? 3 : null;
    }

    private static string[] Split(string words)
        => words.ToLowerInvariant().Split([' ', '_', '-', ',', '/', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
}
