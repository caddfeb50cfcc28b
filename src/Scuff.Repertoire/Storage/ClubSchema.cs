using System.Globalization;
using System.Reflection;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Scuff.Repertoire.Storage;

/// <summary>The form of a club's database: telling it, and bringing it to the present one.</summary>
internal static class ClubSchema
{
    /// <summary>"Scuf" in the head of the file (https://sqlite.org/pragma.html#pragma_application_id).</summary>
    public const long ApplicationId = 1399026022;

    // SQLITE_CORRUPT, https://sqlite.org/rescode.html#corrupt
    private const int Corrupt = 11;

    private static readonly HashSet<string> Known =
    [
        .. typeof(ClubSchema).Assembly.GetTypes().Select(t => t.GetCustomAttribute<MigrationAttribute>()?.Id).OfType<string>(),
    ];

    /// <summary>
    /// Tells the form of a database file. This asks SQLite itself: at most starts everything is in order, and the mapping of the tables need not be
    /// loaded to know that.
    /// </summary>
    /// <exception cref="SqliteException">The file cannot be read, or is no database.</exception>
    public static ClubForm Look(string file)
    {
        if (!File.Exists(file))
        {
            return ClubForm.Absent;
        }

        using SqliteConnection connection = new(ClubStore.Connection(file, SqliteOpenMode.ReadWrite));
        connection.Open();
        if (Number(connection, "SELECT count(*) FROM sqlite_master") == 0)
        {
            return ClubForm.Absent;
        }

        if (Number(connection, "PRAGMA application_id") != ApplicationId)
        {
            // a club whose making was cut short has at most the table of what was done
            return Number(connection, "SELECT count(*) FROM sqlite_master WHERE name NOT LIKE '\\_\\_EF%' ESCAPE '\\' AND name NOT LIKE 'sqlite%'") == 0
                ? ClubForm.Absent
                : ClubForm.Foreign;
        }

        HashSet<string> done = [.. Names(connection, "SELECT MigrationId FROM __EFMigrationsHistory")];
        return done.IsSubsetOf(Known) ? done.Count == Known.Count ? ClubForm.Present : ClubForm.Older : ClubForm.Newer;
    }

    /// <summary>Makes the tables, or brings them to the present form. Whoever calls it holds the club alone.</summary>
    /// <exception cref="SqliteException">It could not be done; what was done of it is whole steps.</exception>
    public static void Bring(string file)
    {
        string connection = ClubStore.Connection(file, SqliteOpenMode.ReadWriteCreate);
        if (MakeAtOnce(connection))
        {
            return;
        }

        Migrate(connection);
    }

    /// <summary>Makes the tables step by step, or brings those there are to the present form.</summary>
    internal static void Migrate(string connection)
    {
        using ClubDatabase db = new(ClubStore.Options(connection));
        // a program that was killed here would lock out all others for ever
        db.Database.ExecuteSql($"DROP TABLE IF EXISTS __EFMigrationsLock");
        db.Database.ExecuteSql($"PRAGMA journal_mode = WAL");
        db.Database.Migrate();
    }

    /// <summary>What all steps do to an empty file, as SQL; a test keeps it to that.</summary>
    internal static string WholeScript()
    {
        using Stream stream = typeof(ClubSchema).Assembly.GetManifestResourceStream("club.sql")!;
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }

    // A new club is made in one go, without the machinery that knows older forms, for which the very first start would wait. Either all of it is there
    // afterwards or nothing.
    private static bool MakeAtOnce(string name)
    {
        using SqliteConnection connection = new(name);
        connection.Open();
        if (Number(connection, "SELECT count(*) FROM sqlite_master") > 0)
        {
            return false;
        }

        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode = WAL;";
        command.ExecuteNonQuery();
        using SqliteTransaction transaction = connection.BeginTransaction();
        command.Transaction = transaction;
        command.CommandText = WholeScript();
        command.ExecuteNonQuery();
        transaction.Commit();
        return true;
    }

    /// <summary>The tables, indexes and triggers there are, by kind and name: what tells a club that something else has written to.</summary>
    public static IReadOnlySet<string> Parts(SqliteConnection connection)
        => Names(
            connection,
            "SELECT type || ' ' || name || ' of ' || tbl_name FROM sqlite_master WHERE name NOT LIKE '\\_\\_EF%Lock' ESCAPE '\\'").ToHashSet(StringComparer.Ordinal);

    /// <summary>The one number that a statement asks for.</summary>
    public static long Number(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }

    private static List<string> Names(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        using SqliteDataReader reader = command.ExecuteReader();
        List<string> names = [];
        while (reader.Read())
        {
            names.Add(reader.IsDBNull(0) ? throw new SqliteException("A name that SQLite lists is none.", Corrupt) : reader.GetString(0));
        }

        return names;
    }
}
