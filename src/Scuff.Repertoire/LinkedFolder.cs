using Microsoft.EntityFrameworkCore;
using Scuff.Repertoire.Backups;
using Scuff.Repertoire.Files;
using Scuff.Repertoire.Folders;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire;

/// <summary>
/// A folder of <c>.dance</c> files that <em>is</em> the library: every file in it (not in folders within) is a dance, every save is written to the
/// file, and edits made outside are picked up. The club knows for each dance which file it is and what the file held when both last agreed.
/// </summary>
/// <remarks>
/// A file that vanishes puts its dance into the bin; a file that is renamed is known again by its content. When file and club have both changed,
/// the text of the file becomes the dance's and that of the club a named version, and both are told. When all files vanish at once, nothing is
/// concluded: more likely the drive is away.
/// </remarks>
public sealed class LinkedFolder
{
    private const string PathSetting = ".folder";
    private const string Clash = "from the club, when the file was changed too";

    // so many dances are written at once where there are many
    private const int Batch = 100;

    private readonly Club _club;

    // One look or save at a time, so that a file and its row change together.
    private readonly Lock _gate = new();

    private volatile string? _path;
    private FolderWatch? _watch;
    private bool _isClosed;

    internal LinkedFolder(Club club)
    {
        _club = club;
        _path = club.Settings.Read(PathSetting);
    }

    /// <summary>Full path of the folder; null when none is linked.</summary>
    public string? Path => _path;

    /// <summary>
    /// Links a folder. Its files become dances (one whose text the club has already becomes that dance's file); dances of the club that have no
    /// file get one. Another folder that was linked is let go.
    /// </summary>
    /// <param name="path">The folder; it must be there, outside the club's own.</param>
    /// <exception cref="ClubTrouble">The folder is not there or cannot be read.</exception>
    public FolderReport Link(string path)
    {
        string full = System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(path));
        if (!Directory.Exists(full))
        {
            throw new ClubTrouble(ClubTroubleKind.Folder, $"There is no folder named {path}.");
        }

        if (IsWithin(_club.Folder, full))
        {
            throw new ClubTrouble(
                ClubTroubleKind.Folder,
                $"{path} belongs to the club itself. Link a folder of your own, such as one in your documents.");
        }

        FolderReport report;
        lock (_gate)
        {
            // a folder that cannot be read is refused before the old one is let go
            _ = DanceFolder.Names(full);
            LinkTo(full);
            report = Scan(full).ToReport();
            _watch = Watch(full);
        }

