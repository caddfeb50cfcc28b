using Microsoft.EntityFrameworkCore;

namespace Scuff.Repertoire.Storage;

/// <summary>
/// Writes sessions, with the versions of dances that hang on them. Used within <see cref="ClubStore.Write"/>.
/// </summary>
/// <param name="db">The database.</param>
/// <param name="clock">The clock, and the zone whose days are those of the classes.</param>
/// <param name="reader">Reads the facts of a version that nobody read yet.</param>
internal sealed class SessionWriting(ClubDatabase db, TimeProvider clock, IDanceFactReader reader)
{
    private readonly DanceWriting _dances = new(db, clock.GetUtcNow());

    /// <summary>Dances that got a version because a session names their text.</summary>
    public List<long> Versioned { get; } = [];

    /// <summary>Writes a session in the place of what it was.</summary>
    /// <param name="entry">Its row, new or there.</param>
    /// <param name="session">What it is to be, tidy.</param>
    public void Put(SessionEntry entry, ClassSession session)
    {
        Dictionary<long, int> before = entry is { Key: > 0, IsHeld: true } ? Taught(entry.Key) : [];
        entry.Date = session.Date;
        entry.Starts = session.Starts;
        entry.Minutes = session.Minutes;
        entry.IsHeld = session.IsHeld;
        entry.People = session.People;
        entry.HowItWent = session.HowItWent;
        if (entry.Key == 0)
        {
            db.Sessions.Add(entry);
        }

        db.SaveChanges();
        db.SessionItems.Where(i => i.SessionKey == entry.Key).ExecuteDelete();
        for (int place = 0; place < session.Items.Count; place++)
        {
            SessionItem item = session.Items[place];
            DanceEntry? dance = item.DanceId is { } id && Ids.DanceKey(id) is long key ? ClubDances.Find(db, key) : null;
            if (dance is null && item.Title.Length == 0)
            {
                throw BookRules.Cannot("A dance of the session is not in the club any more. Name it by its title.");
            }

            db.SessionItems.Add(new SessionItemEntry
            {
                SessionKey = entry.Key,
                Place = place,
                Role = item.Role,
                DanceKey = dance?.Key,
                Title = item.Title.Length > 0 ? item.Title : dance!.Title,
                Revision = dance is not null && session.IsHeld ? Revision(dance, item.Revision, before, session.Date) : null,
                Minutes = item.Minutes,
                Note = item.Note,
            });
        }
    }

    private Dictionary<long, int> Taught(long session) => db.SessionItems
        .Where(i => i.SessionKey == session && i.DanceKey != null && i.Revision != null)
        .Select(i => new { Dance = i.DanceKey!.Value, Revision = i.Revision!.Value })
        .AsEnumerable()
        .GroupBy(i => i.Dance)
        .ToDictionary(g => g.Key, g => g.First().Revision);

    // What the caller says, else what this session said before, else the text that the dance had at the end of that day. Its text is kept.
    private int? Revision(DanceEntry dance, int? said, Dictionary<long, int> before, DateOnly day)
    {
        int? revision = said >= 1 && said <= dance.Revision ? said
            : before.TryGetValue(dance.Key, out int kept) ? kept
            : OnDay(dance, day);
        if (revision is int named)
        {
            Keep(dance, named);
        }

        return revision;
    }

    private int? OnDay(DanceEntry dance, DateOnly day)
    {
        DateTime midnight = day.AddDays(1).ToDateTime(TimeOnly.MinValue);
        DateTimeOffset end = new(midnight, clock.LocalTimeZone.GetUtcOffset(midnight));

        // typed in after she taught it: it is what she taught as far as anybody knows
        if (dance.SavedAt < end || dance.AddedAt >= end)
        {
            return dance.Revision;
        }

        return db.Versions.Where(v => v.DanceKey == dance.Key && v.Revision != null && v.SavedAt < end)
            .OrderByDescending(v => v.Revision).Select(v => v.Revision).FirstOrDefault();
    }

    private void Keep(DanceEntry dance, int revision)
    {
        VersionEntry? version = db.Versions.FirstOrDefault(v => v.DanceKey == dance.Key && v.Revision == revision);
        if (version is null && dance.Revision == revision)
        {
            _dances.Keep(dance, "");
            // the next place of the session may name it again
            db.SaveChanges();
            Versioned.Add(dance.Key);
        }
        else if (version is { FactsBy: "" })
        {
            version.Fingerprint = reader.Read(version.Text).Fingerprint;
            version.FactsBy = reader.Version;
        }
    }
}
