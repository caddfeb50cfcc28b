using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire;

/// <summary>The dances of a club.</summary>
public sealed class ClubDances
{
    // so many texts are read and written at once where there are many
    private const int Batch = 100;

    private static readonly string[] SignColumns =
        [nameof(DanceEntry.Title), nameof(DanceEntry.Choreographer), nameof(DanceEntry.Songs), nameof(DanceEntry.Tags)];

    private readonly Club _club;

    internal ClubDances(Club club) => _club = club;

    /// <summary>Saves that follow each other within this time, by one hand, are one session of editing: ten minutes.</summary>
    public static TimeSpan EditSession { get; } = TimeSpan.FromMinutes(10);

    /// <summary>Adds a dance. In a linked folder it gets a file named after its title.</summary>
    /// <param name="text">Its text; line ends become line feeds.</param>
    /// <param name="hand">Who brings it (<see cref="Hands"/>).</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public StoredDance Add(string text, string hand)
    {
        ReadDance read = ReadDance.Of(text, _club.Reader);
        return _club.Linked.Around(
            before: null,
            () => _club.Store.Write(db => new DanceWriting(db, _club.Now).Add(read, hand).Key),
            after: key => [key],
            (key, _) => Get(Ids.Dance(key))!);
    }

    /// <summary>A dance, in the bin or not; null when there is none of that id.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public StoredDance? Get(string id)
    {
        if (Ids.DanceKey(id) is not long key)
        {
            return null;
        }

        _club.Store.Prepare();
        return _club.Store.Ask(connection => Rows.Ask(
            connection,
            $"SELECT {Rows.DanceColumns}, t.Text FROM Dances r JOIN DanceTexts t ON t.Key = r.Key WHERE r.Key = {key.ToString(CultureInfo.InvariantCulture)}",
            r => new StoredDance(Rows.Dance(r), r.GetString(Rows.DanceWidth)))) is [var dance] ? dance : null;
    }

    /// <summary>
    /// Saves a text. Someone else's text is never written over unseen: the save must say upon which revision it was written. The very text that is
    /// there already is a success, so a save whose answer was lost can be sent again. A dance in the bin comes back from it.
    /// </summary>
    /// <remarks>
    /// The text before is kept as a version when it was saved more than <see cref="EditSession"/> ago or by another hand. Versions that nobody
    /// named are thinned out with age: of the last day all stay, of the seven days before that the last of every hour, of the twelve weeks before
    /// that the last of every day, and of what is older the last of every week.
    /// </remarks>
    /// <param name="id">The dance.</param>
    /// <param name="text">The new text.</param>
    /// <param name="baseRevision">The revision it was written upon.</param>
    /// <param name="hand">Who saves: for a page a name of its own, the same from its opening to its closing.</param>
    /// <exception cref="ClubTrouble">It could not be written; the text that was there is untouched.</exception>
    public SaveOutcome Save(string id, string text, int baseRevision, string hand)
    {
        if (Ids.DanceKey(id) is not long key)
        {
            return new SaveOutcome.Gone();
        }

        ReadDance read = ReadDance.Of(text, _club.Reader);
        return _club.Linked.Around(
            before: key,
            () => _club.Store.Write(db => Saved(db, key, read, baseRevision, hand)),
            after: outcome => outcome is SaveOutcome.Saved ? [key] : [],
            (outcome, trouble) => outcome is SaveOutcome.Saved saved ? saved with { FileTrouble = trouble } : outcome);
    }

    /// <summary>Puts a dance into the bin. In a linked folder its file goes; its text is in the bin.</summary>
    /// <returns>Whether there was such a dance outside the bin.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool Remove(string id) => InBin(id, isGoing: true);

    /// <summary>Takes a dance out of the bin.</summary>
    /// <returns>Whether there was such a dance in the bin.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool BringBack(string id) => InBin(id, isGoing: false);

