using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using Scuff.Repertoire;
using Tests.House;

namespace Tests.Repertoire;

public sealed class ClubPeopleTests : IDisposable
{
    private static readonly ClubPerson Wren = new() { Name = "Wren Quillfeather", Level = "improver", Needs = "a chair near", Notes = "says \"oops\",\nand laughs" };

    private readonly ClubHouse _house = new();

    private ClubPeople People => _house.Club.People;

    public void Dispose() => _house.Dispose();

    [Fact]
    public void A_person_is_kept_changed_and_found_by_name()
    {
        ClubClass monday = _house.Club.Book.SaveClass(new ClubClass { Title = "Monday" });
        ClubPerson kept = People.Save(Wren with { ClassIds = [monday.Id, "c99", monday.Id] });
        ClubPerson other = People.Save(new ClubPerson { Name = "ágnes of the pier" });

        Assert.Equal(Wren with { Id = kept.Id, ClassIds = [monday.Id] }, kept);
        Assert.Equal([other, kept], _house.Reopen().People.List());
        ClubPerson changed = People.Save(kept with { Name = "Wren", ClassIds = [] });
        Assert.Equal([other, changed], People.List());
        Assert.Equal("A person needs a name.", Assert.Throws<ClubTrouble>(() => People.Save(Wren with { Name = " " })).Message);
        Assert.Equal("This person is not kept any more.", Assert.Throws<ClubTrouble>(() => People.Save(Wren with { Id = "p99" })).Message);
    }

    [Fact]
    public void A_class_that_goes_leaves_its_people()
    {
        ClubClass monday = _house.Club.Book.SaveClass(new ClubClass { Title = "Monday" });
        People.Save(Wren with { ClassIds = [monday.Id] });

        _house.Club.Book.RemoveClass(monday.Id);

        Assert.Empty(Assert.Single(People.List()).ClassIds);
    }

    [Fact]
    public void People_are_written_as_a_table_or_as_JSON()
    {
        ClubClass monday = _house.Club.Book.SaveClass(new ClubClass { Title = "Monday" });
        ClubClass friday = _house.Club.Book.SaveClass(new ClubClass { Title = "Friday" });
        People.Save(Wren with { ClassIds = [friday.Id, monday.Id] });

        Assert.Equal(1, People.Export(_house.In("people.csv")));
        Assert.Equal(
            "\uFEFFname,level,classes,needs,notes\r\n\"Wren Quillfeather\",\"improver\",\"Monday; Friday\",\"a chair near\",\"says \"\"oops\"\",\nand laughs\"\r\n",
            Encoding.UTF8.GetString(File.ReadAllBytes(_house.In("people.csv"))));

        People.Export(_house.In("people.json"));
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(_house.In("people.json")));
        JsonElement person = Assert.Single(json.RootElement.EnumerateArray());
        Assert.Equal("Wren Quillfeather", person.GetProperty("name").GetString());
        Assert.Equal(["Monday", "Friday"], person.GetProperty("classes").EnumerateArray().Select(c => c.GetString()));
        Assert.Equal(Wren.Notes, person.GetProperty("notes").GetString());

