using System.Globalization;
using Scuff.App.Memory;

namespace Scuff.App.Classes;

/// <summary>How days and times are said.</summary>
internal static class DayWords
{
    /// <summary>A day as the JSON and the page have it: <c>2026-12-01</c>.</summary>
    public static string Plain(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A time of the day as a clock shows it: <c>19:30</c>.</summary>
    public static string Clock(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A time of the day so many seconds after another one, over midnight too.</summary>
    public static string Clock(TimeOnly from, int seconds) => Clock(from.Add(TimeSpan.FromSeconds(seconds)));

    /// <summary>A day: <c>Tuesday 1 December</c>, with its year when that is another.</summary>
    public static string Day(DateOnly day, DateOnly today)
        => day.ToString(day.Year == today.Year ? "dddd d MMMM" : "dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>How long ago a day was: <c>yesterday</c>, <c>five days ago</c>, <c>three weeks ago</c>.</summary>
    public static string Ago(DateOnly day, DateOnly today) => RevisionDesk.Ago(today.DayNumber - day.DayNumber);

    /// <summary>A day as the page sends it; null when it is none.</summary>
    public static DateOnly? ReadDay(string words)
        => DateOnly.TryParseExact(words, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    /// <summary>A time as the page sends it, with or without seconds; null when it is none.</summary>
    public static TimeOnly? ReadClock(string words)
        => TimeOnly.TryParseExact(words, ["HH:mm", "HH:mm:ss"], CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time) ? time : null;
}
