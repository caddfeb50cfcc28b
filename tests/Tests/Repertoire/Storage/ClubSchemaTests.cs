using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Scuff.Repertoire.Storage;
using Tests.House;

namespace Tests.Repertoire.Storage;

public sealed class ClubSchemaTests
{
    private const string ScriptFile = "src/Scuff.Repertoire/Storage/club.sql";

    [Fact]
    public void A_new_club_is_made_of_what_all_steps_would_do()
    {
        using ClubDatabase db = new(ClubStore.Options(ClubStore.Connection(":memory:", SqliteOpenMode.Memory)));
        string steps = db.GetService<IMigrator>().GenerateScript(options: MigrationsSqlGenerationOptions.NoTransactions).ReplaceLineEndings("\n");
        string path = Path.Combine(Repository.Root, ScriptFile);
        if (Environment.GetEnvironmentVariable("SCUFF_UPDATE") == "1")
        {
            File.WriteAllText(path, steps);
        }

        Assert.Equal(steps, File.ReadAllText(path));
        Assert.Equal(steps, ClubSchema.WholeScript());
    }

    [Fact]
    public void A_club_made_in_one_go_is_the_club_made_step_by_step()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("scuff-test-");
        try
        {
            string once = Path.Combine(folder.FullName, "once.db");
            string steps = Path.Combine(folder.FullName, "steps.db");
            ClubSchema.Bring(once);
            ClubSchema.Migrate(ClubStore.Connection(steps, SqliteOpenMode.ReadWriteCreate));

            Assert.Equal(ClubForm.Present, ClubSchema.Look(once));
            Assert.Equal(Told(steps), Told(once));

            // what is there is left as it is
            ClubSchema.Bring(once);
            Assert.Equal(Told(steps), Told(once));
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            folder.Delete(recursive: true);
        }
    }

    // The tables as they were written, the steps that were done, and the marks in the head of the file.
    private static List<string> Told(string file)
    {
        using SqliteConnection connection = new(ClubStore.Connection(file, SqliteOpenMode.ReadWrite));
        connection.Open();
        List<string> told =
        [
            .. new[] { "application_id", "journal_mode", "user_version", "integrity_check" }.Select(mark => mark + " " + Rows(connection, "PRAGMA " + mark).Single()),
        ];
        told.AddRange(Rows(connection, "SELECT coalesce(sql, name) FROM sqlite_master WHERE name NOT LIKE '%Lock' ORDER BY name"));
        told.AddRange(Rows(connection, "SELECT MigrationId || ' ' || ProductVersion FROM __EFMigrationsHistory ORDER BY MigrationId"));
        return told;
    }

    private static List<string> Rows(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        using SqliteDataReader reader = command.ExecuteReader();
        List<string> rows = [];
        while (reader.Read())
        {
            rows.Add(reader.GetValue(0).ToString()!);
        }

        return rows;
    }
}
