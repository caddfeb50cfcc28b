using System.Globalization;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire;

/// <summary>The book of a club: its classes, what they did and will do, and how well they know their dances.</summary>
public sealed class ClubBook
{
    private readonly Club _club;

    internal ClubBook(Club club) => _club = club;

    /// <summary>The classes, by weekday from Monday, those without one last; of a day by the time they begin, then by title.</summary>
    /// <param name="includeEnded">Whether those that do not meet any more are told too.</param>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<ClubClass> Classes(bool includeEnded = false)
    {
        string today = _club.Today.DayNumber.ToString(CultureInfo.InvariantCulture);
        return _club.Store.Ask(connection => Rows.Ask(
            connection,
            $"""
            SELECT {BookRows.ClassColumns} FROM Classes c {(includeEnded ? "" : $"WHERE c.EndedOn IS NULL OR c.EndedOn >= {today}")}
            ORDER BY c.Weekday IS NULL, (c.Weekday + 6) % 7, c.Starts IS NULL, c.Starts, c.Title, c.Key
            """,
            BookRows.Class)).ToValueList();
    }

    /// <summary>A class, ended or not; null when there is none of that id.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ClubClass? Class(string id)
    {
        if (Ids.ClassKey(id) is not long key)
        {
            return null;
        }

        _club.Store.Prepare();
        return _club.Store.Ask(connection => Rows.Ask(
            connection, $"SELECT {BookRows.ClassColumns} FROM Classes c WHERE c.Key = {Text(key)}", BookRows.Class)) is [var found] ? found : null;
    }

    /// <summary>
    /// Classes by what she types, as <see cref="ClubDances.Named"/> finds dances; ended ones only when no other is called so.
    /// </summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<ClubClass> Named(string typed)
    {
        ValueList<ClubClass> all = Classes(includeEnded: true);
        if (all.FirstOrDefault(c => c.Id == typed) is { } named)
        {
            return [named];
        }

        ValueList<ClubClass> meeting = Naming.Find(Classes(), c => c.Title, typed);
        return meeting.Count > 0 ? meeting : Naming.Find(all, c => c.Title, typed);
    }

    /// <summary>Keeps a class: a new one when its id is empty, else in the place of what it was.</summary>
    /// <returns>The class as it is kept, with its id.</returns>
    /// <exception cref="ClubTrouble">It cannot be kept as it is, there is no such class any more, or it could not be written.</exception>
    public ClubClass SaveClass(ClubClass saved)
    {
        ClubClass tidy = BookRules.Tidy(saved);
        ClassEntry entry = _club.Store.Write(db =>
        {
            ClassEntry row = tidy.Id.Length == 0 ? db.Classes.Add(new ClassEntry()).Entity : db.Classes.Find(ClassKey(tidy.Id)) ?? throw NoClass();
            row.Title = tidy.Title;
            row.Level = tidy.Level;
            row.Weekday = tidy.Weekday;
            row.Starts = tidy.Starts;
            row.Minutes = tidy.Minutes;
            row.Place = tidy.Place;
            row.People = tidy.People;
            row.Notes = tidy.Notes;
            row.EndedOn = tidy.EndedOn;
            return row;
        });
        tidy = tidy with { Id = Ids.Class(entry.Key) };
        _club.Tell(new ClubChange { Classes = [tidy.Id] });
        return tidy;
    }

    /// <summary>
    /// Removes a class. One that has held sessions is ended instead, on the day it last met or today, and stays with them, unless asked for good:
    /// then its sessions, marks and links go with it. Evenings that plan it stay, as socials.
    /// </summary>
    /// <param name="id">The class.</param>
    /// <param name="forGood">Whether held sessions go too.</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public ClassRemoval RemoveClass(string id, bool forGood = false)
    {
        ClassRemoval removal = Ids.ClassKey(id) is not long key ? ClassRemoval.Gone : _club.Store.Write(db =>
        {
            if (db.Classes.Find(key) is not { } entry)
            {
                return ClassRemoval.Gone;
            }

            if (!forGood && db.Sessions.Any(s => s.ClassKey == key && s.IsHeld))
            {
                DateOnly last = db.Sessions.Where(s => s.ClassKey == key && s.IsHeld).Max(s => s.Date);
                DateOnly end = last > _club.Today ? last : _club.Today;
                entry.EndedOn = entry.EndedOn is { } before && before < end ? before : end;
                return ClassRemoval.Ended;
            }

            db.Classes.Remove(entry);
            return ClassRemoval.Removed;
        });
        if (removal != ClassRemoval.Gone)
        {
            _club.Tell(new ClubChange { Classes = [id], People = removal == ClassRemoval.Removed });
        }

        return removal;
    }

