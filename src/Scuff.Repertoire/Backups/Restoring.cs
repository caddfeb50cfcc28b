using Microsoft.Data.Sqlite;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire.Backups;

/// <summary>Puts an unpacked and checked backup in the place of a club.</summary>
internal static class Restoring
{
    /// <summary>Makes the unpacked database ready: no folder is linked in it, since its files may differ from what was restored.</summary>
    public static void Prepare(PassingFolder passing)
    {
        string connection = ClubStore.Connection(passing.File(ClubStore.FileName), SqliteOpenMode.ReadWrite);
        using ClubDatabase db = new(ClubStore.Options(connection));
        LinkedFolder.Forget(db);
        db.SaveChanges();
    }

    /// <summary>Moves the unpacked audio into the club. A file that is there already has the same content.</summary>
    /// <exception cref="IOException">It could not be moved.</exception>
    public static void MoveMusic(PassingFolder passing, string club)
    {
        DirectoryInfo from = new(passing.File(MusicFolder.Name));
        if (!from.Exists)
        {
            return;
        }

        string to = Directory.CreateDirectory(Path.Combine(club, MusicFolder.Name)).FullName;
        foreach (FileInfo file in from.EnumerateFiles())
        {
            file.MoveTo(Path.Combine(to, file.Name), overwrite: true);
        }
    }

    /// <summary>
    /// Puts the unpacked database in the place of one that cannot be opened. The damaged files are copied first and their companions go before the
    /// change, since SQLite would take what they hold for part of the new database.
    /// </summary>
    /// <returns>Full path of the folder that keeps the damaged files.</returns>
    /// <exception cref="ClubTrouble">Another program has the club open.</exception>
    /// <exception cref="IOException">It could not be done; the damaged files are as they were.</exception>
    public static string ReplaceDamaged(PassingFolder passing, string club, string kept)
    {
        using ClubLock alone = ClubLock.Alone(club);
        string database = Path.Combine(club, ClubStore.FileName);
        string[] companions = [database + "-wal", database + "-shm"];
        Directory.CreateDirectory(kept);
        foreach (string file in companions.Prepend(database).Where(File.Exists))
        {
            File.Copy(file, Path.Combine(kept, Path.GetFileName(file)), overwrite: true);
        }

        foreach (string file in companions)
        {
            File.Delete(file);
        }

        File.Move(passing.File(ClubStore.FileName), database, overwrite: true);
        return kept;
    }
}
