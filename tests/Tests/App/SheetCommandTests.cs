namespace Tests.App;

public sealed class SheetCommandTests
{
    [Fact]
    public void The_sheet_is_shown_as_text_when_nothing_is_said()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("sheet", "box.dance"));

        Assert.StartsWith("Harbour Box\n===========\nby Scuff demo\n", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_gets_a_page_for_each_dance()
    {
        using ProgramRun run = new();
        run.Put("club/a.dance", ProgramRun.CleanDance);
        run.Put("club/b.dance", ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("sheet", "--output", "made/here", "club"));

        Assert.Contains("Wrote " + Path.Combine("made/here", "a.html"), run.Out, StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>", run.Get("made/here/b.html"), StringComparison.Ordinal);
        Assert.Equal(2, Directory.GetFiles(Path.Combine(run.Folder, "made/here")).Length);
    }

    [Theory]
    [InlineData("club")]
    [InlineData("club/a.dance", "--language", "de,fr")]
    public void Several_sheets_are_refused_one_pdf_before_anything_is_written(params string[] asked)
    {
        using ProgramRun run = new();
        run.Put("club/a.dance", ProgramRun.CleanDance);
        run.Put("club/b.dance", ProgramRun.CleanDance);

        Assert.Equal(2, run.Run(["sheet", "--format", "pdf", .. asked]));

        Assert.Contains("Several sheets do not go into one pdf", run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Out);
    }

    [Fact]
    public void Two_dances_of_one_file_name_do_not_overwrite_each_other()
    {
        using ProgramRun run = new();
        run.Put("one/a.dance", ProgramRun.CleanDance);
        run.Put("two/a.dance", ProgramRun.FaultyDance);

        Assert.Equal(2, run.Run("sheet", "--output", "made", "one/a.dance", "two/a.dance"));

        Assert.Contains("already holds the sheet of one/a.dance", run.Error, StringComparison.Ordinal);
        Assert.Contains("Harbour Box", run.Get("made/a.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_told_and_the_old_sheet_is_untouched()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);
        run.Put("made", "a file in the way");

        Assert.Equal(2, run.Run("sheet", "--output", "made", "box.dance"));

        Assert.Contains("was not written", run.Error, StringComparison.Ordinal);
        Assert.Equal("a file in the way", run.Get("made"));
    }

    [Fact]
    public void A_dance_with_complaints_is_printed_all_the_same_and_they_are_told()
    {
        using ProgramRun run = new();
        run.Put("wrong.dance", ProgramRun.FaultyDance);

        Assert.Equal(1, run.Run("sheet", "wrong.dance"));

        Assert.StartsWith("Wrong Foot", run.Out, StringComparison.Ordinal);
        Assert.Contains("wrong.dance has 1 error; see: scuff check wrong.dance", run.Error, StringComparison.Ordinal);
    }
}
