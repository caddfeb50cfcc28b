using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Scuff.Repertoire.Storage;

/// <summary>
/// From rows of the book to what is handed out. Asked without the mapping of the tables, so that the first list is there at once; all that stands
/// in a statement is numbers.
/// </summary>
internal static class BookRows
{
    /// <summary>The columns of a class, for <see cref="Class"/>.</summary>
    public const string ClassColumns = "c.Key, c.Title, c.Level, c.Weekday, c.Starts, c.Minutes, c.Place, c.People, c.Notes, c.EndedOn";

    /// <summary>The columns of an evening, for <see cref="Evening"/>; <c>e.Plan</c> follows where it is wanted.</summary>
    public const string EveningColumns = "e.Key, e.Title, e.Date, e.Starts, e.Minutes, e.Place, e.ClassKey, e.Revision";

    /// <summary>How many columns an evening has without its plan.</summary>
    public const int EveningWidth = 8;

    /// <summary>A class from its columns.</summary>
    public static ClubClass Class(SqliteDataReader r) => new()
    {
        Id = Ids.Class(r.GetInt64(0)),
        Title = r.GetString(1),
        Level = r.GetString(2),
        Weekday = r.IsDBNull(3) ? null : (DayOfWeek)r.GetInt32(3),
        Starts = r.IsDBNull(4) ? null : Time(r, 4),
        Minutes = r.GetInt32(5),
        Place = r.GetString(6),
        People = Number(r, 7),
        Notes = r.GetString(8),
        EndedOn = r.IsDBNull(9) ? null : Day(r, 9),
    };

    /// <summary>Sessions with their dances, two questions for all of them.</summary>
    /// <param name="connection">The database.</param>
    /// <param name="rest">What follows <c>FROM Sessions s</c>.</param>
    public static List<ClassSession> Sessions(SqliteConnection connection, string rest)
    {
        List<(long Key, ClassSession Session)> sessions = Rows.Ask(
            connection,
            $"SELECT s.Key, s.ClassKey, s.Date, s.Starts, s.Minutes, s.IsHeld, s.People, s.HowItWent FROM Sessions s {rest}",
            r => (r.GetInt64(0), new ClassSession
            {
                Id = Ids.Session(r.GetInt64(0)),
                ClassId = Ids.Class(r.GetInt64(1)),
                Date = Day(r, 2),
                Starts = r.IsDBNull(3) ? null : Time(r, 3),
                Minutes = Number(r, 4),
                IsHeld = r.GetBoolean(5),
                People = Number(r, 6),
                HowItWent = r.GetString(7),
            }));
        if (sessions.Count == 0)
        {
            return [];
        }

        ILookup<long, SessionItem> items = Rows.Ask(
            connection,
            $"""
            SELECT i.SessionKey, i.Role, i.DanceKey, i.Title, i.Revision, i.Minutes, i.Note FROM SessionItems i
            WHERE i.SessionKey IN ({string.Join(',', sessions.Select(s => s.Key))}) ORDER BY i.SessionKey, i.Place
            """,
            r => (Session: r.GetInt64(0), Item: new SessionItem
            {
                Role = (ItemRole)r.GetInt32(1),
                DanceId = r.IsDBNull(2) ? null : Ids.Dance(r.GetInt64(2)),
                Title = r.GetString(3),
                Revision = Number(r, 4),
                Minutes = Number(r, 5),
                Note = r.GetString(6),
            })).ToLookup(i => i.Session, i => i.Item);
        return sessions.ConvertAll(s => s.Session with { Items = items[s.Key].ToValueList() });
    }

    /// <summary>An evening from its columns, without its plan.</summary>
    public static EveningRow Evening(SqliteDataReader r) => new(
        Ids.Evening(r.GetInt64(0)),
        r.GetString(1),
        Day(r, 2),
        Time(r, 3),
        r.GetInt32(4),
        r.GetString(5),
        r.IsDBNull(6) ? null : Ids.Class(r.GetInt64(6)),
        r.GetInt32(7));

    /// <summary>A day, as <see cref="ClubDatabase"/> writes it.</summary>
    public static DateOnly Day(SqliteDataReader r, int column) => DateOnly.FromDayNumber(r.GetInt32(column));

    /// <summary>A condition on a column of days; nothing when there is no limit.</summary>
    /// <param name="conditions">Where it is added.</param>
    /// <param name="column">The column.</param>
    /// <param name="from">The first day, or null.</param>
    /// <param name="to">The last day, or null.</param>
    public static void Between(List<string> conditions, string column, DateOnly? from, DateOnly? to)
    {
        if (from is { } first)
        {
            conditions.Add(string.Create(CultureInfo.InvariantCulture, $"{column} >= {first.DayNumber}"));
        }

        if (to is { } last)
        {
            conditions.Add(string.Create(CultureInfo.InvariantCulture, $"{column} <= {last.DayNumber}"));
        }
    }

    /// <summary>Conditions that all hold; nothing when there are none.</summary>
    public static string Where(List<string> conditions) => conditions.Count == 0 ? "" : $"WHERE {string.Join(" AND ", conditions)}";

    private static int? Number(SqliteDataReader r, int column) => r.IsDBNull(column) ? null : r.GetInt32(column);

    // as ClubDatabase writes it
    private static TimeOnly Time(SqliteDataReader r, int column)
    {
        int minutes = r.GetInt32(column);
        return new TimeOnly(minutes / 60, minutes % 60);
    }
}
