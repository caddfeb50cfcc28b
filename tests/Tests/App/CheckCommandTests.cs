using System.Text;
using System.Text.Json;

namespace Tests.App;

public sealed class CheckCommandTests
{
    [Fact]
    public void A_clean_dance_is_told_in_one_line_and_ends_with_0()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        int code = run.Run("check", "box.dance");

        Assert.Equal("Harbour Box: 16 counts, 1 wall, clean", run.Out.Trim());
        Assert.Equal("", run.Error);
        Assert.Equal(0, code);
    }

    [Fact]
    public void A_complaint_shows_the_line_with_the_faulty_words_underlined()
    {
        using ProgramRun run = new();
        run.Put("wrong.dance", ProgramRun.FaultyDance);

        int code = run.Run("check", "wrong.dance");

        Assert.Equal(1, code);
        string[] lines = run.Out.Split('\n');
        int place = Array.FindIndex(lines, l => l.StartsWith("wrong.dance:10:", StringComparison.Ordinal));
        Assert.True(place >= 0, run.Out);
        Assert.Contains("error weight/foot-not-free", lines[place], StringComparison.Ordinal);
        Assert.Contains("10 | 3-4  step L to side, touch R together", lines[place + 1], StringComparison.Ordinal);
        int underlined = lines[place + 2].IndexOf('^', StringComparison.Ordinal);
        Assert.Equal(lines[place + 1].IndexOf("step L", StringComparison.Ordinal), underlined);
        Assert.Contains("Wrong Foot: 8 counts, 1 wall, 1 error", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_is_an_array_with_the_fixed_fields_in_the_order_given()
    {
        using ProgramRun run = new();
        run.Put("wrong.dance", ProgramRun.FaultyDance);
        run.Put("box.dance", ProgramRun.CleanDance);

        int code = run.Run("check", "--json", "wrong.dance", "missing.dance", "box.dance");

        Assert.Equal(2, code);
        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement[] files = [.. json.RootElement.EnumerateArray()];
        Assert.Equal(["wrong.dance", "missing.dance", "box.dance"], files.Select(f => f.GetProperty("file").GetString()));

        JsonElement complaint = Assert.Single(files[0].GetProperty("complaints").EnumerateArray().ToArray());
        Assert.Equal("weight/foot-not-free", complaint.GetProperty("id").GetString());
        Assert.Equal("error", complaint.GetProperty("severity").GetString());
        Assert.Equal(10, complaint.GetProperty("line").GetInt32());
        Assert.Equal(6, complaint.GetProperty("column").GetInt32());
        Assert.Equal("3", complaint.GetProperty("count").GetString());
        Assert.NotEqual("", complaint.GetProperty("message").GetString());
        Assert.Equal(JsonValueKind.Array, complaint.GetProperty("fixes").ValueKind);

        Assert.Contains("no file", files[1].GetProperty("error").GetString(), StringComparison.Ordinal);
        Assert.Equal(0, files[1].GetProperty("complaints").GetArrayLength());
        Assert.Contains("no file", run.Error, StringComparison.Ordinal);

        Assert.False(files[2].TryGetProperty("error", out _));
        Assert.Equal(16, files[2].GetProperty("counts").GetInt32());
        Assert.Equal(0, files[2].GetProperty("netTurnEighths").GetInt32());
        Assert.Equal(1, files[2].GetProperty("walls").GetInt32());
        Assert.Equal("beginner", files[2].GetProperty("level").GetString());
    }

    [Fact]
    public void Standard_input_is_read_for_a_dash_and_when_nothing_is_named()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.RunWithInput(ProgramRun.CleanDance, "check"));
        Assert.Equal(1, run.RunWithInput(ProgramRun.FaultyDance, "check", "-"));
        Assert.Contains("standard input:10:", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_named_and_nothing_piped_is_wrong_usage()
    {
        using ProgramRun run = new();

        Assert.Equal(2, run.Run("check"));
        Assert.Contains("Name a dance file", run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Out);
    }

    [Fact]
    public void A_folder_stands_for_its_dances_in_order_of_their_names()
    {
        using ProgramRun run = new();
        run.Put("club/b.dance", ProgramRun.CleanDance);
        run.Put("club/a.dance", ProgramRun.FaultyDance);
        run.Put("club/notes.txt", "bring the lantern");

        int code = run.Run("check", "--json", "club");

        Assert.Equal(1, code);
        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Equal(
            [Path.Combine("club", "a.dance"), Path.Combine("club", "b.dance")],
            json.RootElement.EnumerateArray().Select(f => f.GetProperty("file").GetString()));
    }

    [Fact]
    public void Several_dances_close_with_a_line_for_all_of_them()
    {
        using ProgramRun run = new();
        run.Put("a.dance", ProgramRun.CleanDance);
        run.Put("b.dance", ProgramRun.FaultyDance);

        run.Run("check", "a.dance", "b.dance");

        Assert.EndsWith("2 dances: 1 clean, 1 with complaints", run.Out.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void Colours_are_there_only_when_the_terminal_has_them()
    {
        using ProgramRun run = new();
        run.Put("wrong.dance", ProgramRun.FaultyDance);

        run.Run("check", "wrong.dance");
        Assert.DoesNotContain('\e', run.Out);

        run.Run(["check", "wrong.dance"], input: null, colours: true);
        Assert.Contains("\e[", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_cannot_steer_the_terminal()
    {
        using ProgramRun run = new();
        run.Put("odd.dance", ProgramRun.FaultyDance.Replace("step L to side, touch R together\n5-6", "step L to side\e[2J, touch R\n5-6", StringComparison.Ordinal));

        run.Run("check", "odd.dance");

        Assert.DoesNotContain('\e', run.Out);
    }

    [Fact]
    public void Safe_mends_are_written_and_told_and_leave_the_rest_of_the_text_alone()
    {
        using ProgramRun run = new();
        string text = ProgramRun.CleanDance.Replace("counts: 16", "counts: 32", StringComparison.Ordinal);
        run.Put("box.dance", Encoding.UTF8.GetBytes(text.Replace("\n", "\r\n", StringComparison.Ordinal)));

        int code = run.Run("check", "--fix", "box.dance");

        Assert.Contains("Mended box.dance, line 5", run.Out, StringComparison.Ordinal);
        Assert.Equal(0, code);
        Assert.Equal(ProgramRun.CleanDance.Replace("\n", "\r\n", StringComparison.Ordinal), run.Get("box.dance"));
        Assert.Equal(["box.dance"], Directory.GetFiles(run.Folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_clean_file_is_not_written_by_fix()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);
        string path = Path.Combine(run.Folder, "box.dance");
        DateTime before = new(2001, 2, 3, 4, 5, 6, DateTimeKind.Utc);
        File.SetLastWriteTimeUtc(path, before);

        Assert.Equal(0, run.Run("check", "--fix", "box.dance"));

        Assert.Equal(before, File.GetLastWriteTimeUtc(path));
    }

    [Fact]
    public void Fix_of_standard_input_is_refused()
    {
        using ProgramRun run = new();

        Assert.Equal(2, run.RunWithInput(ProgramRun.FaultyDance, "check", "--fix"));
        Assert.Contains("needs a named file", run.Error, StringComparison.Ordinal);
    }
}
