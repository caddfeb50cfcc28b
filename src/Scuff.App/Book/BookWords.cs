using System.Globalization;
using Scuff.App.Classes;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary>The words of the book, as the command says and takes them.</summary>
internal static class BookWords
{
    /// <summary>What takes a mark back.</summary>
    public const string NotKnown = "none";

    private static readonly (Knowing Knowing, string Word, string Shown)[] Marks =
    [
        (Knowing.Follows, "follows", "follows"), (Knowing.KnowsTheStart, "start", "knows the start"), (Knowing.KnowsWithCues, "cues", "knows it with cues"),
        (Knowing.KnowsAlone, "alone", "knows it alone"),
    ];

    /// <summary>The words for marks that are taken.</summary>
    public static string MarksTaken => $"{string.Join(", ", Marks.Select(m => m.Word))} or {NotKnown}";

    /// <summary>The word for a mark.</summary>
    public static string Of(Knowing knowing) => Marks.Single(m => m.Knowing == knowing).Word;

    /// <summary>A mark as it is shown.</summary>
    public static string Shown(Knowing knowing) => Marks.Single(m => m.Knowing == knowing).Shown;

    /// <summary>The mark of a word; null for the word that takes it back.</summary>
    /// <exception cref="ClubTrouble">It is none of them.</exception>
    public static Knowing? MarkOf(string word) => word.ToLowerInvariant() switch
    {
        NotKnown => null,
        string said when Marks.FirstOrDefault(m => m.Word == said || m.Shown == said) is { Word: not null } mark => mark.Knowing,
        _ => throw Cannot($"A class knows a dance in one of these ways: {MarksTaken}; {word} is none of them."),
    };

    /// <summary>The word for a role.</summary>
    public static string Of(ItemRole role) => role switch
    {
        ItemRole.WarmUp => "warm-up",
        ItemRole.Revised => "revised",
        ItemRole.Taught => "taught",
        ItemRole.Requested => "requested",
        ItemRole.Danced => "danced",
        ItemRole.CoolDown => "cool-down",
        _ => throw new ArgumentOutOfRangeException(nameof(role)),
    };

    /// <summary>The day of a word: <c>2026-03-02</c>, today, yesterday, tomorrow.</summary>
    /// <exception cref="ClubTrouble">It is none.</exception>
    public static DateOnly DayOf(string word, DateOnly today) => word.ToLowerInvariant() switch
    {
        "today" => today,
        "yesterday" => today.AddDays(-1),
        "tomorrow" => today.AddDays(1),
        _ when DateOnly.TryParseExact(word, "yyyy-M-d", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) => day,
        _ => throw Cannot($"{word} is no day. Write year, month and day, such as {DayWords.Plain(today)}, or today, yesterday, tomorrow."),
    };

    /// <summary>The time of a word: <c>19:30</c>.</summary>
    /// <exception cref="ClubTrouble">It is none.</exception>
    public static TimeOnly TimeOf(string word) => TimeOnly.TryParseExact(word, "H:m", CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time)
        ? time
        : throw Cannot($"{word} is no time. Write hours and minutes, such as 19:30.");

    /// <summary>The day of the week of a word, which may be cut short: <c>mon</c>.</summary>
    /// <exception cref="ClubTrouble">It is none.</exception>
    public static DayOfWeek WeekdayOf(string word)
    {
        DayOfWeek[] meant = word.Length < 2 ? [] : [.. Enum.GetValues<DayOfWeek>().Where(d => d.ToString().StartsWith(word, StringComparison.OrdinalIgnoreCase))];
        return meant is [var day] ? day : throw Cannot($"{word} is no day of the week. Write it out, such as monday.");
    }

    /// <summary>The trouble of what cannot be meant.</summary>
    public static ClubTrouble Cannot(string sentence) => new(ClubTroubleKind.Impossible, sentence);
}