        Assert.Contains("ends in neither", Assert.Throws<ClubTrouble>(() => People.Export(_house.In("people.txt"))).Message, StringComparison.Ordinal);
        Assert.Equal(ClubTroubleKind.Folder, Assert.Throws<ClubTrouble>(() => People.Export(_house.In("nowhere", "people.csv"))).Kind);
    }

    [Fact]
    public void Whoever_is_erased_is_gone_from_every_byte_of_the_club_and_the_others_stay()
    {
        List<ClubPerson> people = [];
        for (int i = 0; i < 300; i++)
        {
            people.Add(People.Save(new ClubPerson { Name = NameOf(i), Needs = new string('n', i % 40) }));
        }

        // rows that grow are moved, and pages that are split leave copies behind
        for (int i = 0; i < 300; i += 2)
        {
            people[i] = People.Save(people[i] with { Notes = $"{NameOf(i)} {new string('x', 200 + i)}" });
        }

        Assert.True(Holds(NameOf(42)));

        Assert.Equal(1, People.Erase(people[42].Id).Count);

        Assert.False(Holds(NameOf(42)));
        Assert.True(Holds(NameOf(41)));
        Assert.Equal(299, People.List().Count);
        Assert.Equal(0, People.Erase(people[42].Id).Count);
        Assert.Equal(0, People.Erase("nonsense").Count);

        Assert.Equal(299, People.EraseAll().Count);
        Assert.DoesNotContain(people, p => Holds(p.Name));
        Assert.Empty(_house.Reopen().People.List());
    }

    [Fact]
    public void Erasing_goes_on_beside_another_program_that_has_the_club_open()
    {
        using Club other = _house.Open();
        ClubPerson kept = other.People.Save(Wren);
        Assert.Single(People.List());

        People.Erase(kept.Id);

        Assert.False(Holds(Wren.Name));
        Assert.Empty(other.People.List());
        other.Dances.Add("Harbour Box", "page");
        Assert.Equal(1, _house.Club.Dances.Search(new DanceQuery()).Total);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_backup_has_people_only_when_asked(bool withPeople)
    {
        People.Save(Wren);
        _house.Club.Dances.Add("Harbour Box", "page");

        _house.Club.Backup(_house.In("backup.zip"), withMusic: false, withPeople);

        Assert.Equal(withPeople, HoldsIn(_house.In("backup.zip"), Wren.Name));
        Assert.Single(People.List());
        Club.Restore(_house.In("new"), _house.In("backup.zip"), _house.Clock, new PlainReader());
        using Club club = _house.Open(_house.In("new"));
        Assert.Equal(withPeople ? [Wren.Name] : [], club.People.List().Select(p => p.Name));
        Assert.Equal(1, club.Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void A_backup_that_was_made_without_asking_has_them_until_somebody_is_erased()
    {
        ClubPerson kept = People.Save(Wren);
        _house.Club.Backup(_house.In("backup.zip"), withMusic: false);
        string aside = _house.Club.Restore(_house.In("backup.zip")).KeptAside!;
        Assert.True(HoldsIn(aside, Wren.Name));
        _house.Club.Restore(aside);
        Assert.Equal([kept], People.List());
        string second = Directory.GetFiles(Path.Combine(_house.ClubFolder, "kept")).Single(f => f != aside);
        Directory.CreateDirectory(Path.Combine(_house.ClubFolder, "kept", "a damaged one"));

        ErasedPeople erased = People.EraseAll();

        Assert.Equal(new ErasedPeople(1, [Path.GetFileName(aside)], ["a damaged one"]), erased);
        Assert.False(HoldsIn(aside, Wren.Name));
        Assert.False(HoldsIn(second, Wren.Name));

        // and it is a whole backup still
        _house.Club.Dances.Add("Harbour Box", "page");
        _house.Club.Restore(aside);
        Assert.Equal(0, _house.Club.Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void A_change_of_people_is_told_without_saying_whom()
    {
        List<ClubChange> told = [];
        _house.Club.Changed += (_, change) => told.Add(change);

        People.Save(Wren);
        People.EraseAll();

        Assert.Equal([true, true], told.Select(t => t.People));
        Assert.All(told, t => Assert.Equal(0, t.Dances.Count + t.Classes.Count + t.Sessions.Count + t.Evenings.Count));
    }

    [Fact]
    public void Nothing_that_is_sent_to_the_hall_asks_for_people() => Repository.AssertNone(
        "the hall must not know people",
        Repository.Files.Where(f => f.StartsWith("src/Scuff.App/Web/Hall/", StringComparison.Ordinal) || f.StartsWith("src/Scuff.App/Students/", StringComparison.Ordinal))
            .Where(f => Repository.Read(f).Contains(".People", StringComparison.Ordinal) || Repository.Read(f).Contains("ClubPerson", StringComparison.Ordinal)));

    private static string NameOf(int i) => string.Create(CultureInfo.InvariantCulture, $"Quillfeather the {i:D3}th");

    // whether the bytes of a text are in any file of the club, at this moment
    private bool Holds(string text) => Directory.EnumerateFiles(_house.ClubFolder, "*", SearchOption.AllDirectories).Any(f => HoldsBytes(Bytes(f), text));

    private static bool HoldsIn(string archive, string text)
    {
        using ZipArchive zip = ZipFile.OpenRead(archive);
        return zip.Entries.Any(e =>
        {
            using Stream stream = e.Open();
            using MemoryStream bytes = new();
            stream.CopyTo(bytes);
            return HoldsBytes(bytes.ToArray(), text);
        });
    }

    private static byte[] Bytes(string file)
    {
        using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static bool HoldsBytes(byte[] bytes, string text) => bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;
}
