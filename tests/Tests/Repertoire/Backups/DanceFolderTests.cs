using System.Text;
using Scuff.Repertoire;

namespace Tests.Repertoire.Backups;

public sealed class DanceFolderTests : IDisposable
{
    private readonly ClubHouse _house = new();

    private ClubDances Dances => _house.Club.Dances;

    public void Dispose() => _house.Dispose();

    [Fact]
    public void A_folder_is_taken_in_and_left_as_it_was()
    {
        string folder = _house.Folder("in", ("a.dance", "Álpha\r\nstep"), ("b.DANCE", "Beta"), ("c.txt", "Gamma"), (".hidden.dance", "Hidden"), ("empty.dance", " \n"));
        File.WriteAllBytes(Path.Combine(folder, "old.dance"), Encoding.Latin1.GetBytes("Café"));
        File.WriteAllBytes(Path.Combine(folder, "sound.dance"), [1, 0, 2]);
        Directory.CreateDirectory(Path.Combine(folder, "deeper.dance"));

        ImportReport report = _house.Club.Import(folder, SameTitle.AddBeside);

        Assert.Equal(["Álpha", "Beta", "Café"], Titles());
        Assert.Equal(3, report.Added.Count);
        Assert.Equal("Álpha\nstep", Dances.Get(report.Added[0])!.Text);
        Assert.Equal(
            ["empty.dance is empty: there is no dance in it.", "sound.dance is not a text (it holds zero bytes, as pictures, sound and programs do)."],
            report.Troubles);
        Assert.Equal("Álpha\r\nstep", File.ReadAllText(Path.Combine(folder, "a.dance")));

        ImportReport again = _house.Club.Import(folder, SameTitle.Replace);
        Assert.Equal((0, 0, 3), (again.Added.Count, again.Replaced.Count, again.AlreadyHere));
        Assert.Equal(3, Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void A_title_that_is_here_is_added_beside_or_replaced_as_asked()
    {
        string box = Dances.Add("Box\nhere", "page").Id;
        string folder = _house.Folder("in", ("a.dance", "BÖX\nnew"));

        ImportReport replaced = _house.Club.Import(folder, SameTitle.Replace);

        Assert.Equal([box], replaced.Replaced);
        Assert.Equal("BÖX\nnew", Dances.Get(box)!.Text);
        Assert.Equal("Box\nhere", Dances.VersionText(box, Assert.Single(Dances.Versions(box)).Number));

        File.WriteAllText(Path.Combine(folder, "a.dance"), "Box\nnewer");
        Assert.Single(_house.Club.Import(folder, SameTitle.AddBeside).Added);
        Assert.Equal(2, Dances.Search(new DanceQuery()).Total);

        // which of two should it be? so neither
        File.WriteAllText(Path.Combine(folder, "a.dance"), "Box\nnewest");
        Assert.Single(_house.Club.Import(folder, SameTitle.Replace).Added);
        Assert.Equal(3, Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void What_lies_in_the_bin_does_not_keep_a_file_out()
    {
        Dances.Remove(Dances.Add("Box", "page").Id);

        Assert.Single(_house.Club.Import(_house.Folder("in", ("a.dance", "Box")), SameTitle.Replace).Added);
        Assert.Equal(1, Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_told()
        => Assert.Equal(
            $"There is no file or folder named {_house.In("nowhere")}.",
            Assert.Throws<ClubTrouble>(() => _house.Club.Import(_house.In("nowhere"), SameTitle.AddBeside)).Message);

    [Fact]
    public void Export_writes_a_file_for_each_dance_and_never_over_another_text()
    {
        Dances.Add("Tin Lantern\na", "page");
        Dances.Add("TIN LANTERN\nb", "page");
        Dances.Add("Con: Brio?\nc", "page");
        Dances.Add("nul", "page");
        Dances.Add("\nno title", "page");
        Dances.Remove(Dances.Add("Binned", "page").Id);
        string folder = _house.Folder("out", ("tin lantern.dance", "hers"), ("Con Brio.dance", "Con: Brio?\r\nc"));

        ExportReport report = _house.Club.Export(folder);

        Assert.Equal(["Tin Lantern 2.dance", "TIN LANTERN 3.dance", "dance nul.dance", "dance.dance"], report.Written);
        Assert.Equal(1, report.AlreadyThere);
        Assert.Equal("hers", File.ReadAllText(Path.Combine(folder, "tin lantern.dance")));
        Assert.Equal("Tin Lantern\na", File.ReadAllText(Path.Combine(folder, "Tin Lantern 2.dance")));
        Assert.Empty(report.Troubles);

        ExportReport again = _house.Club.Export(folder);
        Assert.Empty(again.Written);
        Assert.Equal(5, again.AlreadyThere);
    }

    [Fact]
    public void What_was_exported_comes_in_again_as_it_was()
    {
        string[] texts = ["Tin Lantern\n1-2 step", "Søren's Café\n½ turn 🎵\n\ttab  ", "../../up", "Same\none", "Same\ntwo", "\n\n  late title"];
        foreach (string text in texts)
        {
            Dances.Add(text, "page");
        }

        _house.Club.Export(_house.In("out", "deep"));
        using Club other = _house.Open(_house.In("other"));
        other.Import(_house.In("out", "deep"), SameTitle.AddBeside);

        Assert.Equal(
            texts.Order(StringComparer.Ordinal),
            other.Dances.Search(new DanceQuery()).Rows.Select(r => other.Dances.Get(r.Id)!.Text).Order(StringComparer.Ordinal));
        Assert.Equal(["deep"], Directory.GetFileSystemEntries(_house.In("out")).Select(Path.GetFileName));
    }

    private IEnumerable<string> Titles() => Dances.Search(new DanceQuery()).Rows.Select(r => r.Facts.Title);
}
