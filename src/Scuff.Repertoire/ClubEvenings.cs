using System.Globalization;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire;

/// <summary>The evenings of a club, with their programmes.</summary>
public sealed class ClubEvenings
{
    private readonly Club _club;

    internal ClubEvenings(Club club) => _club = club;

    /// <summary>The evenings of some days, the latest first, without their plans.</summary>
    /// <param name="from">The first day; null for no limit.</param>
    /// <param name="to">The last day; null for no limit.</param>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<EveningRow> List(DateOnly? from = null, DateOnly? to = null)
    {
        List<string> conditions = [];
        BookRows.Between(conditions, "e.Date", from, to);
        return _club.Store.Ask(connection => Rows.Ask(
            connection,
            $"SELECT {BookRows.EveningColumns} FROM Evenings e {BookRows.Where(conditions)} ORDER BY e.Date DESC, e.Starts DESC, e.Key DESC",
            BookRows.Evening)).ToValueList();
    }

    /// <summary>An evening; null when there is none of that id.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ClubEvening? Get(string id)
    {
        if (Ids.EveningKey(id) is not long key)
        {
            return null;
        }

        _club.Store.Prepare();
        string named = key.ToString(CultureInfo.InvariantCulture);
        return _club.Store.Ask(connection => Rows.Ask(
            connection,
            $"SELECT {BookRows.EveningColumns}, e.Plan FROM Evenings e WHERE e.Key = {named}",
            r => Whole(BookRows.Evening(r), r.GetString(BookRows.EveningWidth)))) is [var found] ? found : null;
    }

    /// <summary>
    /// Keeps an evening: a new one when its id is empty, else in the place of what it was. Someone else's programme is never written over unseen: the
    /// save must say upon which revision it was made. The very state that is there already is a success, so a save whose answer was lost can be sent
    /// again.
    /// </summary>
    /// <param name="evening">The evening; its own revision is not looked at.</param>
    /// <param name="baseRevision">The revision it was made upon; 0 for a new one.</param>
    /// <exception cref="ClubTrouble">It cannot be kept as it is, its class is no more, or it could not be written.</exception>
    public EveningOutcome Save(ClubEvening evening, int baseRevision)
    {
        ClubEvening tidy = BookRules.Tidy(evening);
        EveningOutcome outcome = tidy.Id.Length == 0 || Ids.EveningKey(tidy.Id) is not null
            ? _club.Store.Write(db => Saved(db, tidy, baseRevision))
            : new EveningOutcome.Gone();
        if (outcome is EveningOutcome.Saved saved)
        {
            _club.Tell(new ClubChange { Evenings = [saved.Evening.Id] });
        }

        return outcome;
    }

    /// <summary>Removes an evening for good.</summary>
    /// <returns>Whether there was one.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool Remove(string id)
    {
        bool isThere = Ids.EveningKey(id) is long key && _club.Store.Write(db =>
        {
            if (db.Evenings.Find(key) is not { } entry)
            {
                return false;
            }

            db.Evenings.Remove(entry);
            return true;
        });
        if (isThere)
        {
            _club.Tell(new ClubChange { Evenings = [id] });
        }

        return isThere;
    }

    private static EveningOutcome Saved(ClubDatabase db, ClubEvening tidy, int baseRevision)
    {
        long? held = tidy.ClassId is not { } id ? null
            : Ids.ClassKey(id) is long key && db.Classes.Any(c => c.Key == key) ? key
            : throw new ClubTrouble(ClubTroubleKind.NotFound, "There is no such class any more.");
        EveningEntry? entry = tidy.Id.Length == 0 ? new EveningEntry { Revision = 0 } : db.Evenings.Find(Ids.EveningKey(tidy.Id));
        if (entry is null)
        {
            return new EveningOutcome.Gone();
        }

        if (entry.Revision > 0)
        {
            ClubEvening there = Whole(entry);
            if (there == tidy with { Revision = there.Revision })
            {
                return new EveningOutcome.Saved(there);
            }

            if (entry.Revision != baseRevision)
            {
                return new EveningOutcome.Changed(there);
            }
        }
        else
        {
            db.Evenings.Add(entry);
        }

        entry.Revision++;
        entry.Title = tidy.Title;
        entry.Date = tidy.Date;
        entry.Starts = tidy.Starts;
        entry.Minutes = tidy.Minutes;
        entry.Place = tidy.Place;
        entry.ClassKey = held;
        entry.Plan = tidy.Plan;
        db.SaveChanges();
        return new EveningOutcome.Saved(Whole(entry));
    }

    private static ClubEvening Whole(EveningEntry e) => Whole(
        new EveningRow(Ids.Evening(e.Key), e.Title, e.Date, e.Starts, e.Minutes, e.Place, e.ClassKey is long key ? Ids.Class(key) : null, e.Revision), e.Plan);

    private static ClubEvening Whole(EveningRow row, string plan) => new()
    {
        Id = row.Id,
        Title = row.Title,
        Date = row.Date,
        Starts = row.Starts,
        Minutes = row.Minutes,
        Place = row.Place,
        ClassId = row.ClassId,
        Plan = plan,
        Revision = row.Revision,
    };
}
