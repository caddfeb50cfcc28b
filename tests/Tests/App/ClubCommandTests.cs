using System.Diagnostics;
using Scuff.App.Clubs;
using Scuff.Repertoire;

namespace Tests.App;

public sealed class ClubCommandTests : IDisposable
{
    private readonly ProgramRun _run = new();

    public void Dispose() => _run.Dispose();

    [Fact]
    public void A_folder_goes_in_into_a_backup_and_out_again()
    {
        _run.Put("in/box.dance", ProgramRun.CleanDance);
        _run.Put("in/wrong.dance", ProgramRun.FaultyDance);

        Assert.Equal(0, _run.Run("club", "import", "--club", "mine", "in"));
        Assert.Equal("2 dances came into the club.\n", _run.Out);
        Assert.Equal(0, _run.Run("club", "import", "--club", "mine", "in"));
        Assert.Equal("2 dances already here.\n", _run.Out);
        Assert.Equal(0, _run.Run("club", "backup", "--club", "mine", "mine.zip"));
        Assert.Equal("Wrote 2 dances and 0 tracks into mine.zip\n", _run.Out);
        Assert.Equal(0, _run.Run("club", "restore", "--club", "again", "mine.zip"));
        Assert.Equal("The club has 2 dances and 0 tracks now.\n", _run.Out);
        Assert.Equal(0, _run.Run("club", "export", "--club", "again", "out"));
        Assert.Equal("2 dances written into the folder.\n", _run.Out);

        Assert.Equal(ProgramRun.CleanDance, _run.Get("out/Harbour Box.dance"));
        Assert.Equal(ProgramRun.FaultyDance, _run.Get("out/Wrong Foot.dance"));
    }

    [Fact]
    public void Restoring_over_a_club_says_where_it_is_kept()
    {
        _run.Put("in/box.dance", ProgramRun.CleanDance);
        _run.Run("club", "import", "--club", "mine", "in");
        _run.Run("club", "backup", "--club", "mine", "--music", "mine.zip");

        Assert.Equal(0, _run.Run("club", "restore", "--club", "mine", "mine.zip"));

        Assert.Contains("The club as it was is kept in ", _run.Out, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(Path.Combine(_run.Folder, "mine", "kept"), "*before restoring.zip"));
    }

    [Fact]
    public void Replacing_keeps_one_dance_of_a_title()
    {
        _run.Put("in/box.dance", ProgramRun.CleanDance);
        _run.Run("club", "import", "--club", "mine", "in");
        _run.Put("in/box.dance", ProgramRun.CleanDance + "\n");

        Assert.Equal(0, _run.Run("club", "import", "--club", "mine", "--replace", "in"));

        Assert.Equal("1 dance replaced.\n", _run.Out);
    }

    [Fact]
    public void A_file_that_is_no_text_is_told_and_the_rest_taken()
    {
        _run.Put("in/box.dance", ProgramRun.CleanDance);
        _run.Put("in/song.dance", [0, 1, 2]);

        Assert.Equal(2, _run.Run("club", "import", "--club", "mine", "in"));

        Assert.Equal("1 dance came into the club.\nsong.dance is not a text (it holds zero bytes, as pictures, sound and programs do).\n", _run.Out);
    }

    [Fact]
    public void A_backup_never_replaces_a_file_that_is_none()
    {
        _run.Put("in/box.dance", ProgramRun.CleanDance);
        _run.Run("club", "import", "--club", "mine", "in");

        Assert.Equal(2, _run.Run("club", "backup", "--club", "mine", "in/box.dance"));
        Assert.Equal("scuff: in/box.dance is there already and is no backup, so it was left alone. Name another file.\n", _run.Error);
        Assert.Equal(ProgramRun.CleanDance, _run.Get("in/box.dance"));

        _run.Run("club", "backup", "--club", "mine", "mine.zip");
        Assert.Equal(0, _run.Run("club", "backup", "--club", "mine", "mine.zip"));
    }

    [Theory]
    [InlineData("backup", "b.zip", "There is no club in ")]
    [InlineData("export", "out", "There is no club in ")]
    [InlineData("restore", "in/box.dance", "is no backup of a Scuff club, so nothing was restored.")]
    [InlineData("restore", "nowhere.zip", "There is no file or folder named ")]
    [InlineData("import", "nowhere", "There is no file or folder named ")]
    [InlineData("import", "--slip", "There is no option --slip here")]
    [InlineData("mend", "x", "mend")]
    public void What_cannot_be_done_is_told(string act, string path, string sentence)
    {
        _run.Put("in/box.dance", ProgramRun.CleanDance);

        Assert.Equal(2, _run.Run("club", act, path, "--club", "mine"));

        Assert.Contains(sentence, _run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("restore", "--music", "--music goes with backup, not with restore.")]
    [InlineData("backup", "--replace", "--replace goes with import, not with backup.")]
    public void Options_belong_to_their_acts(string act, string option, string sentence)
    {
        Assert.Equal(2, _run.Run("club", act, option, "x"));

        Assert.Contains(sentence, _run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_home_a_club_has_to_be_named()
    {
        Assert.Equal(2, _run.Run("club", "export", "out"));

        Assert.Equal("scuff: There is no place to keep a club on this machine. Name its folder: scuff club export --club my-club out\n", _run.Error);
    }

    [Fact]
    public void A_program_that_is_killed_in_the_middle_leaves_whole_dances_and_the_next_one_finishes()
    {
        HashSet<string> texts = [.. Enumerable.Range(0, 600).Select(i => ProgramRun.CleanDance.Replace("Harbour Box", $"Harbour Box {i}", StringComparison.Ordinal))];
        int n = 0;
        foreach (string text in texts)
        {
            _run.Put($"in/{n++}.dance", text);
        }

        string club = Path.Combine(_run.Folder, "mine");
        string log = Path.Combine(club, "club.db-wal");
        ProcessStartInfo start = new("dotnet", [typeof(DanceFactReader).Assembly.Location, "club", "import", "--club", club, Path.Combine(_run.Folder, "in")])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using (Process program = Process.Start(start)!)
        using (ManualResetEventSlim never = new())
        {
            // killed once the first dances are on their way to the disk; the making of an empty club takes 200 kB of the log.
            // SQLite may take the log away at any moment, so that its being there and its size are asked for in one look
            while (!program.HasExited && new FileInfo(log) is not { Exists: true, Length: > 600_000 })
            {
                never.Wait(1);
            }

            program.Kill();
            program.WaitForExit();
        }

        using (Club left = Club.Open(club, TimeProvider.System, new DanceFactReader()))
        {
            DancePage found = left.Dances.Search(new DanceQuery { Take = 1000 });
            Assert.Equal(found.Total, left.Dances.Search(new DanceQuery { Words = "harbour" }).Total);
            Assert.All(found.Rows, row => Assert.Contains(left.Dances.Get(row.Id)!.Text, texts));
        }

        Assert.Equal(0, _run.Run("club", "import", "--club", "mine", "in"));
        using Club whole = Club.Open(club, TimeProvider.System, new DanceFactReader());
        DancePage all = whole.Dances.Search(new DanceQuery { Take = 1000 });
        Assert.Equal(texts.Order(StringComparer.Ordinal), all.Rows.Select(r => whole.Dances.Get(r.Id)!.Text).Order(StringComparer.Ordinal));
    }
}
