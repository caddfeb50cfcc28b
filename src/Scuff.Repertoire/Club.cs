using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Scuff.Repertoire.Backups;
using Scuff.Repertoire.Files;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire;

/// <summary>
/// A club: the dances, tracks and settings of one person or one group, kept in a folder. All members may be called from many threads at once;
/// writing is one at a time. Two programs may have the same club open: each sees what the other has saved.
/// </summary>
/// <remarks>
/// The folder holds <c>club.db</c> (SQLite with its two companions while it is open), <c>music/</c> (audio, each file named by the digest of its
/// content), and <c>kept/</c> (backups made before the database was brought to a newer form or replaced). What a member has returned from is on the
/// disk: the database is written ahead (WAL) with <c>synchronous=FULL</c>, of which SQLite's documentation says that transactions are durable
/// across a loss of power (https://sqlite.org/pragma.html#pragma_synchronous).
/// </remarks>
public sealed class Club : IDisposable
{
    private const string Kept = "kept";

    private Club(string folder, TimeProvider clock, IDanceFactReader reader, ClubStore store)
    {
        Folder = folder;
        Clock = clock;
        Reader = reader;
        Store = store;
        Music = new MusicFolder(folder);
        Settings = new ClubSettings(this);
        Dances = new ClubDances(this);
        Tracks = new ClubTracks(this);
        Book = new ClubBook(this);
        Evenings = new ClubEvenings(this);
        People = new ClubPeople(this);
        Linked = new LinkedFolder(this);
    }

    /// <summary>Told after every change, on the thread that made it. A change by another program is not told.</summary>
    public event EventHandler<ClubChange>? Changed;

    /// <summary>Full path of the folder.</summary>
    public string Folder { get; }

    /// <summary>Its dances.</summary>
    public ClubDances Dances { get; }

    /// <summary>Its tracks.</summary>
    public ClubTracks Tracks { get; }

    /// <summary>Its classes and sessions.</summary>
    public ClubBook Book { get; }

    /// <summary>Its evenings.</summary>
    public ClubEvenings Evenings { get; }

    /// <summary>The people she keeps, if any.</summary>
    public ClubPeople People { get; }

    /// <summary>Its settings.</summary>
    public ClubSettings Settings { get; }

    /// <summary>The folder of <c>.dance</c> files that is its library, if she linked one.</summary>
    public LinkedFolder Linked { get; }

    internal TimeProvider Clock { get; }

    internal IDanceFactReader Reader { get; }

    internal ClubStore Store { get; }

    internal MusicFolder Music { get; }

    internal DateTimeOffset Now => Clock.GetUtcNow();

    /// <summary>The day it is by the clock of this place.</summary>
    internal DateOnly Today => DateOnly.FromDateTime(Clock.GetLocalNow().DateTime);

    /// <summary>The folder of the backups that were made without asking.</summary>
    internal string KeptFolder => Path.Combine(Folder, Kept);

    /// <summary>
    /// Opens a club, and makes it where there is none. A database of an older form is brought to the present one, after a backup of it went into
    /// <c>kept/</c>. If a folder is linked, a look through it begins in the background.
    /// </summary>
    /// <param name="folder">The folder; made if needed.</param>
    /// <param name="clock">Tells the time of saves and the age of versions.</param>
    /// <param name="reader">Reads the facts of dances.</param>
    /// <exception cref="ClubTrouble">It is no club, of a newer form, damaged, held by another program, or the folder cannot be used.</exception>
    public static Club Open(string folder, TimeProvider clock, IDanceFactReader reader)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        ClubStore store = ClubStore.Open(full, database =>
        {
            using PassingFolder passing = PassingFolder.In(full);
            Keep(
                full,
                "before a newer form",
                clock.GetUtcNow(),
                stream => BackupFile.Write(stream, database, music: null, withPeople: true, passing, clock.GetUtcNow()));
        });
        try
        {
            WordIndex.Refresh(store);
            Club club = new(full, clock, reader, store);
            PassingFolder.Sweep(full, club.Now);
            club.Music.Sweep(club.Now);
            club.Linked.Begin();
            return club;
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Puts a backup in the place of the club in a folder, also where that one is damaged or absent. No program may have the club open if it is
    /// damaged. Everything about the backup is checked first; the club as it was is kept aside in <c>kept/</c>; whatever fails on the way leaves it
    /// as it was. Audio that the club has and the backup has not stays.
    /// </summary>
    /// <param name="folder">The folder of the club; made if needed.</param>
    /// <param name="file">The backup.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="reader">Reads the facts of dances.</param>
    /// <exception cref="ClubTrouble">The file is no backup, damaged, or of a newer Scuff; or the club is held by another program.</exception>
    public static RestoreReport Restore(string folder, string file, TimeProvider clock, IDanceFactReader reader)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        return Guarded(full, () =>
        {
            Directory.CreateDirectory(full);
            using PassingFolder passing = Unpacked(full, file);
            string? kept = null;
            Club club;
            try
            {
                bool wasThere = File.Exists(Path.Combine(full, ClubStore.FileName));
                club = Open(full, clock, reader);
                kept = wasThere ? "" : null;
            }
            catch (ClubTrouble trouble) when (trouble.Kind is ClubTroubleKind.Damaged or ClubTroubleKind.NotAClub)
            {
                Restoring.MoveMusic(passing, full);
                kept = Restoring.ReplaceDamaged(passing, full, FreeName(full, "damaged", "", clock.GetUtcNow()));
                club = Open(full, clock, reader);
                using (club)
                {
                    return club.Restored(kept, unlinked: null);
                }
            }

            using (club)
            {
                return club.Put(passing, isKept: kept is not null);
            }
        });
    }

