using System.Reflection;
using Microsoft.EntityFrameworkCore.Migrations;
using Scuff.Repertoire;
using Scuff.Repertoire.Storage;

namespace Tests.Repertoire.Storage;

/// <summary>Clubs of every form that was ever published are brought to the present one with all they hold.</summary>
public sealed class EarlierFormTests : IDisposable
{
    private readonly ClubHouse _house = new();

    public static TheoryData<string> Forms => [.. EarlierForm.All];

    private string Database => Path.Combine(_house.ClubFolder, ClubStore.FileName);

    public void Dispose() => _house.Dispose();

    [Fact]
    public void There_is_a_club_of_every_form_before_the_present_one()
    {
        string[] steps =
        [
            .. typeof(ClubStore).Assembly.GetTypes().Select(t => t.GetCustomAttribute<MigrationAttribute>()?.Id).OfType<string>()
                .Order(StringComparer.Ordinal).Select(id => id[(id.IndexOf('_', StringComparison.Ordinal) + 1)..]),
        ];

        Assert.Equal(steps[..^1].Order(StringComparer.Ordinal), EarlierForm.All.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void Every_row_is_there_afterwards_and_the_tables_are_those_of_a_new_club(string form)
    {
        Make(form);
        Dictionary<string, string[]> tables = ClubDump.Tables(Database);
        List<string> before = ClubDump.Rows(Database, tables);
        Assert.True(before.Count >= 10);

        using (Club club = _house.Open())
        {
            Assert.Equal(["Harbour Box"], club.Dances.Search(new DanceQuery { Words = "anna mon" }).Rows.Select(r => r.Facts.Title));
            Assert.Equal(["Low Tide"], club.Tracks.Search(new TrackQuery { Words = "net" }).Rows.Select(r => r.Facts.Title));
        }

        Assert.Equal(before, ClubDump.Rows(Database, tables));
        using Club model = _house.Open(_house.In("new"));
        Assert.Equal(Told(Path.Combine(model.Folder, ClubStore.FileName)), Told(Database));
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void The_book_can_be_kept_in_it_at_once(string form)
    {
        Make(form);
        Club club = _house.Club;
        ClubClass held = club.Book.SaveClass(new ClubClass { Title = "Monday" });
        DateOnly day = new(2026, 3, 2);

        ClassSession session = club.Book.SaveSession(
            new ClassSession { ClassId = held.Id, Date = day, IsHeld = true, Items = [new SessionItem { Role = ItemRole.Taught, DanceId = "d1" }] });

        Assert.Equal(3, session.Items[0].Revision);
        Assert.Equal("Harbour Box\n1 step\n🎵 Ærø", club.Dances.TextOf("d1", 3));

        // what was kept before revisions were counted is kept without one
        Assert.Equal([3, null, null], club.Dances.Versions("d1").Select(v => v.Revision));
        Assert.Equal("Harbour Box\n1 step\n2 rock", club.Dances.VersionText("d1", 2));
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void A_backup_of_it_is_restored_in_the_present_form(string form)
    {
        Make(form);
        _house.Open().Dispose();
        string kept = Assert.Single(Directory.GetFiles(Path.Combine(_house.ClubFolder, "kept")));

        RestoreReport report = Club.Restore(_house.In("elsewhere"), kept, _house.Clock, new PlainReader());

        Assert.Equal((1, 1), (report.Dances, report.Tracks));
        using Club club = _house.Open(_house.In("elsewhere"));
        Assert.Equal("Harbour Box\n1 step", club.Dances.VersionText("d1", 1));
        Assert.Empty(club.Book.Classes());
    }

    private void Make(string form)
    {
        Directory.CreateDirectory(_house.ClubFolder);
        EarlierForm.Make(form, Database);
    }

    // the tables and indexes as they were written, and that nothing hangs in the air
    private static List<string> Told(string file) =>
    [
        .. ClubDump.Ask(file, "SELECT coalesce(sql, name) FROM sqlite_master WHERE name NOT LIKE '%Lock' ORDER BY name", r => r.GetString(0)),
        .. ClubDump.Ask(file, "PRAGMA integrity_check", r => r.GetString(0)),
        .. ClubDump.Ask(file, "PRAGMA foreign_key_check", r => r.GetString(0)),
    ];
}