    /// <summary>Looks for sessions, the latest first.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public SessionPage Sessions(SessionQuery query)
    {
        List<string> conditions = [];
        if (query.ClassId is { } id)
        {
            conditions.Add($"s.ClassKey = {Text(Ids.ClassKey(id) ?? 0)}");
        }

        BookRows.Between(conditions, "s.Date", query.From, query.To);
        if (query.IsHeld is { } isHeld)
        {
            conditions.Add($"s.IsHeld = {(isHeld ? 1 : 0)}");
        }

        string where = BookRows.Where(conditions);
        string page = string.Create(
            CultureInfo.InvariantCulture, $"ORDER BY s.Date DESC, s.Key DESC LIMIT {Math.Max(0, query.Take)} OFFSET {Math.Max(0, query.Skip)}");
        return _club.Store.Ask(connection => new SessionPage(
            BookRows.Sessions(connection, $"{where} {page}").ToValueList(),
            (int)ClubSchema.Number(connection, $"SELECT count(*) FROM Sessions s {where}")));
    }

    /// <summary>A session; null when there is none of that id.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ClassSession? Session(string id)
    {
        if (Ids.SessionKey(id) is not long key)
        {
            return null;
        }

        _club.Store.Prepare();
        return Read(key);
    }

    /// <summary>
    /// Keeps a session, planned or held: a new one when its id is empty, else in the place of what it was. A dance that the club does not have stays
    /// as its title.
    /// </summary>
    /// <remarks>
    /// A dance of a held session that says no revision gets the one that this session said before; else the one that its text had at the end of that
    /// day by the clock of this place, or the present one if it came into the club later; none when that text is known to nobody any more. The text of
    /// a revision that a session names is kept as a version as long as one names it.
    /// </remarks>
    /// <returns>The session as it is kept, with its id and its revisions.</returns>
    /// <exception cref="ClubTrouble">
    /// It cannot be kept as it is, there is no such session or class any more, or it could not be written.
    /// </exception>
    public ClassSession SaveSession(ClassSession saved)
    {
        ClassSession tidy = BookRules.Tidy(saved);
        (long key, List<long> versioned, string? moved) = _club.Store.Write(db =>
        {
            long held = ClassKey(tidy.ClassId);
            if (!db.Classes.Any(c => c.Key == held))
            {
                throw NoClass();
            }

            SessionEntry entry = tidy.Id.Length == 0 ? new SessionEntry { ClassKey = held } : db.Sessions.Find(SessionKey(tidy.Id)) ?? throw NoSession();
            string? before = entry.ClassKey == held ? null : Ids.Class(entry.ClassKey);
            entry.ClassKey = held;
            SessionWriting writing = new(db, _club.Clock, _club.Reader);
            writing.Put(entry, tidy);
            return (entry.Key, writing.Versioned, before);
        });
        _club.Tell(new ClubChange
        {
            Classes = moved is null ? [tidy.ClassId] : [tidy.ClassId, moved],
            Sessions = [Ids.Session(key)],
            Dances = versioned.Select(Ids.Dance).ToValueList(),
        });
        return Read(key) ?? throw NoSession();
    }

    /// <summary>Removes a session for good.</summary>
    /// <returns>Whether there was one.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool RemoveSession(string id)
    {
        long? held = Ids.SessionKey(id) is not long key ? null : _club.Store.Write(db =>
        {
            if (db.Sessions.Find(key) is not { } entry)
            {
                return (long?)null;
            }

            db.Sessions.Remove(entry);
            return entry.ClassKey;
        });
        if (held is long of)
        {
            _club.Tell(new ClubChange { Classes = [Ids.Class(of)], Sessions = [id] });
        }

        return held is not null;
    }

    /// <summary>Says how well a class knows a dance from a day on. A mark of the same day is replaced.</summary>
    /// <exception cref="ClubTrouble">There is no such class or dance, the day cannot be, or it could not be written.</exception>
    public void SetMark(KnownMark mark)
    {
        BookRules.Date(mark.Date);
        if (mark.Knowing is { } knowing && !Enum.IsDefined(knowing))
        {
            throw new ArgumentOutOfRangeException(nameof(mark), knowing, "There is no such mark.");
        }

        _club.Store.Write(db =>
        {
            (long held, long dance) = (ClassKey(mark.ClassId), Ids.DanceKey(mark.DanceId) ?? throw NoDance());
            if (!db.Classes.Any(c => c.Key == held))
            {
                throw NoClass();
            }

            if (!db.Dances.Any(d => d.Key == dance))
            {
                throw NoDance();
            }

            MarkEntry entry = db.Marks.Find(held, dance, mark.Date)
                ?? db.Marks.Add(new MarkEntry { ClassKey = held, DanceKey = dance, Date = mark.Date }).Entity;
            entry.Knowing = mark.Knowing;
            return true;
        });
        _club.Tell(new ClubChange { Classes = [mark.ClassId] });
    }

    /// <summary>How well a class knows each dance on a day; dances without a mark, or whose marks were taken back, are not told.</summary>
    /// <param name="classId">The class.</param>
    /// <param name="day">The day.</param>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<KnownMark> Marks(string classId, DateOnly day)
        // SQLite takes the other columns from the row that has the largest date: https://sqlite.org/lang_select.html#bareagg
        => AskMarks(classId, $"AND m.Date <= {Text(day.DayNumber)} GROUP BY m.DanceKey", "max(m.Date)").Where(m => m.Knowing is not null).ToValueList();