    /// <summary>
    /// The same for the club that is open here, which goes on being open. See <see cref="Restore(string, string, TimeProvider,
    /// IDanceFactReader)"/>.
    /// </summary>
    /// <param name="file">The backup.</param>
    /// <exception cref="ClubTrouble">The file is no backup, damaged, or of a newer Scuff.</exception>
    public RestoreReport Restore(string file) => Guarded(Folder, () =>
    {
        using PassingFolder passing = Unpacked(Folder, file);
        return Put(passing, isKept: true);
    });

    /// <summary>
    /// Writes everything into one file, whole or not at all: a zip archive with the database as it stands at this moment and, if wished, the music.
    /// Others may go on writing meanwhile.
    /// </summary>
    /// <param name="file">Full path of the file. One that is there is replaced.</param>
    /// <param name="withMusic">Whether the audio goes in too.</param>
    /// <param name="withPeople">Whether the people go in too, if she keeps any; else no byte of theirs is in it.</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public void Backup(string file, bool withMusic, bool withPeople = false)
    {
        try
        {
            WholeFile.Write(Path.GetFullPath(file), stream => Backup(stream, withMusic, withPeople));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(ClubWords.KindOf(e), FileWords.NotWritten(file, e), e);
        }
    }

    /// <summary>The same into a stream, which need not seek.</summary>
    /// <param name="output">Where it goes; left open.</param>
    /// <param name="withMusic">Whether the audio goes in too.</param>
    /// <param name="withPeople">Whether the people go in too.</param>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    /// <exception cref="IOException">The stream could not be written.</exception>
    public void Backup(Stream output, bool withMusic, bool withPeople = false)
    {
        try
        {
            using PassingFolder passing = PassingFolder.In(Folder);
            BackupFile.Write(output, Store.File, withMusic ? Music : null, withPeople, passing, Now);
        }
        catch (Microsoft.Data.Sqlite.SqliteException e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, Folder);
        }
    }

    /// <summary>Takes in the <c>.dance</c> files of a folder (not of folders in it). The files are not touched.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="sameTitle">What is done with a title that is here already.</param>
    /// <exception cref="ClubTrouble">The folder is not there or cannot be read.</exception>
    public ImportReport Import(string folder, SameTitle sameTitle)
    {
        List<string> troubles = [];
        List<ReadDance> read = [];
        foreach (TextFile file in DanceFolder.Names(folder).Select(n => TextFile.Read(n, Path.Combine(folder, n))))
        {
            if (file.Trouble is { } trouble)
            {
                troubles.Add(trouble);
            }
            else
            {
                read.Add(ReadDance.Of(file.Text, Reader));
            }
        }

        return Linked.Around(
            before: null,
            () => Dances.Import(read, sameTitle),
            after: done => [.. done.Added, .. done.Replaced],
            (done, trouble) => new ImportReport(
                done.Added.Select(Ids.Dance).ToValueList(),
                done.Replaced.Select(Ids.Dance).ToValueList(),
                done.AlreadyHere,
                (trouble is null ? troubles : troubles.Append(trouble)).ToValueList()));
    }

    /// <summary>
    /// Writes every dance that is not in the bin as a <c>.dance</c> file named after its title. A file that is there with another text is never
    /// written over: the dance goes beside it under a name with a number. Tags and versions stay behind: a backup carries them.
    /// </summary>
    /// <param name="folder">The folder; made if needed.</param>
    /// <exception cref="ClubTrouble">The folder cannot be made or read.</exception>
    public ExportReport Export(string folder) => DanceFolder.Write(folder, Dances.All());

    /// <summary>Closes it. What was saved is on the disk already.</summary>
    public void Dispose()
    {
        Linked.Close();
        Store.Dispose();
    }

    /// <summary>Tells about what is said in it.</summary>
    internal void Tell(ClubChange change) => Changed?.Invoke(this, change);

    /// <summary>Tells about dances.</summary>
    internal void TellDances(IReadOnlyList<long> keys)
    {
        if (keys.Count > 0)
        {
            Changed?.Invoke(this, new ClubChange { Dances = keys.Select(Ids.Dance).ToValueList() });
        }
    }

    /// <summary>Tells about tracks.</summary>
    internal void TellTracks(IReadOnlyList<long> keys)
    {
        if (keys.Count > 0)
        {
            Changed?.Invoke(this, new ClubChange { Tracks = keys.Select(Ids.Track).ToValueList() });
        }
    }

    /// <summary>Tells about dances and what was found in the linked folder beside them; nothing when nothing was found and changed.</summary>
    internal void Tell(FolderReport report, IReadOnlyList<long> keys)
    {
        ValueList<string> dances =
        [
            .. keys.Select(Ids.Dance)
                .Concat(report.Added).Concat(report.Edited).Concat(report.Renamed).Concat(report.Binned).Concat(report.Written).Distinct(),
        ];
        bool isFromFolder = report != FolderReport.Nothing;
        if (dances.Count > 0 || isFromFolder)
        {
            Changed?.Invoke(this, new ClubChange { Dances = dances, Folder = isFromFolder ? report : null });
        }
    }

    private static PassingFolder Unpacked(string folder, string file)
    {
        PassingFolder passing = PassingFolder.In(folder);
        try
        {
            BackupFile.Unpack(file, passing);
            Restoring.Prepare(passing);
            return passing;
        }
        catch
        {
            passing.Dispose();
            throw;
        }
    }

    private static string FreeName(string folder, string why, string ending, DateTimeOffset now)
    {
        string kept = Directory.CreateDirectory(Path.Combine(folder, Kept)).FullName;
        string stem = string.Create(CultureInfo.InvariantCulture, $"{now:yyyy-MM-dd HHmmss} {why}");
        return Path.Combine(kept, SafeFileName.Free(stem, ending, n => Path.Exists(Path.Combine(kept, n))));
    }

    private static string Keep(string folder, string why, DateTimeOffset now, Action<Stream> fill)
    {
        string file = FreeName(folder, why, ".zip", now);
        WholeFile.Write(file, fill);
        return file;
    }

    private static RestoreReport Guarded(string folder, Func<RestoreReport> work)
    {
        try
        {
            return work();
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, folder);
        }
    }

    private RestoreReport Put(PassingFolder passing, bool isKept)
    {
        string? kept = isKept ? Keep(Folder, "before restoring", Now, stream => Backup(stream, withMusic: false, withPeople: true)) : null;
        Restoring.MoveMusic(passing, Folder);
        string? unlinked = Linked.Reread(() => Store.ReplaceBy(passing.File(ClubStore.FileName)));
        WordIndex.Refresh(Store);
        Changed?.Invoke(this, new ClubChange { Everything = true });
        return Restored(kept, unlinked);
    }

    private RestoreReport Restored(string? kept, string? unlinked)
    {
        (int dances, List<TrackEntry> tracks) = Store.Read(db => (
            db.Dances.Count(d => d.RemovedAt == null),
            db.Tracks.AsNoTracking().Where(t => t.RemovedAt == null).ToList()));
        int without = tracks.Count(t => t.Digest is not null && !File.Exists(Music.PathOf(t.Digest, t.Ending)));
        return new RestoreReport(dances, tracks.Count, without, kept, unlinked);
    }
}
