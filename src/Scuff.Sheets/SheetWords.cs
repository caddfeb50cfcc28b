using System.Globalization;
using System.Text;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Small things that are written alike in every language.</summary>
internal static class SheetWords
{
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
            { Numerator: 1, Denominator: 8 } => WithSign('⅛'),
            { Numerator: 3, Denominator: 8 } => WithSign('⅜'),
            { Numerator: 5, Denominator: 8 } => WithSign('⅝'),
            { Numerator: 7, Denominator: 8 } => WithSign('⅞'),
            _ => whole == 0 ? rest.ToString() : number + " " + rest,
        };

        string WithSign(char sign) => whole == 0 ? sign.ToString() : number + sign;
    }

    /// <summary>The counts of a span within its section: <c>1-2</c>, <c>8</c>, <c>3&amp;-4</c>.</summary>
    public static string Label(CountSpan span)
    {
        string first = CountGrid.LabelOf(span.Start);
        Counts lastWhole = Counts.FromWhole(span.End.IsWhole ? span.End.Value.Floor - 1 : span.End.Value.Floor);
        return lastWhole <= span.Start ? first : first + "-" + CountGrid.LabelOf(lastWhole);
    }

    /// <summary>Words of the sheet in which a number stays on one line with what it counts.</summary>
    public static string WithUnits(string words)
    {
        StringBuilder bound = new(words);
        for (int i = 1; i + 1 < words.Length; i++)
        {
            if (words[i] == ' ' && char.IsNumber(words[i - 1]) && char.IsLetter(words[i + 1]))
            {
                bound[i] = '\u00A0';
            }
        }

        return bound.ToString();
    }

    /// <summary>The phrase as a sentence's beginning.</summary>
    public static string Capital(string words)
        => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