    /// <summary>Removes what lies in the bin for good, with its versions.</summary>
    /// <returns>How many dances that were.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public int EmptyBin()
    {
        List<long> gone = _club.Store.Write(db =>
        {
            List<DanceEntry> binned = [.. db.Dances.Where(d => d.RemovedAt != null)];
            foreach (DanceEntry dance in binned)
            {
                WordIndex.Drop(db, dance);
            }

            db.Dances.RemoveRange(binned);
            return binned.ConvertAll(d => d.Key);
        });
        _club.TellDances(gone);
        return gone.Count;
    }

    /// <summary>Gives a dance these tags instead of those it has. White space at the ends goes, and so do empty ones and repetitions.</summary>
    /// <returns>The tags as kept; null when there is no such dance.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public ValueList<string>? SetTags(string id, IReadOnlyList<string> tags)
    {
        ValueList<string> tidy = TagLine.Tidy(tags);
        bool isThere = Ids.DanceKey(id) is long key && _club.Store.Write(db =>
        {
            if (Find(db, key) is not { } entry)
            {
                return false;
            }

            new DanceWriting(db, _club.Now).SetTags(entry, tidy);
            return true;
        });
        if (!isThere)
        {
            return null;
        }

        _club.TellDances([Ids.DanceKey(id)!.Value]);
        return tidy;
    }

    /// <summary>The tags in use, in order of the alphabet.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<TagCount> Tags()
        => TagLine.Count(_club.Store.Read(db => db.Dances.Where(d => d.RemovedAt == null && d.Tags != "").OrderBy(d => d.SavedAt).Select(d => d.Tags).ToList()));

