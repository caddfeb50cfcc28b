using Scuff.Analysis.Levels;
using Scuff.App.Complaints;
using Scuff.Repertoire;

namespace Scuff.App.Classes;

/// <summary>What is said of classes and their sessions.</summary>
internal static class ClassWords
{
    /// <summary>When, how long, where and how many, in one line: <c>improver, Tuesdays at 19:00, 90 minutes, Net loft, about 14 people</c>.</summary>
    public static string Of(ClubClass held)
    {
        List<string> words = [];
        if (held.Level.Length > 0)
        {
            words.Add(held.Level);
        }

        string at = held.Starts is { } starts ? $" at {DayWords.Clock(starts)}" : "";
        words.Add(held.Weekday is { } day ? $"{day}s{at}" : $"no fixed day{at}");
        words.Add(Summary.Number(held.Minutes, "minute"));
        if (held.Place.Length > 0)
        {
            words.Add(held.Place);
        }

        if (held.People is { } people)
        {
            words.Add(people == 1 ? "about 1 person" : $"about {people} people");
        }

        return string.Join(", ", words);
    }

    /// <summary>When it meets next and whether that is planned.</summary>
    /// <param name="day">The day of the next session.</param>
    /// <param name="isPlanned">Whether anything is planned for it.</param>
    /// <param name="today">The day it is.</param>
    public static string Next(DateOnly day, bool isPlanned, DateOnly today)
    {
        if (day < today)
        {
            return $"Planned for {DayWords.Day(day, today)}: was it held?";
        }

        string when = day == today ? "today" : day.DayNumber - today.DayNumber == 1 ? "tomorrow" : $"on {DayWords.Day(day, today)}";
        return $"Next {when}, {(isPlanned ? "planned" : "not planned yet")}";
    }

    /// <summary>The question for a planned session whose day is over; else empty.</summary>
    public static string Past(ClassSession session, DateOnly today) => session.IsHeld || session.Date >= today
        ? ""
        : $"This was planned for {DayWords.Ago(session.Date, today)}. Was it held?";

    /// <summary>The day and time of a session.</summary>
    public static string When(ClassSession session, TimeOnly? usual, DateOnly today)
        => DayWords.Day(session.Date, today) + ((session.Starts ?? usual) is { } at ? $" at {DayWords.Clock(at)}" : "");

    /// <summary>What was danced, a sentence a role; empty when nothing was.</summary>
    /// <param name="items">The dances.</param>
    /// <param name="titleOf">The title of a dance now; null for one that the club has no more.</param>
    public static string Danced(IReadOnlyList<SessionItem> items, Func<string, string?> titleOf)
    {
        List<string> sentences = [];
        foreach (IGrouping<ItemRole, SessionItem> role in items.GroupBy(i => i.Role).OrderBy(g => PlaceOf(g.Key)))
        {
            string titles = LevelPhrases.Join([.. role.Select(i => Title(i, titleOf))]);
            sentences.Add(role.Key switch
            {
                ItemRole.WarmUp => $"Warmed up with {titles}.",
                ItemRole.Revised => $"Revised {titles}.",
                ItemRole.Taught => $"Taught {titles}.",
                ItemRole.Requested => $"Asked for and danced: {titles}.",
                ItemRole.CoolDown => $"Calmed down with {titles}.",
                _ => $"Danced {titles}.",
            });
        }

        return string.Join(' ', sentences);
    }

    /// <summary>The title of a dance in a session: as it is now, else as it was then.</summary>
    public static string Title(SessionItem item, Func<string, string?> titleOf)
        => (item.DanceId is { } id ? titleOf(id) : null) is { Length: > 0 } now ? now : item.Title.Length > 0 ? item.Title : "a dance without a title";

    /// <summary>A role in the order of a class.</summary>
    public static int PlaceOf(ItemRole role) => role switch
    {
        ItemRole.WarmUp => 0,
        ItemRole.Revised => 1,
        ItemRole.Taught => 2,
        ItemRole.Requested => 3,
        ItemRole.Danced => 4,
        _ => 5,
    };

    /// <summary>What to know of a sheet that changed since it was taught; empty when it did not.</summary>
    public static string Sheet(TaughtSheet sheet, DateOnly today) => sheet switch
    {
        { IsNewer: false } => "",
        { FeetChanged: true } => $"Steps changed since you taught it on {DayWords.Day(sheet.TaughtOn, today)}.",
        { FeetChanged: false } => $"Only words changed since you taught it on {DayWords.Day(sheet.TaughtOn, today)}; the steps are the same.",
        _ => $"The sheet changed since you taught it on {DayWords.Day(sheet.TaughtOn, today)}.",
    };

    /// <summary>The heading over the dances to dance again.</summary>
    /// <param name="many">How many.</param>
    /// <param name="day">The day of the next session.</param>
    /// <param name="today">The day it is.</param>
    public static string Again(int many, DateOnly day, DateOnly today)
    {
        string these = many switch { 1 => "this one", 2 => "these two", 3 => "these three", _ => "these" };
        int days = day.DayNumber - today.DayNumber;
        string when = days switch { <= 0 => "today", <= 6 => $"on {day.DayOfWeek}", <= 13 => "next week", _ => "next time" };
        return $"Dance {these} again {when}";
    }
}
