using System.Text;

namespace Tests.App;

public sealed class TidyCommandTests
{
    private static readonly string Untidy = ProgramRun.CleanDance
        .Replace("1-2  step R to side, step L together\n3-4  step R forward", "1-2 Stepping right foot to the side, close left foot\n3-4 Step fwd on RF", StringComparison.Ordinal);

    [Fact]
    public void The_tidy_text_goes_to_standard_output_and_the_file_is_left_alone()
    {
        using ProgramRun run = new();
        run.Put("box.dance", Untidy);

        Assert.Equal(0, run.Run("tidy", "box.dance"));

        Assert.Contains("step R to side, step L together", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Stepping", run.Out, StringComparison.Ordinal);
        Assert.Equal(Untidy, run.Get("box.dance"));
    }

    [Fact]
    public void Write_replaces_the_text_once()
    {
        using ProgramRun run = new();
        run.Put("box.dance", Untidy);

        Assert.Equal(0, run.Run("tidy", "--write", "box.dance"));
        Assert.Equal("Tidied box.dance.", run.Out.Trim());
        string tidy = run.Get("box.dance");
        Assert.DoesNotContain("Stepping", tidy, StringComparison.Ordinal);

        Assert.Equal(0, run.Run("tidy", "--write", "box.dance"));
        Assert.Equal("box.dance is tidy.", run.Out.Trim());
        Assert.Equal(tidy, run.Get("box.dance"));
    }

    [Fact]
    public void Windows_line_ends_are_kept_and_utf_16_becomes_utf_8()
    {
        using ProgramRun run = new();
        UnicodeEncoding utf16 = new(bigEndian: false, byteOrderMark: true);
        byte[] bytes = [.. utf16.GetPreamble(), .. utf16.GetBytes(Untidy.Replace("\n", "\r\n", StringComparison.Ordinal))];
        run.Put("box.dance", bytes);

        Assert.Equal(0, run.Run("tidy", "--write", "box.dance"));

        Assert.Equal("Tidied box.dance, as UTF-8.", run.Out.Trim());
        string tidy = Encoding.UTF8.GetString(File.ReadAllBytes(Path.Combine(run.Folder, "box.dance")));
        Assert.StartsWith("Harbour Box\r\n", tidy, StringComparison.Ordinal);
        Assert.DoesNotContain("\n", tidy.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Standard_input_comes_back_tidy_and_complaints_are_told_beside_it()
    {
        using ProgramRun run = new();

        Assert.Equal(1, run.RunWithInput(ProgramRun.FaultyDance, "tidy"));

        Assert.StartsWith("Wrong Foot\n", run.Out, StringComparison.Ordinal);
        Assert.Contains("standard input has 1 error; see: scuff check", run.Error, StringComparison.Ordinal);
    }
}