    /// <summary>The levels in use outside the bin, in order of the alphabet.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<string> Levels() => _club.Store.Read(db => db.Dances
        .Where(d => d.RemovedAt == null && d.Level != "").Select(d => d.Level).Distinct().OrderBy(l => l).ToList()).ToValueList();

    /// <summary>Looks for dances. Any words are allowed.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public DancePage Search(DanceQuery query)
    {
        List<string> conditions = [query.InBin ? "r.RemovedAt IS NOT NULL" : "r.RemovedAt IS NULL"];
        Dictionary<string, object> values = [];
        if (query.Tag is { } tag)
        {
            conditions.Add("instr(r.FoldedTags, $tag) > 0");
            values["$tag"] = TagLine.Sought(tag);
        }

        if (query.Level is { } level)
        {
            conditions.Add("r.Level = $level");
            values["$level"] = level;
        }

        if (query.Walls is int walls)
        {
            conditions.Add("r.Walls = $walls");
            values["$walls"] = walls;
        }

        if (query.OnlyWithComplaints)
        {
            conditions.Add("r.Errors + r.Questions + r.Warnings > 0");
        }

        string order = query.Order switch
        {
            DanceOrder.LastSaved => "r.SavedAt DESC, r.FoldedTitle, r.Key",
            DanceOrder.LastAdded => "r.AddedAt DESC, r.Key DESC",
            DanceOrder.Choreographer => "r.FoldedChoreographer = '', r.FoldedChoreographer, r.FoldedTitle, r.Key",
            DanceOrder.Counts => "r.Counts IS NULL, r.Counts, r.FoldedTitle, r.Key",
            _ => "r.FoldedTitle, r.Key",
        };
        string? rank = query.Order == DanceOrder.BestMatch ? WordIndex.DanceRank : null;
        return _club.Store.Ask(connection =>
        {
            List<long> keys = WordIndex.Keys(
                connection, "Dances", "DanceWords", query.Words, SignColumns, conditions, order, rank, values);
            List<long> page = [.. keys.Skip(Math.Max(0, query.Skip)).Take(Math.Max(0, query.Take))];
            return new DancePage(Rows.Page(connection, Rows.DanceColumns, "Dances", page, Rows.Dance).ToValueList(), keys.Count);
        });
    }

    /// <summary>All dances outside the bin, by title; cheaper than a search, since no text or index is looked at.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DanceRow> Every() => _club.Store.Ask(connection => Rows.Ask(
        connection, $"SELECT {Rows.DanceColumns} FROM Dances r WHERE r.RemovedAt IS NULL ORDER BY r.FoldedTitle, r.Key", Rows.Dance)).ToValueList();

    /// <summary>
    /// Dances outside the bin by what she types: the one of that id; else those of just that title, case, accents and signs aside; else those whose
    /// title begins so.
    /// </summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DanceRow> Named(string typed)
    {
        ValueList<DanceRow> all = Every();
        return all.FirstOrDefault(d => d.Id == typed) is { } named ? [named] : Naming.Find(all, d => d.Facts.Title, typed);
    }

    /// <summary>Dances outside the bin that look like one and the same. A group is left out when a surer reason names all of it.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DuplicateGroup> Duplicates()
    {
        var dances = _club.Store.Read(db => db.Dances.Where(d => d.RemovedAt == null).OrderBy(d => d.Key)
            .Select(d => new { d.Key, d.TextDigest, d.Fingerprint, d.FoldedTitle }).ToList());
        List<DuplicateGroup> groups = [];
        List<HashSet<long>> told = [];
        foreach ((DuplicateReason reason, var alike) in new[]
        {
            (DuplicateReason.SameText, dances.GroupBy(d => d.TextDigest)),
            (DuplicateReason.SameSteps, dances.GroupBy(d => d.Fingerprint)),
            (DuplicateReason.SameTitle, dances.GroupBy(d => d.FoldedTitle)),
        })
        {
            foreach (List<long> keys in alike.Where(g => g.Key.Length > 0).Select(g => g.Select(d => d.Key).ToList()).Where(k => k.Count > 1))
            {
                if (!told.Exists(t => t.IsSupersetOf(keys)))
                {
                    groups.Add(new DuplicateGroup(reason, keys.Select(Ids.Dance).ToValueList()));
                    told.Add([.. keys]);
                }
            }
        }

        return groups.ToValueList();
    }

    /// <summary>Keeps the present text as a version under a name. Named versions stay until the dance goes for good.</summary>
    /// <returns>The version; null when there is no such dance.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public DanceVersion? KeepVersion(string id, string name)
    {
        string shown = string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if (shown.Length == 0)
        {
            // without a name it would be thinned out, and that is not what was asked for
            shown = string.Create(CultureInfo.InvariantCulture, $"kept {_club.Now:yyyy-MM-dd HH:mm}");
        }

        DanceVersion? kept = Ids.DanceKey(id) is long key
            ? _club.Store.Write(db => Find(db, key) is { } entry ? Rows.Of(new DanceWriting(db, _club.Now).Keep(entry, shown)) : null)
            : null;
        if (kept is not null)
        {
            _club.TellDances([Ids.DanceKey(id)!.Value]);
        }

        return kept;
    }

    /// <summary>The versions of a dance, latest first; empty when there is no such dance.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DanceVersion> Versions(string id) => Ids.DanceKey(id) is long key
        ? _club.Store.Read(db => db.Versions.Where(v => v.DanceKey == key).OrderByDescending(v => v.Number)
            .Select(v => new DanceVersion(v.Number, v.Name, v.SavedAt, v.Hand, v.Revision)).ToList()).ToValueList()
        : [];

    /// <summary>The text of a version; null when there is none of that number.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? VersionText(string id, int number) => Ids.DanceKey(id) is long key
        ? _club.Store.Read(db => db.Versions.Where(v => v.DanceKey == key && v.Number == number).Select(v => v.Text).SingleOrDefault())
        : null;

    /// <summary>The text that a dance had at a revision: the present one, or a version; null when it was not kept.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? TextOf(string id, int revision) => Ids.DanceKey(id) is long key
        ? _club.Store.Ask(connection => Rows.Ask(
            connection,
            string.Create(
                CultureInfo.InvariantCulture,
                $"""
                SELECT t.Text FROM Dances d JOIN DanceTexts t ON t.Key = d.Key WHERE d.Key = {key} AND d.Revision = {revision}
                UNION ALL SELECT v.Text FROM Versions v WHERE v.DanceKey = {key} AND v.Revision = {revision}
                """),
            r => r.GetString(0))) is [var text, ..] ? text : null
        : null;

    /// <summary>
    /// Makes a version the present text: a save like another, by <see cref="Hands.Version"/>, so the text before it becomes a version.
    /// </summary>
    /// <exception cref="ClubTrouble">There is no such version, or it could not be written.</exception>
    public SaveOutcome GoBack(string id, int number, int baseRevision)
        => VersionText(id, number) is { } text
            ? Save(id, text, baseRevision, Hands.Version)
            : throw new ClubTrouble(ClubTroubleKind.NotFound, "There is no such version any more.");

    /// <summary>Dances whose facts another version of the program read, and which <see cref="RefreshFacts"/> would read again.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<string> NeedingFacts() => NeedingKeys().Select(Ids.Dance).ToValueList();

    /// <summary>Reads the facts again of dances that need it. Can be stopped at any time and goes on where it stood.</summary>
    /// <param name="cancel">Stops it.</param>
    /// <returns>How many were read.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public int RefreshFacts(CancellationToken cancel)
    {
        int done = 0;
        foreach (long[] keys in NeedingKeys().Chunk(Batch))
        {
            if (cancel.IsCancellationRequested)
            {
                break;
            }

            List<(long Key, ReadDance Read)> read = _club.Store.Read(db => db.DanceTexts.AsNoTracking().Where(t => keys.Contains(t.Key)).ToList())
                .ConvertAll(t => (t.Key, ReadDance.Of(t.Text, _club.Reader)));
            List<long> changed = _club.Store.Write(db =>
            {
                DanceWriting writing = new(db, _club.Now);
                List<long> same = [];
                foreach ((long key, ReadDance dance) in read)
                {
                    // whoever saved meanwhile brought new facts along
                    if (Find(db, key) is { } entry && entry.Body.Text == dance.Text)
                    {
                        writing.Replace(entry, dance, entry.Hand);
                        same.Add(key);
                    }
                }

                return same;
            });
            _club.TellDances(changed);
            done += changed.Count;
        }

        RefreshTaught(cancel);
        return done;
    }

    /// <summary>Takes in texts, in one transaction for each batch; see <see cref="Club.Import"/>.</summary>
    internal (List<long> Added, List<long> Replaced, int AlreadyHere) Import(IReadOnlyList<ReadDance> dances, SameTitle sameTitle)
    {
        (List<long> Added, List<long> Replaced, int AlreadyHere) all = ([], [], 0);
        foreach (ReadDance[] batch in dances.Chunk(Batch))
        {
            // gathered apart, so that a batch that fails is not told
            (List<long> added, List<long> replaced, int alreadyHere) = _club.Store.Write(db => Imported(db, batch, sameTitle));
            all.Added.AddRange(added);
            all.Replaced.AddRange(replaced);
            all.AlreadyHere += alreadyHere;
        }

        return all;
    }

    /// <summary>Titles and texts of all dances outside the bin, the eldest first.</summary>
    internal IEnumerable<(string Title, string Text)> All()
    {
        List<long> keys = _club.Store.Read(db => db.Dances.Where(d => d.RemovedAt == null).OrderBy(d => d.Key).Select(d => d.Key).ToList());
        return keys.Chunk(Batch).SelectMany(batch => _club.Store.Read(db => db.Dances.AsNoTracking().Include(d => d.Body)
            .Where(d => batch.Contains(d.Key)).OrderBy(d => d.Key).ToList())).Select(d => (d.Title, d.Body.Text));
    }

    /// <summary>A dance with its text, to be changed.</summary>
    internal static DanceEntry? Find(ClubDatabase db, long key) => db.Dances.Include(d => d.Body).SingleOrDefault(d => d.Key == key);

    private (List<long> Added, List<long> Replaced, int AlreadyHere) Imported(ClubDatabase db, ReadDance[] dances, SameTitle sameTitle)
    {
        (List<long> Added, List<long> Replaced, int AlreadyHere) done = ([], [], 0);
        DanceWriting writing = new(db, _club.Now);
        foreach (ReadDance dance in dances)
        {
            string digest = DanceWriting.DigestOf(dance.Text);
            if (db.Dances.Any(d => d.RemovedAt == null && d.TextDigest == digest && d.Body.Text == dance.Text))
            {
                done.AlreadyHere++;
                continue;
            }

            string title = Folding.FoldLine(dance.Facts.Title);
            List<long> namesakes = sameTitle == SameTitle.Replace && title.Length > 0
                ? [.. db.Dances.Where(d => d.RemovedAt == null && d.FoldedTitle == title).Select(d => d.Key).Take(2)]
                : [];
            if (namesakes is [long namesake])
            {
                writing.Replace(Find(db, namesake)!, dance, Hands.Import);
                done.Replaced.Add(namesake);
            }
            else
            {
                done.Added.Add(writing.Add(dance, Hands.Import).Key);
            }
        }

        return done;
    }

    private List<long> NeedingKeys()
        => _club.Store.Read(db => db.Dances.Where(d => d.FactsBy != _club.Reader.Version).OrderByDescending(d => d.SavedAt).Select(d => d.Key).ToList());

    // Versions that sessions name are compared with the present text, so both must have been read by one program.
    private void RefreshTaught(CancellationToken cancel)
    {
        string by = _club.Reader.Version;
        List<long> needing = _club.Store.Read(db => db.Versions
            .Where(v => v.FactsBy != by && v.Revision != null && db.SessionItems.Any(i => i.DanceKey == v.DanceKey && i.Revision == v.Revision))
            .OrderBy(v => v.Key).Select(v => v.Key).ToList());
        foreach (long[] keys in needing.Chunk(Batch).TakeWhile(_ => !cancel.IsCancellationRequested))
        {
            List<(long Key, string Print)> read = _club.Store.Read(db => db.Versions.Where(v => keys.Contains(v.Key)).Select(v => new { v.Key, v.Text }).ToList())
                .ConvertAll(v => (v.Key, _club.Reader.Read(v.Text).Fingerprint));
            _club.Store.Write(db =>
            {
                foreach ((long key, string print) in read)
                {
                    db.Versions.Where(v => v.Key == key).ExecuteUpdate(v => v.SetProperty(x => x.Fingerprint, print).SetProperty(x => x.FactsBy, by));
                }

                return true;
            });
        }
    }

    private SaveOutcome Saved(ClubDatabase db, long key, ReadDance read, int baseRevision, string hand)
    {
        if (Find(db, key) is not { } entry)
        {
            return new SaveOutcome.Gone();
        }

        if (entry.Revision != baseRevision && entry.Body.Text != read.Text)
        {
            return new SaveOutcome.Changed(entry.Revision, entry.Body.Text);
        }

        entry.RemovedAt = null;
        new DanceWriting(db, _club.Now).Replace(entry, read, hand);
        return new SaveOutcome.Saved(entry.Revision);
    }

    private bool InBin(string id, bool isGoing) => Ids.DanceKey(id) is long key && _club.Linked.Around(
        before: isGoing ? key : null,
        () => _club.Store.Write(db =>
        {
            if (db.Dances.Find(key) is not { } entry || entry.RemovedAt.HasValue == isGoing)
            {
                return false;
            }

            entry.RemovedAt = isGoing ? _club.Now : null;
            return true;
        }),
        after: isChanged => isChanged ? [key] : [],
        (isChanged, _) => isChanged);
}
