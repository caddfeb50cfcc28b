using System.Text;
using Scuff.Repertoire;

namespace Tests.Repertoire;

public sealed class LinkedFolderTests : IDisposable
{
    private readonly ClubHouse _house = new();

    private ClubDances Dances => _house.Club.Dances;

    private LinkedFolder Linked => _house.Club.Linked;

    private string Folder => _house.In("dances");

    public void Dispose() => _house.Dispose();

    [Fact]
    public void Linking_makes_files_dances_and_dances_files()
    {
        string here = Dances.Add("Only Here\nstep", "page").Id;
        string both = Dances.Add("Both\nstep", "page").Id;
        Dances.SetTags(both, ["easy"]);
        _house.Folder("dances", ("both under another name.dance", "Both\r\nstep"), ("there.dance", "Only There"), ("notes.txt", "x"));

        FolderReport report = Linked.Link(Folder);

        string there = Assert.Single(report.Added);
        Assert.Equal("Only There", Dances.Get(there)!.Text);
        Assert.Equal([here], report.Written);
        Assert.Equal("Only Here\nstep", FileText("Only Here.dance"));
        Assert.Equal("both under another name.dance", Dances.Get(both)!.Row.FileName);
        Assert.Equal("Both\r\nstep", FileText("both under another name.dance"));
        Assert.Equal(3, Dances.Search(new DanceQuery()).Total);
        Assert.Equal(Folder, Linked.Path);
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_folder_that_is_not_there_or_is_the_clubs_own_is_refused()
    {
        Assert.Equal(ClubTroubleKind.Folder, Assert.Throws<ClubTrouble>(() => Linked.Link(_house.In("nowhere"))).Kind);
        Assert.Equal(ClubTroubleKind.Folder, Assert.Throws<ClubTrouble>(() => Linked.Link(_house.ClubFolder)).Kind);
        Directory.CreateDirectory(Path.Combine(_house.ClubFolder, "music"));
        Assert.Equal(ClubTroubleKind.Folder, Assert.Throws<ClubTrouble>(() => Linked.Link(Path.Combine(_house.ClubFolder, "music"))).Kind);
        Assert.Null(Linked.Path);
    }

    [Fact]
    public void A_save_goes_into_the_file_in_the_form_the_file_had()
    {
        _house.Folder("dances");
        File.WriteAllBytes(Path.Combine(Folder, "win.dance"), [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("Böx\r\nold\r\n")]);
        string id = Linked.Link(Folder).Added[0];

        Assert.Equal(new SaveOutcome.Saved(2), Dances.Save(id, "Böx\nnew\n", 1, "page"));

        Assert.Equal([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("Böx\r\nnew\r\n")], File.ReadAllBytes(Path.Combine(Folder, "win.dance")));
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_new_dance_gets_a_file_that_is_not_taken()
    {
        _house.Folder("dances", ("BOX.dance", "Box\nother"), ("box 2.dance.bak", "x"));
        Directory.CreateDirectory(Path.Combine(Folder, "Box 2.dance"));
        Linked.Link(Folder);

        StoredDance added = Dances.Add("Box\nmine", "page");

        Assert.Equal("Box 3.dance", added.Row.FileName);
        Assert.Equal("Box\nmine", FileText("Box 3.dance"));
        AssertNothingLeftToDo();
    }

    [Fact]
    public void An_edit_outside_is_picked_up_and_the_text_before_becomes_a_version()
    {
        string id = LinkOne("Box\nold");
        List<ClubChange> told = [];
        _house.Club.Changed += (_, change) => told.Add(change);
        Write("box.dance", "Box\nedited outside");

        FolderReport report = Linked.Rescan();

        Assert.Equal([id], report.Edited);
        Assert.Empty(report.Clashes);
        Assert.Equal("Box\nedited outside", Dances.Get(id)!.Text);
        Assert.Equal("Box\nold", Dances.VersionText(id, 1));
        Assert.Contains(told, c => c.Dances.Contains(id) && c.Folder is { Edited.Count: 1 });
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_save_upon_a_text_that_was_edited_outside_meanwhile_is_refused_as_between_two_pages()
    {
        string id = LinkOne("Box\nold");
        Write("box.dance", "Box\nedited outside");

        SaveOutcome outcome = Dances.Save(id, "Box\nfrom the page", 1, "page");

        Assert.Equal(new SaveOutcome.Changed(2, "Box\nedited outside"), outcome);
        Assert.Equal("Box\nedited outside", FileText("box.dance"));

        Assert.Equal(new SaveOutcome.Saved(3), Dances.Save(id, "Box\nfrom the page", 2, "page"));
        Assert.Equal("Box\nfrom the page", FileText("box.dance"));
        Assert.Contains("Box\nedited outside", Dances.Versions(id).Select(v => Dances.VersionText(id, v.Number)));
    }

    [Fact]
    public void When_both_have_changed_neither_is_lost_and_both_are_told()
    {
        string id = LinkOne("Box\nold");
        Directory.Move(Folder, _house.In("away"));
        SaveOutcome.Saved saved = Assert.IsType<SaveOutcome.Saved>(Dances.Save(id, "Box\nin the club", 1, "page"));
        Assert.NotNull(saved.FileTrouble);
        File.WriteAllText(_house.In("away", "box.dance"), "Box\nin the file");
        Directory.Move(_house.In("away"), Folder);

        FolderReport report = Linked.Rescan();

        FolderClash clash = Assert.Single(report.Clashes);
        Assert.Equal(id, clash.Id);
        Assert.Equal("Box\nin the file", Dances.Get(id)!.Text);
        Assert.Equal("Box\nin the club", Dances.VersionText(id, clash.Version));
        Assert.Equal("from the club, when the file was changed too", Dances.Versions(id).Single(v => v.Number == clash.Version).Name);
        AssertNothingLeftToDo();
    }

    [Fact]
    public void What_was_saved_while_the_folder_was_away_is_written_when_it_is_back()
    {
        string id = LinkOne("Box\nold");
        Directory.Move(Folder, _house.In("away"));
        Dances.Save(id, "Box\nnew", 1, "page");
        string added = Dances.Add("Second", "page").Id;

        FolderReport away = Linked.Rescan();
        Assert.Contains("The club has its dances all the same.", Assert.Single(away.Troubles), StringComparison.Ordinal);
        Assert.Equal(2, Dances.Search(new DanceQuery()).Total);

        Directory.Move(_house.In("away"), Folder);
        Assert.Equal([id, added], Linked.Rescan().Written);
        Assert.Equal("Box\nnew", FileText("box.dance"));
        Assert.Equal("Second", FileText("Second.dance"));
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_file_that_vanishes_puts_its_dance_into_the_bin_and_brings_it_back()
    {
        string id = LinkOne("Box\nold", ("other.dance", "Other"));
        Dances.SetTags(id, ["easy"]);
        File.Delete(Path.Combine(Folder, "box.dance"));

        Assert.Equal([id], Linked.Rescan().Binned);
        Assert.NotNull(Dances.Get(id)!.Row.RemovedAt);
        Assert.Equal("Box\nold", Dances.Get(id)!.Text);

        Write("back again.dance", "Box\nold");
        Assert.Equal([id], Linked.Rescan().Added);
        Assert.Null(Dances.Get(id)!.Row.RemovedAt);
        Assert.Equal(["easy"], Dances.Get(id)!.Row.Tags);
        Assert.Equal(1, Dances.Get(id)!.Revision);
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_folder_that_is_empty_all_at_once_is_no_reason_to_empty_the_club()
    {
        LinkOne("Box", ("other.dance", "Other"));
        Directory.Delete(Folder, recursive: true);
        Directory.CreateDirectory(Folder);

        FolderReport report = Linked.Rescan();

        Assert.Empty(report.Binned);
        Assert.Equal($"There is no dance in {Folder} any more. If its drive is away, put it back; the club has all 2 dances. If you took them out on purpose, unlink the folder.", Assert.Single(report.Troubles));
        Assert.Equal(2, Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void A_rename_is_known_by_the_content()
    {
        string id = LinkOne("Box\nold", ("other.dance", "Other"));
        File.Move(Path.Combine(Folder, "box.dance"), Path.Combine(Folder, "The Box.dance"));

        Assert.Equal([id], Linked.Rescan().Renamed);

        Assert.Equal("The Box.dance", Dances.Get(id)!.Row.FileName);
        Assert.Equal(1, Dances.Get(id)!.Revision);
        Dances.Save(id, "Box\nnew", 1, "page");
        Assert.Equal("Box\nnew", FileText("The Box.dance"));
        Assert.False(File.Exists(Path.Combine(Folder, "box.dance")));
    }

    [Fact]
    public void Names_that_were_exchanged_are_known_by_the_content()
    {
        string a = LinkOne("A", ("other.dance", "B"));
        string b = Dances.Search(new DanceQuery { Words = "b" }).Rows.Single().Id;
        Write("box.dance", "B");
        Write("other.dance", "A");

        FolderReport report = Linked.Rescan();

        Assert.Equal([a, b], report.Renamed.Order(StringComparer.Ordinal));
        Assert.Equal(("A", "other.dance"), (Dances.Get(a)!.Text, Dances.Get(a)!.Row.FileName));
        Assert.Equal(("B", "box.dance"), (Dances.Get(b)!.Text, Dances.Get(b)!.Row.FileName));
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_chain_of_renames_onto_one_another_is_known_by_the_content()
    {
        string a = LinkOne("A", ("other.dance", "B"));
        string b = Dances.Search(new DanceQuery { Words = "b" }).Rows.Single().Id;
        File.Move(Path.Combine(Folder, "other.dance"), Path.Combine(Folder, "third.dance"));
        File.Move(Path.Combine(Folder, "box.dance"), Path.Combine(Folder, "other.dance"));

        Linked.Rescan();

        Assert.Equal("other.dance", Dances.Get(a)!.Row.FileName);
        Assert.Equal("third.dance", Dances.Get(b)!.Row.FileName);
        Assert.Equal((1, 1), (Dances.Get(a)!.Revision, Dances.Get(b)!.Revision));
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_file_moved_over_another_bins_the_one_that_is_gone()
    {
        string a = LinkOne("A", ("other.dance", "B"));
        string b = Dances.Search(new DanceQuery { Words = "b" }).Rows.Single().Id;
        File.Move(Path.Combine(Folder, "box.dance"), Path.Combine(Folder, "other.dance"), overwrite: true);

        FolderReport report = Linked.Rescan();

        Assert.Equal([a], report.Renamed);
        Assert.Equal([b], report.Binned);
        Assert.Equal("B", Dances.Get(b)!.Text);
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_copy_made_before_an_edit_is_a_dance_of_its_own()
    {
        string id = LinkOne("Box\nold");
        File.Copy(Path.Combine(Folder, "box.dance"), Path.Combine(Folder, "box before.dance"));
        Write("box.dance", "Box\nnew");

        FolderReport report = Linked.Rescan();

        Assert.Equal([id], report.Edited);
        Assert.Equal("Box\nold", Dances.Get(Assert.Single(report.Added))!.Text);
        Assert.Equal("box.dance", Dances.Get(id)!.Row.FileName);
        AssertNothingLeftToDo();
    }

    [Fact]
    public void A_file_renamed_while_a_page_has_it_open_is_followed()
    {
        string id = LinkOne("Box\nold", ("other.dance", "Other"));
        File.Move(Path.Combine(Folder, "box.dance"), Path.Combine(Folder, "renamed.dance"));

        Dances.Save(id, "Box\nnew", 1, "page");

        Assert.Equal("Box\nnew", FileText("renamed.dance"));
        Assert.False(File.Exists(Path.Combine(Folder, "box.dance")));
        Assert.Equal(2, Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void Removing_a_dance_takes_its_file_and_bringing_it_back_writes_it()
    {
        string id = LinkOne("Box\nold", ("other.dance", "Other"));

        Dances.Remove(id);
        Assert.False(File.Exists(Path.Combine(Folder, "box.dance")));
        AssertNothingLeftToDo();

        Dances.BringBack(id);
        Assert.Equal("Box\nold", FileText("Box.dance"));
        AssertNothingLeftToDo();
    }

    [Fact]
    public void Removing_a_dance_whose_file_was_edited_outside_loses_no_word()
    {
        string id = LinkOne("Box\nold", ("other.dance", "Other"));
        Write("box.dance", "Box\nedited");

        Dances.Remove(id);

        Assert.Equal("Box\nedited", Dances.Get(id)!.Text);
        Assert.False(File.Exists(Path.Combine(Folder, "box.dance")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\u0001")]
    public void A_file_that_is_no_text_for_a_moment_changes_nothing(string content)
    {
        string id = LinkOne("Box\nold");
        Write("box.dance", content);

        FolderReport report = Linked.Rescan();

        Assert.StartsWith("box.dance is ", Assert.Single(report.Troubles), StringComparison.Ordinal);
        Assert.Equal("Box\nold", Dances.Get(id)!.Text);
        Assert.Null(Dances.Get(id)!.Row.RemovedAt);

        // nor is it written over
        SaveOutcome.Saved saved = Assert.IsType<SaveOutcome.Saved>(Dances.Save(id, "Box\nnew", 1, "page"));
        Assert.NotNull(saved.FileTrouble);
        Assert.Equal(content, FileText("box.dance"));
    }

    [Fact]
    public void A_file_that_may_not_be_written_does_not_stop_the_save()
    {
        string id = LinkOne("Box\nold");
        File.SetAttributes(Path.Combine(Folder, "box.dance"), FileAttributes.ReadOnly);

        SaveOutcome outcome = Dances.Save(id, "Box\nnew", 1, "page");

        Assert.Equal(
            new SaveOutcome.Saved(2, $"{Path.Combine(Folder, "box.dance")} was not written: the file or its folder is read-only."), outcome);
        File.SetAttributes(Path.Combine(Folder, "box.dance"), FileAttributes.Normal);
        Linked.Rescan();
        Assert.Equal("Box\nnew", FileText("box.dance"));
    }

    [Fact]
    public void After_a_crash_between_the_club_and_the_file_the_file_follows_without_a_clash()
    {
        string id = LinkOne("Box\nold");
        Dances.Save(id, "Box\nnew", 1, "page");
        // as if the program had been killed before it noted that the file was written
        _house.Club.Store.Write(db =>
        {
            Scuff.Repertoire.Storage.DanceEntry dance = db.Dances.Single();
            dance.FileRevision = 1;
            dance.FileDigest = new string('0', 64);
            return true;
        });

        FolderReport report = Linked.Rescan();

        Assert.Empty(report.Clashes);
        Assert.Equal("Box\nnew", Dances.Get(id)!.Text);
        AssertNothingLeftToDo();
    }

    [Fact]
    public void Edits_made_while_the_club_was_closed_are_picked_up_at_opening()
    {
        string id = LinkOne("Box\nold");
        _house.Close();
        Write("box.dance", "Box\nedited while closed");

        _house.Reopen();

        // the look at opening goes on in the background; asking for one waits for it
        Linked.Rescan();
        Assert.Equal("Box\nedited while closed", Dances.Get(id)!.Text);
    }

    [Fact]
    public void The_system_tells_of_edits_and_pages_are_told()
    {
        string id = LinkOne("Box\nold");
        using ManualResetEventSlim told = new();
        _house.Club.Changed += (_, change) =>
        {
            if (change.Dances.Contains(id) && change.Folder is { Edited.Count: 1 })
            {
                told.Set();
            }
        };

        Write("box.dance", "Box\nedited outside");

        Assert.True(told.Wait(TimeSpan.FromSeconds(20)), "the watcher told of nothing");
        Assert.Equal("Box\nedited outside", Dances.Get(id)!.Text);
    }

    [Fact]
    public void Unlinking_leaves_files_and_dances_as_they_are()
    {
        string id = LinkOne("Box\nold");

        Linked.Unlink();
        Dances.Save(id, "Box\nnew", 1, "page");
        Write("more.dance", "More");

        Assert.Equal("Box\nold", FileText("box.dance"));
        Assert.Equal(FolderReport.Nothing, Linked.Rescan());
        Assert.Null(Linked.Path);
        _house.Reopen();
        Assert.Null(Linked.Path);
        Assert.Equal(1, Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void Importing_writes_files_too()
    {
        LinkOne("Box\nold");
        _house.Folder("in", ("x.dance", "New One"));

        _house.Club.Import(_house.In("in"), SameTitle.AddBeside);

        Assert.Equal("New One", FileText("New One.dance"));
        AssertNothingLeftToDo();
    }

    [Fact]
    public void Whatever_happens_to_the_files_no_text_is_lost()
    {
        Random dice = new(11);
        _house.Folder("dances", ("0.dance", "start 0"), ("1.dance", "start 1"), ("2.dance", "start 2"));
        Linked.Link(Folder);
        HashSet<string> written = ["start 0", "start 1", "start 2"];
        for (int i = 0; i < 150; i++)
        {
            string[] files = [.. Directory.GetFiles(Folder).Order(StringComparer.Ordinal)];
            string text = $"text {i}";
            switch (dice.Next(7))
            {
                case 0:
                    File.WriteAllText(Path.Combine(Folder, $"new {i}.dance"), text);
                    written.Add(text);
                    break;
                case 1 when files.Length > 0:
                    // a text outside is safe once a look has seen it
                    File.WriteAllText(files[dice.Next(files.Length)], text);
                    written.Add(text);
                    Linked.Rescan();
                    break;
                case 2 when files.Length > 1:
                    Linked.Rescan();
                    File.Delete(files[dice.Next(files.Length)]);
                    break;
                case 3 when files.Length > 0:
                    File.Move(files[dice.Next(files.Length)], Path.Combine(Folder, $"renamed {i}.dance"));
                    break;
                case 4:
                    Dances.Add(text, "page");
                    written.Add(text);
                    break;
                case 5:
                    DanceRow row = Dances.Search(new DanceQuery { Take = 500 }).Rows is { Count: > 0 } rows ? rows[dice.Next(rows.Count)] : Dances.Add(text, "page").Row;
                    SaveOutcome outcome = Dances.Save(row.Id, text, row.Revision, "page");
                    if (outcome is SaveOutcome.Changed changed)
                    {
                        outcome = Dances.Save(row.Id, text, changed.Revision, "page");
                    }

                    Assert.IsType<SaveOutcome.Saved>(outcome);
                    written.Add(text);
                    break;
                default:
                    Linked.Rescan();
                    break;
            }

            _house.Clock.GoOn(TimeSpan.FromMinutes(11));
        }

        Linked.Rescan();
        AssertNothingLeftToDo();
        List<string> found = [];
        foreach (bool inBin in (bool[])[false, true])
        {
            foreach (DanceRow row in Dances.Search(new DanceQuery { InBin = inBin, Take = 1000 }).Rows)
            {
                StoredDance dance = Dances.Get(row.Id)!;
                found.Add(dance.Text);
                found.AddRange(Dances.Versions(row.Id).Select(v => Dances.VersionText(row.Id, v.Number)!));
                Assert.True(inBin || FileText(row.FileName!) == dance.Text);
            }
        }

        Assert.Empty(written.Except(found));
        Assert.Equal(Directory.GetFiles(Folder).Length, Dances.Search(new DanceQuery()).Total);
    }

    private string LinkOne(string text, params (string Name, string Text)[] others)
    {
        _house.Folder("dances", [("box.dance", text), .. others]);
        FolderReport report = Linked.Link(Folder);
        Assert.Empty(report.Troubles);
        return report.Added[0];
    }

    private void AssertNothingLeftToDo() => Assert.Equal(FolderReport.Nothing, Linked.Rescan());

    private void Write(string name, string text) => File.WriteAllText(Path.Combine(Folder, name), text);

    private string FileText(string name) => File.ReadAllText(Path.Combine(Folder, name));
}
