using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Scuff.Repertoire;
using Scuff.Repertoire.Storage;

namespace Tests.Repertoire;

public sealed class ClubTests : IDisposable
{
    private readonly ClubHouse _house = new();

    private string Database => Path.Combine(_house.ClubFolder, "club.db");

    public void Dispose() => _house.Dispose();

    [Fact]
    public void The_tables_are_those_of_the_mapping()
    {
        using ClubDatabase db = new(ClubStore.Options("Data Source=:memory:"));

        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Fact]
    public void Commits_wait_for_the_disk()
    {
        // SQLite's documentation of synchronous: with FULL (2) in WAL mode transactions are durable across a loss of power
        _house.Club.Store.Write(db =>
        {
            SqliteConnection connection = (SqliteConnection)db.Database.GetDbConnection();
            Assert.Equal(2, ClubSchema.Number(connection, "PRAGMA synchronous"));
            Assert.Equal(1, ClubSchema.Number(connection, "SELECT journal_mode = 'wal' FROM pragma_journal_mode"));
            Assert.Equal(0, ClubSchema.Number(connection, "PRAGMA trusted_schema"));
            Assert.Equal(1, ClubSchema.Number(connection, "PRAGMA foreign_keys"));
            return true;
        });
    }

    [Fact]
    public void Whatever_a_killed_program_had_acknowledged_is_there_and_nothing_halfway()
    {
        string id = _house.Club.Dances.Add("text 0", "page").Id;
        List<(int Save, long Length)> acknowledged = [];
        for (int i = 1; i <= 6; i++)
        {
            _house.Club.Dances.Save(id, string.Concat(Enumerable.Repeat($"text {i} ", 400)), i, $"hand {i}");
            acknowledged.Add((i, new FileInfo(Database + "-wal").Length));
        }

        byte[] main = File.ReadAllBytes(Database);
        byte[] log = File.ReadAllBytes(Database + "-wal");

        // the machine stops while the log is as long as here: every cut of it is a moment at which the plug is pulled
        for (int cut = 0; cut <= log.Length; cut += cut > log.Length - 1000 ? 137 : 4001)
        {
            string after = _house.In($"after {cut}");
            Directory.CreateDirectory(after);
            File.WriteAllBytes(Path.Combine(after, "club.db"), main);
            File.WriteAllBytes(Path.Combine(after, "club.db-wal"), log[..cut]);
            int promised = acknowledged.Where(a => a.Length <= cut).Select(a => a.Save).DefaultIfEmpty(0).Max();
            if (promised == 0)
            {
                // before the making of the club was on the disk nothing had been promised
                continue;
            }

            using Club club = _house.Open(after);
            StoredDance dance = club.Dances.Get(id)!;
            int found = dance.Revision - 1;
            Assert.InRange(found, promised, promised + 1);
            Assert.Equal(string.Concat(Enumerable.Repeat($"text {found} ", 400)), dance.Text);
            Assert.Equal(found, club.Dances.Versions(id).Count);
            Assert.Equal(1, club.Dances.Search(new DanceQuery { Words = $"{found}" }).Total);
        }

        Assert.Contains(acknowledged, a => a.Length == log.Length);
    }

    [Fact]
    public void A_club_of_the_first_form_is_brought_to_the_present_one_and_kept_aside_before()
    {
        MakeOfFirstForm();

        using (Club club = _house.Open())
        {
            StoredDance dance = club.Dances.Get("d1")!;
            Assert.Equal("Harbour Box\nstep", dance.Text);
            Assert.Equal(3, dance.Revision);
            Assert.Null(dance.Row.FileName);
            Assert.Equal("an older text", club.Dances.VersionText("d1", 1));
            Assert.Equal("d1", Assert.Single(club.Dances.Search(new DanceQuery { Words = "harb" }).Rows).Id);
            Assert.Equal(["d1"], club.Dances.NeedingFacts());
        }

        string kept = Assert.Single(Directory.GetFiles(Path.Combine(_house.ClubFolder, "kept")));
        Assert.Equal("2026-03-02 183000 before a newer form.zip", Path.GetFileName(kept));
        using (Club again = _house.Open())
        {
            again.Dances.EmptyBin();
        }

        Assert.Single(Directory.GetFiles(Path.Combine(_house.ClubFolder, "kept")));
        RestoreReport report = Club.Restore(_house.In("elsewhere"), kept, _house.Clock, new PlainReader());
        Assert.Equal(1, report.Dances);
    }

    [Fact]
    public void A_program_that_was_killed_while_it_changed_the_form_does_not_lock_out_the_next()
    {
        MakeOfFirstForm();
        Execute("""INSERT INTO "__EFMigrationsLock" VALUES (1, '2026-01-01')""");

        using Club club = _house.Open();

        Assert.NotNull(club.Dances.Get("d1"));
    }

    [Fact]
    public void A_club_of_a_newer_program_is_not_touched()
    {
        _house.Club.Dances.Add("Harbour Box", "page");
        _house.Close();
        Execute("INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_Later', '99.0')");
        byte[] before = File.ReadAllBytes(Database);

        ClubTrouble trouble = Assert.Throws<ClubTrouble>(() => _house.Open());

        Assert.Equal(ClubTroubleKind.Newer, trouble.Kind);
        Assert.Equal(
            $"The club in {_house.ClubFolder} was written by a newer Scuff than this one. Nothing in it was touched. Start the newer Scuff, or install it here.",
            trouble.Message);
        Assert.Equal(before, File.ReadAllBytes(Database));
    }

