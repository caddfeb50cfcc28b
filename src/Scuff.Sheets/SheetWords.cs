using System.Globalization;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Small phrases that sheets are made of.</summary>
internal static class SheetWords
{
    /// <summary>A number and its noun: <c>1 wall</c>, <c>4 walls</c>.</summary>
    public static string Number(int number, string noun)
        => number.ToString(CultureInfo.InvariantCulture) + " " + noun + (number == 1 ? "" : "s");

    /// <summary>A length: <c>32 counts</c>, <c>1½ counts</c>.</summary>
    public static string Counts(Counts counts) => counts == Timing.Counts.One
        ? "1 count"
        : Amount(counts.Value) + " counts";

    /// <summary>An amount with its fraction as printed: <c>1½</c>, <c>¾</c>, <c>1 1/3</c>.</summary>
    public static string Amount(Ratio amount)
    {
        int whole = amount.Floor;
        Ratio rest = amount - whole;
        string number = whole.ToString(CultureInfo.InvariantCulture);
        return rest switch
        {
            { Numerator: 0 } => number,
            { Numerator: 1, Denominator: 2 } => WithSign('½'),
            { Numerator: 1, Denominator: 4 } => WithSign('¼'),
            { Numerator: 3, Denominator: 4 } => WithSign('¾'),
            _ => whole == 0 ? rest.ToString() : number + " " + rest,
        };

        string WithSign(char sign) => whole == 0 ? sign.ToString() : number + sign;
    }

    /// <summary>The counts of a span within its section: <c>1-2</c>, <c>8</c>, <c>3&amp;-4</c>.</summary>
    public static string Label(CountSpan span)
    {
        string first = CountGrid.LabelOf(span.Start);
        Counts lastWhole = Timing.Counts.FromWhole(span.End.IsWhole ? span.End.Value.Floor - 1 : span.End.Value.Floor);
        return lastWhole <= span.Start ? first : first + "-" + CountGrid.LabelOf(lastWhole);
    }

    /// <summary>Moves in a row.</summary>
    public static string Moves(IEnumerable<WrittenMove> moves) => string.Join(", ", moves.Select(Phrasing.Describe));

    /// <summary>The moves of a section in a row, without their counts.</summary>
    public static string Moves(Section section) => Moves(section.Lines.SelectMany(l => l.Moves));

    /// <summary>The phrase as a sentence's beginning.</summary>
    public static string Capital(string words)
        => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>Phrases in a row as one speaks: <c>a, b and c</c>.</summary>
    public static string Row(IReadOnlyList<string> phrases) => phrases.Count < 2
        ? string.Concat(phrases)
        : string.Join(", ", phrases.Take(phrases.Count - 1)) + " and " + phrases[^1];
}
