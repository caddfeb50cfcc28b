using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using Scuff.Repertoire.Files;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire.Backups;

/// <summary>
/// A backup: a zip archive with <c>club.json</c> (what it is), <c>club.db</c> (the database) and, if wished, <c>music/</c>. Nothing else may be in
/// it.
/// </summary>
internal static class BackupFile
{
    private const string Manifest = "club.json";
    private const string Form = "scuff club backup 1";
    private const string MusicPrefix = MusicFolder.Name + "/";

    // far above any club; an archive that claims more is a trap
    private const long LargestDatabase = 16L << 30;
    private const int MostEntries = 200_000;
    private const int LargestManifest = 64 * 1024;

    /// <summary>Writes a backup.</summary>
    /// <param name="output">Where it goes; need not seek.</param>
    /// <param name="database">The database, read as it stands.</param>
    /// <param name="music">The audio; null to leave it out.</param>
    /// <param name="withPeople">Whether the people go in; else not one byte of theirs does.</param>
    /// <param name="passing">A folder to work in.</param>
    /// <param name="now">The time.</param>
    /// <exception cref="SqliteException">The database could not be read.</exception>
    /// <exception cref="IOException">The output could not be written.</exception>
    public static void Write(Stream output, string database, MusicFolder? music, bool withPeople, PassingFolder passing, DateTimeOffset now)
    {
        string copy = passing.File(ClubStore.FileName);
        ClubStore.Copy(database, copy);
        if (!withPeople)
        {
            KeptPeople.DropFrom(copy);
        }

        using ZipArchive archive = new(output, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8);
        using (Stream stream = Entry(archive, Manifest, CompressionLevel.Optimal, now))
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("form", Form);
            json.WriteString("madeAt", now);
            json.WriteString("madeBy", typeof(BackupFile).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion);
            json.WriteBoolean("music", music is not null);
            json.WriteString("database", DigestOf(copy));
            json.WriteEndObject();
        }

        Put(archive, ClubStore.FileName, copy, CompressionLevel.Fastest, now);
        if (music is null)
        {
            return;
        }

