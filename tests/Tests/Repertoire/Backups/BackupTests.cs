using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Data.Sqlite;
using Scuff.Repertoire;
using Scuff.Repertoire.Storage;

namespace Tests.Repertoire.Backups;

public sealed class BackupTests : IDisposable
{
    private static readonly byte[] Sound = [.. Enumerable.Range(0, 50_000).Select(i => (byte)(i % 251))];

    private readonly ClubHouse _house = new();

    private string Backup => _house.In("backup.zip");

    public void Dispose() => _house.Dispose();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Everything_comes_back_in_another_place(bool withMusic)
    {
        (string dance, string track) = Fill();
        _house.Club.Backup(Backup, withMusic);

        RestoreReport report = Club.Restore(_house.In("new"), Backup, _house.Clock, new PlainReader());

        Assert.Equal(new RestoreReport(1, 1, withMusic ? 0 : 1, null, null), report);
        using Club club = _house.Open(_house.In("new"));
        StoredDance found = club.Dances.Get(dance)!;
        Assert.Equal("Harbour Box\nsecond", found.Text);
        Assert.Equal(["easy"], found.Row.Tags);
        Assert.Equal(["kept"], club.Dances.Versions(dance).Select(v => v.Name));
        Assert.Equal(1, club.Dances.Search(new DanceQuery { Words = "harb" }).Total);
        Assert.Equal("map", club.Tracks.Map(track));
        Assert.Equal("corrections", club.Tracks.Corrections(track)!.Text);
        Assert.Equal("dark", club.Settings.Get("theme"));
        if (withMusic)
        {
            using Stream audio = club.Tracks.OpenAudio(track);
            using MemoryStream bytes = new();
            audio.CopyTo(bytes);
            Assert.Equal(Sound, bytes.ToArray());
        }

        // the same audio brought again makes it whole
        Assert.False(club.Tracks.Add(new MemoryStream(Sound), "again.mp3", new TrackFacts()).WasNew);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Every_row_of_every_table_comes_back(bool withPeople)
    {
        Club club = _house.Club;
        (string dance, string track) = Fill();
        club.Dances.Add("Tin Lantern", "page");
        club.Dances.Remove(dance);
        ClubClass held = club.Book.SaveClass(new ClubClass { Title = "Monday", Weekday = DayOfWeek.Monday, Starts = new TimeOnly(19, 30) });
        ClassSession session = club.Book.SaveSession(new ClassSession
        {
            ClassId = held.Id,
            Date = new DateOnly(2026, 3, 2),
            IsHeld = true,
            Items = [new SessionItem { Role = ItemRole.Taught, DanceId = dance, Minutes = 30 }, new SessionItem { Role = ItemRole.Danced, Title = "A visitor's" }],
        });
        club.Book.SetMark(new KnownMark(held.Id, dance, session.Date, Knowing.KnowsWithCues));
        club.Evenings.Save(new ClubEvening { Title = "Social", Date = session.Date, ClassId = held.Id, Plan = "{}" }, 0);
        club.People.Save(new ClubPerson { Name = "Wren", ClassIds = [held.Id] });
        string[] people = ["People", "PersonClasses"];
        List<string> before = ClubDump.Rows(club.Store.File, withPeople ? [] : people);
        Assert.All(
            ClubDump.Tables(club.Store.File).Keys.Except(withPeople ? [] : people),
            t => Assert.Contains(before, row => row.StartsWith($"{t}: ", StringComparison.Ordinal)));
        club.Backup(Backup, withMusic: true, withPeople);

        Club.Restore(_house.In("new"), Backup, _house.Clock, new PlainReader());

        using Club found = _house.Open(_house.In("new"));
        Assert.Equal(before, ClubDump.Rows(found.Store.File, withPeople ? [] : people));
        Assert.Equal(withPeople ? 1 : 0, found.People.List().Count);
        Assert.Equal(session, found.Book.Session(session.Id));
        Assert.Equal(new FileInfo(club.Tracks.AudioPath(track)!).Length, new FileInfo(found.Tracks.AudioPath(track)!).Length);
        Assert.StartsWith(_house.In("new"), found.Tracks.AudioPath(track)!, StringComparison.Ordinal);
    }

    [Fact]
    public void A_club_that_is_open_goes_back_and_is_kept_aside()
    {
        (string dance, string track) = Fill();
        _house.Club.Backup(Backup, withMusic: false);
        _house.Club.Dances.Save(dance, "Harbour Box\nthird", 2, "page");
        string later = _house.Club.Dances.Add("Later", "page").Id;
        bool wasToldEverything = false;
        _house.Club.Changed += (_, change) => wasToldEverything |= change.Everything;
        using Club other = _house.Open();

        RestoreReport report = _house.Club.Restore(Backup);

        Assert.True(wasToldEverything);
        Assert.Equal("Harbour Box\nsecond", _house.Club.Dances.Get(dance)!.Text);
        Assert.Equal("Harbour Box\nsecond", other.Dances.Get(dance)!.Text);
        Assert.Null(_house.Club.Dances.Get(later));
        Assert.Equal(0, _house.Club.Dances.Search(new DanceQuery { Words = "later" }).Total);
        Assert.NotNull(_house.Club.Tracks.AudioPath(track));
        Assert.Equal(0, report.WithoutAudio);
        Assert.Equal(new SaveOutcome.Saved(3), _house.Club.Dances.Save(dance, "Harbour Box\nfourth", 2, "page"));

        // and forth again, from what was kept
        _house.Club.Restore(report.KeptAside!);
        Assert.Equal("Harbour Box\nthird", _house.Club.Dances.Get(dance)!.Text);
        Assert.NotNull(_house.Club.Dances.Get(later));
    }

    [Fact]
    public void A_backup_is_of_one_moment_while_others_write()
    {
        string a = _house.Club.Dances.Add("0", "page").Id;
        string b = _house.Club.Dances.Add("0", "page").Id;
        using CancellationTokenSource stop = new();
        Thread writer = new(() =>
        {
            for (int i = 1; !stop.IsCancellationRequested; i++)
            {
                _house.Club.Dances.Save(a, $"{i}", i, "page");
                _house.Club.Dances.Save(b, $"{i}", i, "page");
            }
        });
        writer.Start();
        for (int i = 0; i < 5; i++)
        {
            _house.Club.Backup(_house.In($"{i}.zip"), withMusic: false);
        }

        stop.Cancel();
        writer.Join();
        for (int i = 0; i < 5; i++)
        {
            Club.Restore(_house.In($"c{i}"), _house.In($"{i}.zip"), _house.Clock, new PlainReader());
            using Club club = _house.Open(_house.In($"c{i}"));
            Assert.InRange(club.Dances.Get(a)!.Revision - club.Dances.Get(b)!.Revision, 0, 1);
        }
    }

    [Fact]
    public void A_backup_goes_into_a_stream_that_cannot_seek()
    {
        Fill();
        using MemoryStream bytes = new();
        using (GZipStream oneWay = new(bytes, CompressionLevel.Fastest, leaveOpen: true))
        {
            _house.Club.Backup(oneWay, withMusic: true);
        }

        bytes.Position = 0;
        using (GZipStream back = new(bytes, CompressionMode.Decompress))
        using (FileStream file = File.Create(Backup))
        {
            back.CopyTo(file);
        }

        Assert.Equal(1, _house.Club.Restore(Backup).Dances);
    }

    [Fact]
    public void A_backup_that_cannot_be_written_is_told_and_leaves_what_was_there()
    {
        ClubTrouble trouble = Assert.Throws<ClubTrouble>(() => _house.Club.Backup(_house.In("no", "such", "folder.zip"), withMusic: false));

        Assert.Equal($"{_house.In("no", "such", "folder.zip")} was not written: its folder does not exist.", trouble.Message);
        Assert.Empty(Directory.GetDirectories(_house.ClubFolder, ".passing*"));
    }

    [Fact]
    public void A_damaged_club_is_restored_and_the_damaged_file_kept()
    {
        (string dance, _) = Fill();
        _house.Club.Backup(Backup, withMusic: false);
        _house.Close();
        File.WriteAllText(Path.Combine(_house.ClubFolder, "club.db"), "no longer a database, but long enough to be looked at as one");
        File.WriteAllText(Path.Combine(_house.ClubFolder, "club.db-wal"), "stale");

        RestoreReport report = Club.Restore(_house.ClubFolder, Backup, _house.Clock, new PlainReader());

        Assert.Equal(1, report.Dances);
        Assert.Equal("Harbour Box\nsecond", _house.Club.Dances.Get(dance)!.Text);
        Assert.Contains("no longer a database", File.ReadAllText(Path.Combine(report.KeptAside!, "club.db")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_restored_club_follows_no_folder_until_it_is_linked_again()
    {
        string folder = _house.Folder("dances", ("box.dance", "Box\nfirst"));
        _house.Club.Linked.Link(folder);
        _house.Club.Backup(Backup, withMusic: false);
        File.WriteAllText(Path.Combine(folder, "box.dance"), "Box\nedited since");
        _house.Club.Linked.Rescan();

        RestoreReport report = _house.Club.Restore(Backup);

        Assert.Equal(folder, report.Unlinked);
        Assert.Null(_house.Club.Linked.Path);
        DanceRow dance = Assert.Single(_house.Club.Dances.Search(new DanceQuery()).Rows);
        Assert.Null(dance.FileName);
        Assert.Equal(new SaveOutcome.Saved(2), _house.Club.Dances.Save(dance.Id, "Box\nin the club", 1, "page"));
        Assert.Equal("Box\nedited since", File.ReadAllText(Path.Combine(folder, "box.dance")));
    }

    [Theory]
    [InlineData("no zip at all")]
    [InlineData("")]
    [InlineData("PK")]
    public void What_is_no_archive_is_refused(string content)
    {
        File.WriteAllText(Backup, content);

        AssertRefused(content.StartsWith("PK", StringComparison.Ordinal) ? ClubTroubleKind.Damaged : ClubTroubleKind.NotAClub);
    }

    [Fact]
    public void What_is_not_there_is_told()
    {
        ClubTrouble trouble = AssertRefused(ClubTroubleKind.NotFound);

        Assert.Equal($"There is no file or folder named {Backup}.", trouble.Message);
    }

    [Fact]
    public void An_archive_of_something_else_is_refused()
    {
        Zip(("holiday.txt", "sand"));
        ClubTrouble trouble = AssertRefused(ClubTroubleKind.NotAClub);

        Assert.Equal($"{Backup} is no backup of a Scuff club, so nothing was restored. A backup is a file that Scuff wrote with “backup”.", trouble.Message);
    }

    [Theory]
    [InlineData("../evil.txt")]
    [InlineData("music/../../evil.txt")]
    [InlineData("/evil.txt")]
    [InlineData("C:\\evil.txt")]
    [InlineData("music/evil.mp3")]
    [InlineData("music/0000000000000000000000000000000000000000000000000000000000000000.exe")]
    [InlineData("music/0000000000000000000000000000000000000000000000000000000000000000/../../x.mp3")]
    [InlineData("club.db-wal")]
    [InlineData("club.db")]
    [InlineData("CLUB.DB")]
    [InlineData("kept/")]
    public void A_file_that_has_no_business_in_a_backup_makes_it_none(string name)
    {
        Fill();
        _house.Club.Backup(Backup, withMusic: true);
        Change(archive => Put(archive, name, "evil"));

        AssertRefused(ClubTroubleKind.NotAClub);

        Assert.Empty(Directory.GetFiles(_house.Root, "evil*", SearchOption.AllDirectories));
    }

    [Fact]
    public void Audio_that_is_not_what_its_name_says_is_refused()
    {
        Fill();
        _house.Club.Backup(Backup, withMusic: true);
        Change(archive =>
        {
            ZipArchiveEntry audio = archive.Entries.Single(e => e.FullName.StartsWith("music/", StringComparison.Ordinal));
            string name = audio.FullName;
            audio.Delete();
            Put(archive, name, "not that song");
        });

        AssertRefused(ClubTroubleKind.Damaged);
    }

    [Theory]
    [InlineData("{}", ClubTroubleKind.NotAClub)]
    [InlineData("[]", ClubTroubleKind.NotAClub)]
    [InlineData("{\"form\":1}", ClubTroubleKind.NotAClub)]
    [InlineData("{\"form\":\"scuff club backup 2\"}", ClubTroubleKind.Newer)]
    [InlineData("{\"form\":", ClubTroubleKind.NotAClub)]
    public void An_archive_that_says_it_is_something_else_is_refused(string manifest, ClubTroubleKind kind)
    {
        Fill();
        _house.Club.Backup(Backup, withMusic: true);
        Change(archive =>
        {
            archive.GetEntry("club.json")!.Delete();
            Put(archive, "club.json", manifest);
        });

        AssertRefused(kind);
    }

    [Theory]
    [InlineData("CREATE TRIGGER t AFTER INSERT ON Dances BEGIN DELETE FROM Versions; END", ClubTroubleKind.Damaged)]
    [InlineData("CREATE VIEW v AS SELECT 1", ClubTroubleKind.Damaged)]
    [InlineData("DROP TABLE Tracks", ClubTroubleKind.Damaged)]
    [InlineData("INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_Later', '99.0')", ClubTroubleKind.Newer)]
    [InlineData("PRAGMA application_id = 7", ClubTroubleKind.NotAClub)]
    public void A_database_that_something_else_has_written_to_is_refused(string sql, ClubTroubleKind kind)
    {
        Fill();
        _house.Club.Backup(Backup, withMusic: false);
        string database = _house.In("taken.db");
        Change(archive =>
        {
            ZipArchiveEntry entry = archive.GetEntry("club.db")!;
            entry.ExtractToFile(database);
            Execute(database, sql);
            entry.Delete();
            archive.CreateEntryFromFile(database, "club.db");
            archive.GetEntry("club.json")!.Delete();
            string digest = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(database)));
            Put(archive, "club.json", $"{{\"form\":\"scuff club backup 1\",\"database\":\"{digest}\"}}");
        });

        AssertRefused(kind);
    }

    [Fact]
    public void A_backup_cut_short_or_with_a_flipped_bit_never_changes_the_club()
    {
        Fill();
        _house.Club.Backup(Backup, withMusic: true);
        byte[] whole = File.ReadAllBytes(Backup);
        string before = State();
        Random dice = new(3);
        for (int i = 0; i < 60; i++)
        {
            byte[] damaged = i % 2 == 0 ? whole[..dice.Next(whole.Length)] : [.. whole];
            if (i % 2 == 1)
            {
                damaged[dice.Next(damaged.Length)] ^= (byte)(1 << dice.Next(8));
            }

            File.WriteAllBytes(Backup, damaged);
            try
            {
                _house.Club.Restore(Backup);
            }
            catch (ClubTrouble trouble)
            {
                Assert.Contains(trouble.Kind, new[] { ClubTroubleKind.Damaged, ClubTroubleKind.NotAClub, ClubTroubleKind.Newer });
            }

            // a bit that nobody reads (a time of day) leaves a good backup of the same club
            Assert.Equal(before, State());
        }
    }

    private ClubTrouble AssertRefused(ClubTroubleKind kind)
    {
        string before = State();
        ClubTrouble open = Assert.Throws<ClubTrouble>(() => _house.Club.Restore(Backup));
        Assert.Equal(kind, open.Kind);
        Assert.Equal(kind, Assert.Throws<ClubTrouble>(() => Club.Restore(_house.In("new"), Backup, _house.Clock, new PlainReader())).Kind);
        Assert.Equal(before, State());
        Assert.Empty(Directory.GetFileSystemEntries(_house.In("new")));
        return open;
    }

    // Everything of the club that a person would miss.
    private string State()
    {
        StringBuilder state = new();
        foreach (DanceRow row in _house.Club.Dances.Search(new DanceQuery()).Rows)
        {
            state.Append(row).Append(_house.Club.Dances.Get(row.Id)!.Text).AppendJoin('|', _house.Club.Dances.Versions(row.Id));
        }

        state.AppendJoin('|', _house.Club.Tracks.Search(new TrackQuery()).Rows);
        state.AppendJoin('|', Directory.GetFileSystemEntries(_house.ClubFolder, ".passing*"));
        return state.ToString();
    }

    private (string Dance, string Track) Fill()
    {
        string dance = _house.Club.Dances.Add("Harbour Box\nfirst", "page").Id;
        _house.Club.Dances.KeepVersion(dance, "kept");
        _house.Club.Dances.Save(dance, "Harbour Box\nsecond", 1, "page");
        _house.Club.Dances.SetTags(dance, ["easy"]);
        string track = _house.Club.Tracks.Add(new MemoryStream(Sound), "a.mp3", new TrackFacts { Title = "Boat" }).Track.Id;
        _house.Club.Tracks.SaveMap(track, "map", "1");
        _house.Club.Tracks.SaveCorrections(track, "corrections", 0);
        _house.Club.Settings.Set("theme", "dark");
        return (dance, track);
    }

    private void Zip(params (string Name, string Text)[] entries)
    {
        using FileStream file = File.Create(Backup);
        using ZipArchive archive = new(file, ZipArchiveMode.Create);
        foreach ((string name, string text) in entries)
        {
            Put(archive, name, text);
        }
    }

    private void Change(Action<ZipArchive> change)
    {
        using ZipArchive archive = ZipFile.Open(Backup, ZipArchiveMode.Update);
        change(archive);
    }

    private static void Put(ZipArchive archive, string name, string text)
    {
        using Stream stream = archive.CreateEntry(name).Open();
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    private static void Execute(string database, string sql)
    {
        using SqliteConnection connection = new(ClubStore.Connection(database, SqliteOpenMode.ReadWrite));
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
