namespace Scuff.Repertoire.Storage;

/// <summary>Tags in a column: one a line, beside them folded with a line feed before and after each, so that one of them is found whole.</summary>
internal static class TagLine
{
    /// <summary>Longer tags are cut: 80 characters.</summary>
    private const int Longest = 80;

    /// <summary>Tags as they are kept: in one line each, without the empty and the repeated.</summary>
    public static ValueList<string> Tidy(IEnumerable<string> tags) => tags
        .Select(t => string.Join(' ', t.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace("\0", "", StringComparison.Ordinal))
        .Select(t => t.Length > Longest ? t[..Longest].TrimEnd() : t)
        .Where(t => t.Length > 0)
        .DistinctBy(Folding.FoldLine)
        .ToValueList();

    /// <summary>As a column.</summary>
    public static string Write(ValueList<string> tags) => string.Join('\n', tags);

    /// <summary>From a column.</summary>
    public static ValueList<string> Read(string column) => column.Length == 0 ? [] : column.Split('\n').ToValueList();

    /// <summary>The column of folded tags that goes with a column of tags.</summary>
    public static string Fold(string column) => column.Length == 0 ? "" : string.Concat(column.Split('\n').Select(Sought));

    /// <summary>What the column of folded tags is searched for.</summary>
    public static string Sought(string tag) => $"\n{Folding.FoldLine(tag)}\n";

    /// <summary>Counts the tags of columns, spelled as in the last of them, in order of the alphabet.</summary>
    public static ValueList<TagCount> Count(IEnumerable<string> columns)
    {
        Dictionary<string, TagCount> counts = [];
        foreach (string tag in columns.SelectMany(c => Read(c)))
        {
            string folded = Folding.FoldLine(tag);
            counts[folded] = new TagCount(tag, counts.TryGetValue(folded, out TagCount? before) ? before.Count + 1 : 1);
        }

        return counts.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value).ToValueList();
    }
}