    [Theory]
    [InlineData(0, "not a database at all, only some words that stand where the database should be")]
    [InlineData(4096, "the pages after the first are gone")]
    public void A_damaged_club_says_what_to_do(int sound, string damage)
    {
        _house.Club.Dances.Add("Harbour Box", "page");
        _house.Close();
        File.WriteAllBytes(Database, [.. File.ReadAllBytes(Database)[..sound], .. System.Text.Encoding.UTF8.GetBytes(damage)]);

        ClubTrouble trouble = Assert.Throws<ClubTrouble>(() => _house.Open());

        Assert.Equal(ClubTroubleKind.Damaged, trouble.Kind);
        Assert.Contains("is damaged and cannot be read. Restore the latest backup", trouble.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_database_of_something_else_is_no_club()
    {
        Directory.CreateDirectory(_house.ClubFolder);
        Execute("CREATE TABLE Recipes (Name TEXT)");

        Assert.Equal(ClubTroubleKind.NotAClub, Assert.Throws<ClubTrouble>(() => _house.Open()).Kind);
        Execute("INSERT INTO Recipes VALUES ('soup')");
    }

    [Fact]
    public void An_empty_file_in_its_place_becomes_a_club()
    {
        Directory.CreateDirectory(_house.ClubFolder);
        File.WriteAllBytes(Database, []);

        Assert.Equal(0, _house.Club.Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void A_file_in_the_place_of_the_folder_is_told()
    {
        File.WriteAllText(_house.ClubFolder, "x");

        Assert.Equal(ClubTroubleKind.Folder, Assert.Throws<ClubTrouble>(() => _house.Open()).Kind);
    }

    [Fact]
    public void Two_programs_may_have_one_club_open_and_see_each_others_saves()
    {
        string id = _house.Club.Dances.Add("text", "page").Id;
        using Club other = _house.Open();

        Assert.Equal(new SaveOutcome.Saved(2), other.Dances.Save(id, "of the other", 1, "other"));
        Assert.Equal(new SaveOutcome.Changed(2, "of the other"), _house.Club.Dances.Save(id, "of this one", 1, "page"));
    }

    [Fact]
    public async Task Many_programs_may_make_one_club_at_the_same_moment()
    {
        List<Club> clubs = [];
        await Parallel.ForAsync(0, 12, new ParallelOptions { MaxDegreeOfParallelism = 12 }, (i, _) =>
        {
            Club club = _house.Open();
            club.Dances.Add($"Dance {i}", "page");
            lock (clubs)
            {
                clubs.Add(club);
            }

            return ValueTask.CompletedTask;
        });

        Assert.Equal(12, clubs[0].Dances.Search(new DanceQuery()).Total);
        clubs.ForEach(c => c.Dispose());
    }

    [Fact]
    public void A_program_that_holds_the_club_alone_is_waited_for_and_then_told()
    {
        Directory.CreateDirectory(_house.ClubFolder);
        using ClubLock alone = ClubLock.Alone(_house.ClubFolder);

        Assert.Equal(ClubTroubleKind.Busy, Assert.Throws<ClubTrouble>(() => _house.Open()).Kind);
    }

    [Fact]
    public void What_a_killed_program_left_is_swept_after_a_day()
    {
        _house.Club.Tracks.Add(new MemoryStream([1]), "a.mp3", new TrackFacts());
        string left = Path.Combine(_house.ClubFolder, "music", ".1-1.tmp");
        string folder = Path.Combine(_house.ClubFolder, ".passing-1-1");
        File.WriteAllText(left, "half a song");
        Directory.CreateDirectory(folder);
        File.SetLastWriteTimeUtc(left, _house.Clock.GetUtcNow().UtcDateTime.AddHours(-23));
        Directory.SetLastWriteTimeUtc(folder, _house.Clock.GetUtcNow().UtcDateTime.AddHours(-23));
        _house.Reopen();
        Assert.True(File.Exists(left) && Directory.Exists(folder));

        _house.Clock.GoOn(TimeSpan.FromHours(2));
        _house.Reopen();

        Assert.False(File.Exists(left) || Directory.Exists(folder));
        Assert.Equal(1, _house.Club.Tracks.Search(new TrackQuery()).Total);
    }

    // As the first form stood, with a dance that has a version.
    private void MakeOfFirstForm()
    {
        Directory.CreateDirectory(_house.ClubFolder);
        using (ClubDatabase db = new(ClubStore.Options(ClubStore.Connection(Database, SqliteOpenMode.ReadWriteCreate))))
        {
            db.GetService<IMigrator>().Migrate("First");
        }

        Execute("""
            INSERT INTO Dances (Key, Revision, Title, FoldedTitle, Choreographer, FoldedChoreographer, Level, Rhythm, Songs, Errors, Questions, Warnings,
                Fingerprint, TextDigest, FactsBy, Tags, FoldedTags, AddedAt, SavedAt, Hand, LastVersion)
            VALUES (1, 3, 'Harbour Box', 'harbour box', '', '', '', '', '', 0, 0, 0, '', '', '0', '', '', 1, 2, 'page', 1);
            INSERT INTO DanceTexts VALUES (1, 'Harbour Box' || char(10) || 'step');
            INSERT INTO Versions (DanceKey, Number, Name, SavedAt, Hand, Text) VALUES (1, 1, '', 1, 'page', 'an older text');
            """);
    }

    private void Execute(string sql)
    {
        using SqliteConnection connection = new(ClubStore.Connection(Database, SqliteOpenMode.ReadWriteCreate));
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
