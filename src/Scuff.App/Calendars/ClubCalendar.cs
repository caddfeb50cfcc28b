using Scuff.App.Handouts;
using Scuff.Repertoire;
using Scuff.Sheets;

namespace Scuff.App.Calendars;

/// <summary>
/// The classes and evenings of a club as a calendar: a weekly entry for each class, in its place on the day of a session what is planned or was done, and an entry
/// for each evening. Of people nothing stands in it: neither how it went nor a note, where a name might be.
/// </summary>
internal static class ClubCalendar
{
    /// <summary>The entries, weekly ones before those that take their places.</summary>
    public static IEnumerable<CalendarEntry> Of(BookOut book)
    {
        ILookup<string, ClassSession> sessions = book.Sessions.ToLookup(s => s.ClassId, StringComparer.Ordinal);
        foreach (ClubClass group in book.Classes.OrderBy(c => c.Id, StringComparer.Ordinal))
        {
            foreach (CalendarEntry entry in Of(book, group, [.. sessions[group.Id].OrderBy(s => s.Date).ThenBy(s => s.Id, StringComparer.Ordinal)]))
            {
                yield return entry;
            }
        }

        foreach (ClubEvening evening in book.Evenings.Where(e => e.ClassId is null).OrderBy(e => e.Date).ThenBy(e => e.Id, StringComparer.Ordinal))
        {
            yield return new CalendarEntry
            {
                Uid = UidOf(book.ClubKey, "evening", evening.Id),
                Title = evening.Title,
                Date = evening.Date,
                Starts = evening.Starts,
                Minutes = evening.Minutes,
                Place = evening.Place,
                Words = book.Programmes.TryGetValue(evening.Id, out EveningPaper? paper) ? WordsOf(paper) : "",
                Changes = Math.Max(0, evening.Revision - 1),
            };
        }
    }

    /// <summary>The identity of an entry.</summary>
    /// <param name="clubKey">The club: see <see cref="BookOut.ClubKey"/>.</param>
    /// <param name="kind">What it is: <c>evening</c>, <c>class</c> or <c>session</c>.</param>
    /// <param name="id">Its id in the club.</param>
    public static string UidOf(string clubKey, string kind, string id) => $"{kind}-{id}@{clubKey}.scuff";

    /// <summary>The programme of an evening in lines, each with its time.</summary>
    public static string WordsOf(EveningPaper paper) => string.Join('\n', paper.Lines.Select(l => paper.ClockAt(l.StartSeconds) + " " + l.Kind switch
    {
        EveningLineKind.Lesson => $"Lesson: {l.Title}",
        EveningLineKind.Rest => "Rest",
        _ => l.IsSplit ? $"{l.Title} and {l.OtherTitle}" : l.Title,
    }));

    private static IEnumerable<CalendarEntry> Of(BookOut book, ClubClass group, ClassSession[] sessions)
    {
        CalendarEntry? weekly = Weekly(book, group, sessions);
        if (weekly is not null)
        {
            yield return weekly;
        }

        HashSet<DateOnly> taken = [];
        foreach (ClassSession session in sessions)
        {
            bool isInPlace = weekly is not null && Falls(weekly, session.Date) && taken.Add(session.Date);
            yield return new CalendarEntry
            {
                Uid = isInPlace ? weekly!.Uid : UidOf(book.ClubKey, "session", session.Id),
                Title = group.Title,
                Date = session.Date,
                Starts = session.Starts ?? group.Starts,
                Minutes = session.Minutes ?? group.Minutes,
                Place = group.Place,
                Words = WordsOf(session),
                InPlaceOf = isInPlace ? session.Date : null,
                InPlaceOfStart = isInPlace ? group.Starts : null,
            };
        }
    }

    // It begins with the first session on its day of the week; before there is any, in the present week.
    private static CalendarEntry? Weekly(BookOut book, ClubClass group, ClassSession[] sessions)
    {
        if (group.Weekday is not { } weekday)
        {
            return null;
        }

        DateOnly first = sessions.Where(s => s.Date.DayOfWeek == weekday).Select(s => (DateOnly?)s.Date).FirstOrDefault()
            ?? book.Today.AddDays(((int)weekday - (int)book.Today.DayOfWeek + 7) % 7);
        return group.EndedOn < first ? null : new CalendarEntry
        {
            Uid = UidOf(book.ClubKey, "class", group.Id),
            Title = group.Title,
            Date = first,
            Starts = group.Starts,
            Minutes = group.Minutes,
            Place = group.Place,
            Words = group.Level.Length > 0 ? $"Level: {group.Level}" : "",
            IsWeekly = true,
            Until = group.EndedOn,
        };
    }

    private static bool Falls(CalendarEntry weekly, DateOnly day)
        => day >= weekly.Date && day.DayOfWeek == weekly.Date.DayOfWeek && !(weekly.Until < day);

    private static string WordsOf(ClassSession session) => string.Join('\n', session.Items
        .Where(i => i.Title.Length > 0)
        .GroupBy(i => i.Role)
        .OrderBy(g => g.Min(session.Items.ToList().IndexOf))
        .Select(g => $"{(session.IsHeld ? RoleWords.Done(g.Key) : RoleWords.Planned(g.Key))}: {string.Join(", ", g.Select(i => i.Title))}"));
}
