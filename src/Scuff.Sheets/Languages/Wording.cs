using System.Globalization;
using Scuff.Dances;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Sheets.Languages;

/// <summary>Small phrases of numbers and rows that sheets are made of, in a language.</summary>
internal sealed class Wording(SheetLanguage language)
{
    /// <summary>The language.</summary>
    public SheetLanguage Language => language;

    /// <summary>How moves are told.</summary>
    public MovePhrasing Moves => language.Moves;

    /// <summary>The words of an entry.</summary>
    public string this[string key] => language.Words(key);

    /// <summary>The words of an entry with its places filled.</summary>
    public string Say(string key, params ReadOnlySpan<(string Place, string Words)> parts) => language.Say(key, parts);

    /// <summary>A length: <c>32 counts</c>, <c>1½ counts</c>.</summary>
    public string Counts(Counts counts) => Number(counts.Value, "counts");

    /// <summary>A number of walls.</summary>
    public string Walls(int walls) => Number(walls, "walls");

    /// <summary>A number with one decimal at most, which is closer than anybody starts to dance.</summary>
    public string Decimal(Ratio value)
        => value.ToDouble().ToString("0.#", CultureInfo.InvariantCulture).Replace(".", language.Words("number.decimal"), StringComparison.Ordinal);

    /// <summary>Which time: <c>second</c>.</summary>
    public string Ordinal(int number)
    {
        string digits = number.ToString(CultureInfo.InvariantCulture);
        string key = number is >= 1 and <= 5 ? "ordinal." + digits : "ordinal.other";
        string? ending = number > 5 && number % 100 is not (11 or 12 or 13) ? language.FindOwn("ordinal.ends-" + digits[^1]) : null;
        return WordTemplate.Fill(ending ?? language.Words(key), ("number", digits));
    }

    /// <summary>Phrases in a row as one speaks: <c>a, b and c</c>.</summary>
    public string Row(IReadOnlyList<string> phrases) => phrases.Count < 2
        ? string.Concat(phrases)
        : language.Say("row.and", ("row", string.Join(", ", phrases.Take(phrases.Count - 1))), ("last", phrases[^1]));

    /// <summary>The moves of a section in a row, without their counts.</summary>
    public string MovesOf(Section section) => Moves.Describe(section.Lines.SelectMany(l => l.Moves));

    /// <summary>What is danced in an ending.</summary>
    public string MovesOf(Ending ending)
    {
        // A turn "to the front" has no amount of its own: her words say it best, where they are in the language of the sheet.
        bool isRead = ending.Body is { Lines.Count: > 0 } read && read.Lines.All(l => l.Steps.All(s => s.Action.Kind != ActionKind.Unknown));
        bool isVerbatim = ending.SaysFront && ending.MoveWords.Length > 0 && (language.Code == "en" || !isRead);
        string what = isVerbatim ? ending.MoveWords
            : ending.Body is not { Lines.Count: > 0 } body ? ending.Verbatim
            : ending.SaysFront && !SaysAmount(ending.MoveWords) ? Moves.DescribeToFront(body.Lines.SelectMany(l => l.Moves))
            : MovesOf(body);
        return what.TrimEnd('.', ' ');
    }

    /// <summary>A word of her own (the kind of a note, the name of an option), in the language when it is a usual one.</summary>
    /// <param name="family">First word of the key.</param>
    /// <param name="word">Her word.</param>
    public string Usual(string family, string word)
        => language.FindOwn(family + "." + word.ToLowerInvariant().Replace(' ', '-')) ?? word;

    private static bool SaysAmount(string moves) => moves.Any(char.IsAsciiDigit)
        || moves.Contains("quarter", StringComparison.OrdinalIgnoreCase)
        || moves.Contains("half", StringComparison.OrdinalIgnoreCase)
        || moves.Contains("full", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a number takes a noun that stands for one thing; in some languages one and a half is still one thing.</summary>
    public bool IsOne(Ratio number) => language.Words("number.one") == "below-two" ? number < 2 : number == 1;

    /// <summary>
    /// A date in the language, where she wrote the name of a month in English: <c>March 2025</c>, <c>3 March 2025</c>. Any other date
    /// stays as she wrote it.
    /// </summary>
    public string Date(string written)
    {
        string[] parts = written.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        bool hasDay = parts.Length == 3 && parts[0].Length <= 2 && parts[0].All(char.IsAsciiDigit);
        if (!(hasDay || parts.Length == 2) || parts[^1].Length != 4 || !parts[^1].All(char.IsAsciiDigit))
        {
            return written;
        }

        int month = Array.FindIndex(EnglishMonths, m => string.Equals(m, parts[^2], StringComparison.OrdinalIgnoreCase)) + 1;
        return month == 0 ? written : hasDay
            ? language.Say("date.day", ("day", parts[0]), ("month", MonthOf(month)), ("year", parts[^1]))
            : language.Say("date.month", ("month", MonthOf(month)), ("year", parts[^1]));
    }

    private static readonly string[] EnglishMonths = [.. Enumerable.Range(1, 12).Select(m => SheetLanguage.English.Words(MonthKey(m)))];

    private static string MonthKey(int month) => "month." + month.ToString(CultureInfo.InvariantCulture);

    private string MonthOf(int month) => language.Words(MonthKey(month));

    private string Number(Ratio number, string noun)
        => language.Say(noun + (IsOne(number) ? ".one" : ".other"), ("number", SheetWords.Amount(number)));
}
