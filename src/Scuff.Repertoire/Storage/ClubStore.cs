using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Storage;

namespace Scuff.Repertoire.Storage;

/// <summary>The database of a club: readers side by side, writers one at a time, every trouble as a <see cref="ClubTrouble"/>.</summary>
internal sealed class ClubStore : IDisposable
{
    // seconds that a program waits for another one's write to end
    private const int Patience = 10;

    private readonly string _folder;
    private readonly ClubLock _lock;
    private readonly Lazy<DbContextOptions<ClubDatabase>> _options;
    private readonly Lock _writing = new();
    private readonly Lock _preparing = new();

    private bool _isPrepared;
    private bool _isClosed;

    private ClubStore(string folder, ClubLock held)
    {
        _folder = folder;
        _lock = held;
        File = Path.Combine(folder, FileName);
        _options = new Lazy<DbContextOptions<ClubDatabase>>(() => Options(Pooled));
    }

    /// <summary>The name of the database in the folder of a club.</summary>
    public const string FileName = "club.db";

    /// <summary>Full path of the database.</summary>
    public string File { get; }

    private string Pooled => Connection(File, SqliteOpenMode.ReadWrite, isPooled: true);

    /// <summary>Opens the database of a folder, and makes it or brings it to the present form where needed.</summary>
    /// <param name="folder">The folder; made if needed.</param>
    /// <param name="keep">Keeps a copy of a database, given its path, before its form is changed.</param>
    /// <exception cref="ClubTrouble">As <see cref="Club.Open"/> says.</exception>
    public static ClubStore Open(string folder, Action<string> keep)
    {
        string file = Path.Combine(folder, FileName);
        try
        {
            Directory.CreateDirectory(folder);
            return new ClubStore(folder, ClubLock.Wait(folder, () => Held(file, folder, keep)));
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, folder);
        }
    }

    /// <summary>
    /// How a database file is reached. Only an open club keeps its connections for later: they would go on with a file that was replaced.
    /// </summary>
    public static string Connection(string file, SqliteOpenMode mode, bool isPooled = false) => new SqliteConnectionStringBuilder
    {
        DataSource = file,
        Mode = mode,
        DefaultTimeout = Patience,
        ForeignKeys = true,
        Pooling = isPooled,
    }.ToString();

    /// <summary>The mapping of the tables over a connection, set up for durability.</summary>
    public static DbContextOptions<ClubDatabase> Options(string connection)
        => new DbContextOptionsBuilder<ClubDatabase>().UseSqlite(connection).AddInterceptors(Setup.Instance).Options;

    /// <summary>Reads, from one state of the club however many questions are asked.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public T Read<T>(Func<ClubDatabase, T> work)
    {
        try
        {
            using ClubDatabase db = new(_options.Value);
            db.Database.OpenConnection();
            using SqliteTransaction state = ((SqliteConnection)db.Database.GetDbConnection()).BeginTransaction(deferred: true);
            db.Database.UseTransaction(state);
            return work(db);
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, _folder);
        }
    }

    /// <summary>
    /// Reads without the mapping of the tables, from one state of the club: for what is asked at the start of the program and at every key that is
    /// typed into a search. Loading the mapping takes longer than all the rest of opening a club.
    /// </summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public T Ask<T>(Func<SqliteConnection, T> work)
    {
        try
        {
            using SqliteConnection connection = new(Pooled);
            connection.Open();
            Setup.Apply(connection);
            using SqliteTransaction state = connection.BeginTransaction(deferred: true);
            return work(connection);
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, _folder);
        }
    }

    /// <summary>
    /// Loads the mapping of the tables in the background, once: asked for when a dance is opened, so that the first save of a person who begins to
    /// type does not wait for it.
    /// </summary>
    public void Prepare()
    {
        if (!Interlocked.Exchange(ref _isPrepared, true))
        {
            _ = Task.Run(() =>
            {
                lock (_preparing)
                {
                    if (!_isClosed)
                    {
                        // of no dance; a club that cannot be read is told to whoever asks for something
                        using ClubDatabase db = new(_options.Value);
                        ClubDances.Find(db, key: 0);
                    }
                }
            });
        }
    }

    /// <summary>Writes, all of it or nothing. When it returns, it is on the disk.</summary>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public T Write<T>(Func<ClubDatabase, T> work)
    {
        try
        {
            lock (_writing)
            {
                using ClubDatabase db = new(_options.Value);
                // SQLite's BEGIN IMMEDIATE: what is read here is still true when it is written, whoever else has the club open
                using IDbContextTransaction whole = db.Database.BeginTransaction();
                T answer = work(db);
                db.SaveChanges();
                whole.Commit();
                return answer;
            }
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, _folder);
        }
    }

    /// <summary>A copy of the database as it stands, in a file that must not be there yet.</summary>
    /// <exception cref="ClubTrouble">The club could not be read, or the copy not be written.</exception>
    public void CopyTo(string file)
    {
        try
        {
            Copy(File, file);
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, _folder);
        }
    }

    /// <summary>A copy of a database as it stands, without holding up those who write.</summary>
    /// <exception cref="SqliteException">It could not be read or written.</exception>
    public static void Copy(string from, string to)
    {
        using SqliteConnection connection = new(Connection(from, SqliteOpenMode.ReadWrite));
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "VACUUM INTO $to";
        command.Parameters.AddWithValue("$to", to);
        command.ExecuteNonQuery();
    }

    /// <summary>
    /// Puts the content of another database into the place of this one: for everybody who has the club open, in one step that happens or does not.
    /// </summary>
    /// <exception cref="ClubTrouble">It could not be done; the club is as it was.</exception>
    public void ReplaceBy(string file)
    {
        try
        {
            lock (_writing)
            {
                using SqliteConnection from = new(Connection(file, SqliteOpenMode.ReadWrite));
                using SqliteConnection to = new(Connection(File, SqliteOpenMode.ReadWrite));
                from.Open();
                to.Open();
                Setup.Apply(to);
                from.BackupDatabase(to);
            }
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, _folder);
        }
    }

    /// <summary>
    /// Writes the whole database anew and empties its log, so that nothing that was deleted is left in the files: the pages of a table keep copies of
    /// rows that were moved from one to another.
    /// </summary>
    /// <exception cref="ClubTrouble">It could not be done, or another program is reading what is to go.</exception>
    public void Scrub()
    {
        try
        {
            lock (_writing)
            {
                using SqliteConnection connection = new(Connection(File, SqliteOpenMode.ReadWrite));
                connection.Open();
                Setup.Apply(connection);
                using SqliteCommand command = connection.CreateCommand();
                // the checkpoint says that it was held up and does not fail, so SQLite itself has to wait for the others
                command.CommandText = $"PRAGMA busy_timeout = {Patience * 1000}; VACUUM;";
                command.ExecuteNonQuery();
                if (ClubSchema.Number(connection, "PRAGMA wal_checkpoint(TRUNCATE)") != 0)
                {
                    throw new ClubTrouble(
                        ClubTroubleKind.Busy,
                        $"What was erased is gone from the club in {_folder}, but another program is still reading, so bytes of it may be left in its files. "
                            + "Close the other program and erase once more.");
                }
            }
        }
        catch (Exception e) when (ClubWords.Knows(e))
        {
            throw ClubWords.Of(e, _folder);
        }
    }

    public void Dispose()
    {
        lock (_preparing)
        {
            _isClosed = true;
        }

        using SqliteConnection connection = new(Pooled);
        SqliteConnection.ClearPool(connection);
        _lock.Dispose();
    }

    // The lock of a club in the present form. Null when another program has it open in another form: it may be bringing it to this one.
    private static ClubLock? Held(string file, string folder, Action<string> keep)
    {
        ClubLock held = ClubLock.Shared(folder);
        try
        {
            if (Checked(file, folder) == ClubForm.Present)
            {
                return held;
            }
        }
        catch
        {
            held.Dispose();
            throw;
        }

        held.Dispose();
        using (ClubLock? alone = ClubLock.TryAlone(folder))
        {
            if (alone is null)
            {
                return null;
            }

            // another program may have done it in the moment before
            ClubForm form = Checked(file, folder);
            if (form == ClubForm.Older)
            {
                keep(file);
            }

            if (form != ClubForm.Present)
            {
                ClubSchema.Bring(file);
            }
        }

        return ClubLock.Shared(folder);
    }

    private static ClubForm Checked(string file, string folder) => ClubSchema.Look(file) switch
    {
        ClubForm.Newer => throw ClubWords.IsNewer($"The club in {folder}"),
        ClubForm.Foreign => throw ClubWords.IsNoClub(folder),
        ClubForm form => form,
    };

    /// <summary>What SQLite has to be told on every connection.</summary>
    private sealed class Setup : DbConnectionInterceptor
    {
        public static Setup Instance { get; } = new();

        // FULL: a commit waits until the disk has it. Nothing in a file that came from elsewhere may call functions with side effects.
        public static void Apply(DbConnection connection)
        {
            using DbCommand command = connection.CreateCommand();
            command.CommandText = "PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF; PRAGMA cache_size = -16000;";
            command.ExecuteNonQuery();
        }

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Apply(connection);
    }
}
