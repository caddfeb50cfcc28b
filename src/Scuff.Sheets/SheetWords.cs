using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Small things that are written alike in every language.</summary>
internal static class SheetWords
{
    /// <summary>The counts of a span within its section: <c>1-2</c>, <c>8</c>, <c>3&amp;-4</c>.</summary>
    public static string Label(CountSpan span)
    {
        string first = CountGrid.LabelOf(span.Start);
        Counts lastWhole = Counts.FromWhole(span.End.IsWhole ? span.End.Value.Floor - 1 : span.End.Value.Floor);
        return lastWhole <= span.Start ? first : first + "-" + CountGrid.LabelOf(lastWhole);
    }

    /// <summary>The phrase as a sentence's beginning.</summary>
    public static string Capital(string words)
        => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