        foreach ((string digest, string ending) in Audio(copy))
        {
            string path = music.PathOf(digest, ending);
            if (File.Exists(path))
            {
                // sound is packed already
                Put(archive, MusicPrefix + digest + ending, path, CompressionLevel.NoCompression, now);
            }
        }
    }

    /// <summary>
    /// Checks a backup through and through and lays it out in a folder: <c>club.db</c> in the present form, and the audio in <c>music/</c>, each
    /// file proved by its digest.
    /// </summary>
    /// <param name="file">The backup.</param>
    /// <param name="passing">The folder.</param>
    /// <exception cref="ClubTrouble">It is no backup, damaged, of a newer Scuff, or larger than the disk.</exception>
    public static void Unpack(string file, PassingFolder passing)
    {
        try
        {
            using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.Read);
            using ZipArchive archive = new(stream, ZipArchiveMode.Read, leaveOpen: false, Encoding.UTF8);
            string digest = CheckContents(archive, file, passing);
            string database = passing.File(ClubStore.FileName);
            using (Stream from = archive.GetEntry(ClubStore.FileName)!.Open())
            using (FileStream to = new(database, FileMode.CreateNew, FileAccess.Write))
            {
                Copy(from, to, LargestDatabase, file);
            }

            // the archive's own check sums are not looked at by who unpacks it
            if (DigestOf(database) != digest)
            {
                throw IsDamaged(file);
            }

            CheckDatabase(database, file, passing);
            MusicFolder music = new(passing.FullPath);
            foreach (ZipArchiveEntry entry in archive.Entries.Where(e => e.FullName.StartsWith(MusicPrefix, StringComparison.Ordinal)))
            {
                string name = entry.FullName[MusicPrefix.Length..];
                using Stream audio = entry.Open();
                using TakenAudio taken = music.Take(audio, ClubTracks.LargestBytes);
                if (taken.Digest != name[..64])
                {
                    throw IsDamaged(file);
                }

                taken.Settle(name[64..]);
            }
        }
        catch (InvalidDataException e)
        {
            throw File.Exists(file) && IsZip(file) ? IsDamaged(file, e) : IsNone(file, e);
        }
        catch (SqliteException e)
        {
            throw IsDamaged(file, e);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new ClubTrouble(ClubTroubleKind.NotFound, FileWords.NotRead(file, e), e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            string sentence = FileWords.IsFull(e) ? "The disk is full, so nothing was restored; the club is as it was." : FileWords.NotRead(file, e);
            throw new ClubTrouble(ClubWords.KindOf(e), sentence, e);
        }
    }

    private static string DigestOf(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0, FileOptions.SequentialScan);
        return Convert.ToHexStringLower(SHA256.HashData(file));
    }

    // By names alone, before a byte is unpacked: a name that leads anywhere else is not one of these. Answers with the digest of the database.
    private static string CheckContents(ZipArchive archive, string file, PassingFolder passing)
    {
        if (archive.Entries.Count > MostEntries
            || archive.GetEntry(Manifest) is not { Length: <= LargestManifest } manifest
            || archive.GetEntry(ClubStore.FileName) is null)
        {
            throw IsNone(file);
        }

        HashSet<string> names = new(StringComparer.Ordinal);
        foreach (ZipArchiveEntry entry in archive.Entries)
        {
            string name = entry.FullName;
            bool isOurs = name is Manifest or ClubStore.FileName
                || (name.StartsWith(MusicPrefix, StringComparison.Ordinal) && MusicFolder.IsName(name[MusicPrefix.Length..]));
            if (!isOurs || !names.Add(name))
            {
                throw IsNone(file);
            }
        }

        string digest = CheckForm(manifest, file);
        long bytes = 0;
        foreach (ZipArchiveEntry entry in archive.Entries)
        {
            // a sum of lengths that overflows is larger than any disk
            bytes = entry.Length > long.MaxValue - bytes ? long.MaxValue : bytes + entry.Length;
        }

        if (bytes > new DriveInfo(passing.FullPath).AvailableFreeSpace)
        {
            throw new ClubTrouble(
                ClubTroubleKind.DiskFull,
                $"{file} needs {bytes >> 20} MB of room when it is unpacked, and the disk has less. Nothing was changed.");
        }

        return digest;
    }

    private static string CheckForm(ZipArchiveEntry manifest, string file)
    {
        try
        {
            using MemoryStream text = new();
            using (Stream stream = manifest.Open())
            {
                Copy(stream, text, LargestManifest, file);
            }

            using JsonDocument json = JsonDocument.Parse(text.ToArray());
            string form = Word(json.RootElement, "form");
            return form == Form
                ? Word(json.RootElement, "database")
                : throw (form.StartsWith("scuff club backup ", StringComparison.Ordinal) ? ClubWords.IsNewer(file) : IsNone(file));
        }
        catch (JsonException e)
        {
            throw IsNone(file, e);
        }
    }

    private static string Word(JsonElement json, string name)
        => json.ValueKind == JsonValueKind.Object && json.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String
            ? value.GetString()!
            : "";

    private static void CheckDatabase(string database, string file, PassingFolder passing)
    {
        switch (ClubSchema.Look(database))
        {
            case ClubForm.Newer:
                throw ClubWords.IsNewer(file);
            case ClubForm.Absent or ClubForm.Foreign:
                throw IsNone(file);
            case ClubForm.Older:
                ClubSchema.Bring(database);
                break;
        }

        string model = passing.File("model.db");
        ClubSchema.Bring(model);
        using SqliteConnection made = new(ClubStore.Connection(model, SqliteOpenMode.ReadWrite));
        using SqliteConnection found = new(ClubStore.Connection(database, SqliteOpenMode.ReadWrite));
        made.Open();
        found.Open();
        using SqliteCommand check = found.CreateCommand();
        check.CommandText = "PRAGMA integrity_check(1)";
        // nothing that was put in beside our tables, such as a trigger, may come along
        if (check.ExecuteScalar() as string != "ok" || !ClubSchema.Parts(found).SetEquals(ClubSchema.Parts(made)))
        {
            throw IsDamaged(file);
        }

    }

    private static List<(string Digest, string Ending)> Audio(string database)
    {
        using SqliteConnection connection = new(ClubStore.Connection(database, SqliteOpenMode.ReadWrite));
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT Digest, Ending FROM Tracks WHERE Digest IS NOT NULL ORDER BY Key";
        List<(string Digest, string Ending)> audio = [];
        using (SqliteDataReader reader = command.ExecuteReader())
        {
            while (reader.Read())
            {
                audio.Add((reader.GetString(0), reader.GetString(1)));
            }
        }

        return audio;
    }

    private static Stream Entry(ZipArchive archive, string name, CompressionLevel level, DateTimeOffset now)
    {
        ZipArchiveEntry entry = archive.CreateEntry(name, level);
        // a zip archive knows no time before 1980
        entry.LastWriteTime = now.Year < 1980 ? new DateTimeOffset(1980, 1, 1, 0, 0, 0, TimeSpan.Zero) : now;
        return entry.Open();
    }

    private static void Put(ZipArchive archive, string name, string path, CompressionLevel level, DateTimeOffset now)
    {
        using FileStream from = new(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
        using Stream to = Entry(archive, name, level, now);
        from.CopyTo(to);
    }

    // what an archive says about the length of its parts need not be true
    private static void Copy(Stream from, Stream to, long most, string file)
    {
        byte[] buffer = new byte[128 * 1024];
        long bytes = 0;
        for (int read; (read = from.Read(buffer)) > 0;)
        {
            bytes += read;
            if (bytes > most)
            {
                throw IsDamaged(file);
            }

            to.Write(buffer, 0, read);
        }
    }

    private static bool IsZip(string file)
    {
        using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.Read);
        return stream.ReadByte() == 'P' && stream.ReadByte() == 'K';
    }

    private static ClubTrouble IsNone(string file, Exception? cause = null)
        => new(ClubTroubleKind.NotAClub, $"{file} is no backup of a Scuff club, so nothing was restored. A backup is a file that Scuff wrote with “backup”.", cause);

    private static ClubTrouble IsDamaged(string file, Exception? cause = null)
        => new(ClubTroubleKind.Damaged, $"{file} is a backup of a Scuff club, but a damaged one, so nothing was restored and the club is as it was. Try another copy of it, or an earlier backup.", cause);
}