        _club.Tell(report, []);
        return report;
    }

    /// <summary>Lets go of the folder. Files and dances stay as they are; they only follow each other no longer.</summary>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public void Unlink()
    {
        lock (_gate)
        {
            LinkTo(null);
        }
    }

    /// <summary>
    /// Looks through the folder and brings both sides together. The club does so by itself at opening and when the system tells of a change; asking
    /// is for changes it did not tell of (network drives, sleep). A report with nothing in it when no folder is linked.
    /// </summary>
    /// <exception cref="ClubTrouble">The club could not be read or written.</exception>
    public FolderReport Rescan()
    {
        FolderReport report = FolderReport.Nothing;
        lock (_gate)
        {
            if (_path is { } folder && !_isClosed)
            {
                report = Scan(folder).ToReport();
            }
        }

        _club.Tell(report, []);
        return report;
    }

    /// <summary>Begins to follow the folder that was linked when the club was last open.</summary>
    internal void Begin()
    {
        lock (_gate)
        {
            if (_path is { } folder)
            {
                _watch = Watch(folder);
                _ = Task.Run(Look);
            }
        }
    }

    /// <summary>Stops following it. A look that is under way ends first.</summary>
    internal void Close()
    {
        lock (_gate)
        {
            _isClosed = true;
            _watch?.Dispose();
        }
    }

    /// <summary>What <see cref="Unlink"/> writes, in another database.</summary>
    internal static void Forget(ClubDatabase db)
    {
        ClubSettings.Put(db, PathSetting, null);
        db.Dances.Where(d => d.FileName != null || d.FileDigest != null)
            .ExecuteUpdate(d => d
                .SetProperty(x => x.FileName, (string?)null).SetProperty(x => x.FileDigest, (string?)null).SetProperty(x => x.FileRevision, 0));
    }

    /// <summary>Reads again which folder is linked, after the database was replaced.</summary>
    internal string? Reread(Action replace)
    {
        lock (_gate)
        {
            string? before = _path;
            replace();
            _watch?.Dispose();
            _watch = null;
            _path = _club.Settings.Read(PathSetting);
            return before;
        }
    }

    /// <summary>
    /// Makes a change to dances with the folder beside it: edits of the file that were not picked up yet come first, so that the change meets them
    /// as it would meet another page's; afterwards the files follow. Everything is told at the end.
    /// </summary>
    /// <param name="before">The dance whose file is looked at first; null for none.</param>
    /// <param name="change">The change.</param>
    /// <param name="after">The dances that changed.</param>
    /// <param name="answer">The answer, given the first sentence about a file that could not be written, or null.</param>
    internal TAnswer Around<T, TAnswer>(long? before, Func<T> change, Func<T, IReadOnlyList<long>> after, Func<T, string?, TAnswer> answer)
    {
        FolderReport report = FolderReport.Nothing;
        T done;
        IReadOnlyList<long> changed;
        lock (_gate)
        {
            if (_path is { } folder)
            {
                Findings findings = new();
                if (before is long key)
                {
                    PickUp(folder, key, findings);
                }

                done = change();
                changed = after(done);
                Follow(folder, changed, findings);
                report = findings.ToReport();
            }
            else
            {
                done = change();
                changed = after(done);
            }
        }

        _club.Tell(report, changed);
        return answer(done, report.Troubles is [var first, ..] ? first : null);
    }

    private static bool IsWithin(string folder, string path)
    {
        string way = System.IO.Path.GetRelativePath(folder, path);
        return way != ".."
            && !way.StartsWith(".." + System.IO.Path.DirectorySeparatorChar, StringComparison.Ordinal)
            && !System.IO.Path.IsPathRooted(way);
    }

    // ---- within the gate ----

    private FolderWatch? Watch(string folder) => FolderWatch.Begin(folder, "*" + TextFile.DanceEnding, _club.Clock, Look);

    // What nobody waits for has nobody to tell a trouble to; the next look on demand meets it again.
    private void Look()
    {
        try
        {
            Rescan();
        }
        catch (ClubTrouble)
        {
        }
    }

    private void LinkTo(string? next)
    {
        _watch?.Dispose();
        _watch = null;
        _club.Store.Write(db =>
        {
            Forget(db);
            ClubSettings.Put(db, PathSetting, next);
            return true;
        });
        _path = next;
    }

    private List<KnownFile> Known() => _club.Store.Read(db => db.Dances.OrderBy(d => d.Key)
        .Select(d => new KnownFile(d.Key, d.FileName, d.FileDigest, d.RemovedAt != null)).ToList());

    private Findings Scan(string folder)
    {
        Findings findings = new();
        List<KnownFile> known = Known();
        List<SeenFile> seen;
        try
        {
            seen = [.. DanceFolder.Names(folder).Select(n => SeenFile.Read(folder, n))];
        }
        catch (ClubTrouble trouble)
        {
            findings.Troubles.Add($"{trouble.Message} The club has its dances all the same.");
            return findings;
        }

        findings.Troubles.AddRange(seen.Where(f => f.File.Trouble is not null).Select(f => f.File.Trouble!));
        int followed = known.Count(d => d.FileName is not null);
        if (seen.Count == 0 && followed > 1)
        {
            findings.Troubles.Add($"There is no dance in {folder} any more. If its drive is away, put it back; the club has all {followed} dances. "
                + "If you took them out on purpose, unlink the folder.");
            return findings;
        }

        FolderMatch match = FolderMatch.Of(
            known,
            [.. seen.Where(f => f.File.Trouble is null)],
            seen.Where(f => f.File.Trouble is not null).Select(f => f.Name).ToHashSet(StringComparer.Ordinal));
        Rename(match, findings);
        Bin(match.Gone, findings);
        foreach ((KnownFile Dance, SeenFile File)[] batch in match.Edited.Concat(match.Returned).Chunk(Batch))
        {
            TakeIn([.. batch.Select(b => (b.Dance.Key, b.File))], findings);
        }

        foreach (SeenFile[] batch in match.New.Chunk(Batch))
        {
            Add(batch, findings);
        }

        // what the club changed while the folder could not be reached, and dances that have no file yet
        Follow(folder, _club.Store.Read(db => db.Dances
            .Where(d => d.RemovedAt == null ? d.FileName == null || d.FileRevision != d.Revision : d.FileName != null)
            .OrderBy(d => d.Key).Select(d => d.Key).ToList()), findings);
        return findings;
    }

    private void Rename(FolderMatch match, Findings findings)
    {
        if (match.Renamed.Count == 0)
        {
            return;
        }

        Dictionary<long, string> names = match.Renamed.ToDictionary(r => r.Dance.Key, r => r.File.Name);
        _club.Store.Write(db =>
        {
            List<DanceEntry> dances = [.. db.Dances.Where(d => names.Keys.Contains(d.Key))];
            // names may have been exchanged, and no two dances may have one file even for a moment
            dances.ForEach(d => d.FileName = null);
            List<long> gone = match.Gone.ConvertAll(d => d.Key);
            db.Dances.Where(d => gone.Contains(d.Key)).ExecuteUpdate(d => d.SetProperty(x => x.FileName, (string?)null));
            db.SaveChanges();
            dances.ForEach(d => d.FileName = names[d.Key]);
            return true;
        });
        findings.Renamed.AddRange(names.Keys);
    }

    private void Bin(List<KnownFile> gone, Findings findings)
    {
        if (gone.Count == 0)
        {
            return;
        }

        List<long> keys = gone.ConvertAll(d => d.Key);
        findings.Binned.AddRange(_club.Store.Write(db =>
        {
            List<long> binned = [];
            foreach (DanceEntry dance in db.Dances.Where(d => keys.Contains(d.Key)))
            {
                dance.FileName = null;
                if (dance.RemovedAt is null && dance.FileRevision == dance.Revision)
                {
                    dance.RemovedAt = _club.Now;
                    binned.Add(dance.Key);
                }

                // one that was edited in the club since is alive, and gets its file again
            }

            return binned;
        }));
    }

    // Texts of files become the dances'.
    private void TakeIn(IReadOnlyList<(long Key, SeenFile File)> files, Findings findings)
    {
        ReadDance[] read = [.. files.AsParallel().AsOrdered().Select(f => ReadDance.Of(f.File.File.Text, _club.Reader))];
        Findings found = _club.Store.Write(db =>
        {
            Findings now = new();
            DanceWriting writing = new(db, _club.Now);
            for (int i = 0; i < files.Count; i++)
            {
                (long key, SeenFile file) = files[i];
                if (ClubDances.Find(db, key) is not { } dance)
                {
                    continue;
                }

                if (dance.FileRevision != dance.Revision && dance.Body.Text != read[i].Text)
                {
                    int version = writing.Keep(dance, Clash).Number;
                    now.Clashes.Add(new FolderClash(Ids.Dance(key), version));
                }

                bool isBack = dance.RemovedAt is not null;
                dance.RemovedAt = null;
                bool isOther = writing.Replace(dance, read[i], Hands.Outside);
                dance.FileName = file.Name;
                dance.FileDigest = file.Digest;
                dance.FileRevision = dance.Revision;
                if (isBack)
                {
                    now.Added.Add(key);
                }
                else if (isOther)
                {
                    now.Edited.Add(key);
                }
            }

            return now;
        });
        findings.Add(found);
    }

    // Files that are no dance yet: one whose text the club has becomes that dance's file.
    private void Add(IReadOnlyList<SeenFile> files, Findings findings)
    {
        ReadDance[] read = [.. files.AsParallel().AsOrdered().Select(f => ReadDance.Of(f.File.Text, _club.Reader))];
        findings.Added.AddRange(_club.Store.Write(db =>
        {
            List<long> added = [];
            DanceWriting writing = new(db, _club.Now);
            for (int i = 0; i < files.Count; i++)
            {
                string text = read[i].Text;
                DanceEntry? dance = db.Dances.Include(d => d.Body).FirstOrDefault(
                    d => d.FileName == null && d.RemovedAt == null && d.Body.Text == text);
                if (dance is null)
                {
                    dance = writing.Add(read[i], Hands.Outside);
                    added.Add(dance.Key);
                }

                dance.FileName = files[i].Name;
                dance.FileDigest = files[i].Digest;
                dance.FileRevision = dance.Revision;
                db.SaveChanges();
            }

            return added;
        }));
    }

    // An edit of the file of one dance that was not picked up yet.
    private void PickUp(string folder, long key, Findings findings)
    {
        if (Known(key) is not { FileName: { } name } dance)
        {
            return;
        }

        if (!File.Exists(System.IO.Path.Combine(folder, name)))
        {
            findings.Add(Scan(folder));
            return;
        }

        SeenFile file = SeenFile.Read(folder, name);
        if (file.File.Trouble is null && file.Digest != dance.FileDigest)
        {
            TakeIn([(key, file)], findings);
        }
    }

    private KnownFile? Known(long key) => _club.Store.Read(db => db.Dances.Where(d => d.Key == key)
        .Select(d => new KnownFile(d.Key, d.FileName, d.FileDigest, d.RemovedAt != null)).SingleOrDefault());

    // Files become what the club has. The texts are in the database before, so a trouble here loses nothing: the next look tries again.
    private void Follow(string folder, IReadOnlyList<long> keys, Findings findings)
    {
        HashSet<string>? taken = null;
        foreach (long[] batch in keys.Chunk(Batch))
        {
            List<DanceEntry> dances = _club.Store.Read(db => db.Dances.AsNoTracking().Include(d => d.Body)
                .Where(d => batch.Contains(d.Key)).OrderBy(d => d.Key).ToList());
            List<DanceEntry> done = [];
            foreach (DanceEntry dance in dances)
            {
                if (FollowOne(folder, dance, ref taken, findings))
                {
                    done.Add(dance);
                }
            }

            _club.Store.Write(db =>
            {
                foreach (DanceEntry now in done)
                {
                    db.Dances.Where(d => d.Key == now.Key).ExecuteUpdate(d => d
                        .SetProperty(x => x.FileName, now.FileName)
                        .SetProperty(x => x.FileDigest, now.FileDigest)
                        .SetProperty(x => x.FileRevision, now.FileRevision));
                }

                return true;
            });
            findings.Written.AddRange(done.Select(d => d.Key));
        }
    }

    // Whether the file was brought to what the dance is; what is known about the file stands in the entry then.
    private bool FollowOne(string folder, DanceEntry dance, ref HashSet<string>? taken, Findings findings)
    {
        string? name = dance.FileName;
        if (dance.RemovedAt is null ? name is not null && dance.FileRevision == dance.Revision : name is null)
        {
            return false;
        }

        try
        {
            SeenFile? there = name is not null && File.Exists(System.IO.Path.Combine(folder, name)) ? SeenFile.Read(folder, name) : null;
            if (there is not null && there.Digest != dance.FileDigest)
            {
                if (dance.RemovedAt is not null)
                {
                    // not what went into the bin: the file stays, and becomes a dance at the next look
                    dance.FileName = null;
                    return true;
                }

                findings.Troubles.Add(there.File.Trouble
                    ?? $"{name} was changed outside in this moment, so it was not written; look through the folder again.");
                return false;
            }

            if (dance.RemovedAt is not null)
            {
                File.Delete(System.IO.Path.Combine(folder, name!));
                dance.FileName = null;
                return true;
            }

            if (name is null)
            {
                taken ??= Taken(folder);
                name = SafeFileName.Free(SafeFileName.StemOf(dance.Title), TextFile.DanceEnding, taken.Contains);
                taken.Add(name);
            }

            byte[] bytes = BytesOf(dance.Body.Text, there?.File);
            WholeFile.Write(System.IO.Path.Combine(folder, name), stream => stream.Write(bytes));
            dance.FileName = name;
            dance.FileDigest = SeenFile.DigestOf(bytes);
            dance.FileRevision = dance.Revision;
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ClubTrouble)
        {
            findings.Troubles.Add(e is ClubTrouble ? e.Message : FileWords.NotWritten(System.IO.Path.Combine(folder, name ?? dance.Title), e));
            return false;
        }
    }

    // Names are taken whatever their case, and also those of files that are no dances or hidden.
    private static HashSet<string> Taken(string folder)
        => new(Directory.EnumerateFileSystemEntries(folder).Select(f => System.IO.Path.GetFileName(f)), StringComparer.OrdinalIgnoreCase);

    // As the file wrote its characters and line ends before, where that is UTF-8.
    private static byte[] BytesOf(string text, TextFile? before)
    {
        bool isWindows = before?.Text.Contains("\r\n", StringComparison.Ordinal) == true;
        byte[] mark = before?.Form == TextForm.Utf8WithMark ? [0xEF, 0xBB, 0xBF] : [];
        return [.. mark, .. System.Text.Encoding.UTF8.GetBytes(isWindows ? text.Replace("\n", "\r\n", StringComparison.Ordinal) : text)];
    }
}
