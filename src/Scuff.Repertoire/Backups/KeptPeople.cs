using System.IO.Compression;
using Microsoft.Data.Sqlite;
using Scuff.Repertoire.Files;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire.Backups;

/// <summary>People in backups that Scuff made by itself: these are nets for dances and classes, and whoever was erased must not hang on in them.</summary>
internal static class KeptPeople
{
    /// <summary>Takes the people out of a database that is nobody's yet, so that its file has none of their bytes.</summary>
    /// <returns>Whether there were any.</returns>
    /// <exception cref="SqliteException">It could not be done.</exception>
    public static bool DropFrom(string database)
    {
        using SqliteConnection connection = new(ClubStore.Connection(database, SqliteOpenMode.ReadWrite));
        connection.Open();
        // a form from before people were kept has no such table
        if (ClubSchema.Number(connection, "SELECT count(*) FROM sqlite_master WHERE name = 'People'") == 0
            || ClubSchema.Number(connection, "SELECT count(*) FROM People") == 0)
        {
            return false;
        }

        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "PRAGMA secure_delete = ON; DELETE FROM People; VACUUM; PRAGMA wal_checkpoint(TRUNCATE);";
        command.ExecuteNonQuery();
        return true;
    }

    /// <summary>Writes every kept backup that has people anew without them.</summary>
    /// <param name="kept">The folder of kept backups; need not be there.</param>
    /// <param name="club">The folder of the club, to work in.</param>
    /// <returns>The names of those written anew, and of what could not be read.</returns>
    public static (ValueList<string> Cleaned, ValueList<string> Untouched) Drop(string kept, string club)
    {
        List<string> cleaned = [];
        List<string> untouched = [];
        string[] entries = Directory.Exists(kept) ? Directory.GetFileSystemEntries(kept) : [];
        foreach (string path in entries.Order(StringComparer.Ordinal))
        {
            try
            {
                // a folder keeps a damaged database as it was
                if (Directory.Exists(path) || !IsBackup(path))
                {
                    untouched.Add(Path.GetFileName(path));
                }
                else if (DropFromBackup(path, club))
                {
                    cleaned.Add(Path.GetFileName(path));
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidDataException or SqliteException)
            {
                untouched.Add(Path.GetFileName(path));
            }
        }

        return (cleaned.ToValueList(), untouched.ToValueList());
    }

    private static bool IsBackup(string path) => path.EndsWith(".zip", StringComparison.OrdinalIgnoreCase);

    private static bool DropFromBackup(string path, string club)
    {
        using PassingFolder passing = PassingFolder.In(club);
        string database = passing.File(ClubStore.FileName);
        DateTimeOffset made;
        using (ZipArchive archive = ZipFile.OpenRead(path))
        {
            ZipArchiveEntry entry = archive.GetEntry(ClubStore.FileName) ?? throw new InvalidDataException("A backup has a database.");
            made = entry.LastWriteTime;
            entry.ExtractToFile(database);
        }

        if (!DropFrom(database))
        {
            return false;
        }

        using PassingFolder written = PassingFolder.In(club);
        WholeFile.Write(path, stream => BackupFile.Write(stream, database, music: null, withPeople: false, written, made));
        return true;
    }
}