    /// <summary>All marks that a class got for a dance, the earliest first, also those that took earlier ones back.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<KnownMark> MarkHistory(string classId, string danceId)
        => AskMarks(classId, $"AND m.DanceKey = {Text(Ids.DanceKey(danceId) ?? 0)} ORDER BY m.Date", "m.Date").ToValueList();

    /// <summary>When a class danced each dance that it ever danced in a held session.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DancedDates> LastDanced(string classId)
    {
        List<(long Dance, int Day, ItemRole Role)> danced = _club.Store.Ask(connection => Rows.Ask(
            connection,
            $"""
            SELECT i.DanceKey, s.Date, i.Role FROM Sessions s JOIN SessionItems i ON i.SessionKey = s.Key
            WHERE s.ClassKey = {Text(Ids.ClassKey(classId) ?? 0)} AND s.IsHeld = 1 AND i.DanceKey IS NOT NULL ORDER BY s.Date
            """,
            r => (r.GetInt64(0), r.GetInt32(1), (ItemRole)r.GetInt32(2))));
        return danced.GroupBy(d => d.Dance).OrderBy(g => g.Key).Select(g => new DancedDates(
            Ids.Dance(g.Key),
            g.Select(d => d.Day).Distinct().Select(DateOnly.FromDayNumber).ToValueList(),
            g.Where(d => d.Role == ItemRole.Taught).Select(d => (DateOnly?)DateOnly.FromDayNumber(d.Day)).FirstOrDefault())).ToValueList();
    }

    /// <summary>
    /// For each dance outside the bin that a class was taught or revised from a known version: which one that last was, and whether there is a newer
    /// one now. By title.
    /// </summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<TaughtSheet> TaughtBefore(string classId) => _club.Store.Ask(connection => Rows.Ask(
        connection,
        $"""
        WITH taught AS (
            SELECT i.DanceKey AS DanceKey, max(s.Date) AS Date, i.Revision AS Revision
            FROM Sessions s JOIN SessionItems i ON i.SessionKey = s.Key
            WHERE s.ClassKey = {Text(Ids.ClassKey(classId) ?? 0)} AND s.IsHeld = 1 AND i.DanceKey IS NOT NULL AND i.Revision IS NOT NULL
                AND i.Role IN ({Text((int)ItemRole.Taught)}, {Text((int)ItemRole.Revised)})
            GROUP BY i.DanceKey)
        SELECT d.Key, d.Title, t.Date, t.Revision, d.Revision,
            t.Revision <> d.Revision AND NOT EXISTS (SELECT 1 FROM Versions v JOIN DanceTexts x ON x.Key = v.DanceKey
                WHERE v.DanceKey = d.Key AND v.Revision = t.Revision AND v.Text = x.Text),
            (SELECT v.Fingerprint <> d.Fingerprint FROM Versions v
                WHERE v.DanceKey = d.Key AND v.Revision = t.Revision AND v.FactsBy = d.FactsBy AND v.Fingerprint <> '' AND d.Fingerprint <> '' LIMIT 1)
        FROM taught t JOIN Dances d ON d.Key = t.DanceKey WHERE d.RemovedAt IS NULL ORDER BY d.FoldedTitle, d.Key
        """,
        r =>
        {
            bool isNewer = r.GetBoolean(5);
            bool? feet = !isNewer ? false : r.IsDBNull(6) ? null : r.GetBoolean(6);
            return new TaughtSheet(Ids.Dance(r.GetInt64(0)), r.GetString(1), BookRows.Day(r, 2), r.GetInt32(3), r.GetInt32(4), isNewer, feet);
        })).ToValueList();

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static long ClassKey(string id) => Ids.ClassKey(id) ?? throw NoClass();

    private static long SessionKey(string id) => Ids.SessionKey(id) ?? throw NoSession();

    private static ClubTrouble NoClass() => new(ClubTroubleKind.NotFound, "There is no such class any more.");

    private static ClubTrouble NoSession() => new(ClubTroubleKind.NotFound, "There is no such session any more.");

    private static ClubTrouble NoDance() => new(ClubTroubleKind.NotFound, "There is no such dance any more.");

    private ClassSession? Read(long key)
        => _club.Store.Ask(connection => BookRows.Sessions(connection, $"WHERE s.Key = {Text(key)}")) is [var found] ? found : null;

    private List<KnownMark> AskMarks(string classId, string rest, string date) => _club.Store.Ask(connection => Rows.Ask(
        connection,
        $"SELECT m.DanceKey, {date}, m.Knowing FROM Marks m WHERE m.ClassKey = {Text(Ids.ClassKey(classId) ?? 0)} {rest}",
        r => new KnownMark(classId, Ids.Dance(r.GetInt64(0)), BookRows.Day(r, 1), r.IsDBNull(2) ? null : (Knowing)r.GetInt32(2))));
}
