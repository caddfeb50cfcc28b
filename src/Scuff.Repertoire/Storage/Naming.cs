namespace Scuff.Repertoire.Storage;

/// <summary>Finds things by what she types of their titles.</summary>
internal static class Naming
{
    /// <summary>
    /// Those whose title has just these words, case, accents and signs aside; when there is none, those whose title begins so. None when nothing was
    /// typed.
    /// </summary>
    public static ValueList<T> Find<T>(IReadOnlyList<T> things, Func<T, string> title, string typed)
    {
        string sought = Bare(typed);
        if (sought.Length == 0)
        {
            return [];
        }

        ValueList<T> same = things.Where(t => Bare(title(t)) == sought).ToValueList();
        return same.Count > 0 ? same : things.Where(t => Bare(title(t)).StartsWith(sought, StringComparison.Ordinal)).ToValueList();
    }

    private static string Bare(string text)
    {
        (IReadOnlyList<string> words, IReadOnlyList<string> signs) = Folding.Words(text);
        return string.Join(' ', words.Count > 0 ? words : signs);
    }
}
