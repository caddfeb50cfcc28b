using System.Text.Json;

namespace Tests.App;

public sealed class CompareCommandTests
{
    private static readonly string Changed = ProgramRun.CleanDance.Replace("7-8  step L back, touch R together", "7-8  step L back, brush R", StringComparison.Ordinal);

    [Fact]
    public void What_changed_is_told_in_sentences_and_the_code_says_that_they_differ()
    {
        using ProgramRun run = Put(Changed);

        Assert.Equal(1, run.Run("compare", "old.dance", "new.dance"));

        Assert.Equal(
            "Section 1, count 8: touch R together became brush R; facing and weight\n  unchanged.\n\nnew.dance: 1 change\n",
            run.Out.ReplaceLineEndings("\n"));
        Assert.Empty(run.Error);
    }

    [Fact]
    public void The_same_dance_is_told_as_that()
    {
        using ProgramRun run = Put(ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("compare", "old.dance", "new.dance"));

        Assert.Equal("new.dance: nothing changed\n", run.Out.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Words_that_dance_the_same_are_told_and_do_not_count_as_a_difference()
    {
        using ProgramRun run = Put(ProgramRun.CleanDance.Replace("1-2  step R to side, step L together\n", "1-2  right foot to the side, close left\n", StringComparison.Ordinal));

        Assert.Equal(0, run.Run("compare", "old.dance", "new.dance"));

        Assert.Equal("Words only, danced as before: section 1.\n", run.Out.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void A_script_gets_the_track_and_the_brackets_of_a_break()
    {
        string old = ProgramRun.CleanDance + "\ntrack: \"Slow Bell\" by The Slipway Six, 100 bpm\nwall 2: after 4 restart (facing 12:00)\n";
        using ProgramRun run = new();
        run.Put("old.dance", old);
        run.Put("new.dance", old.Replace("(facing 12:00)", "(facing 3:00)", StringComparison.Ordinal));

        Assert.Equal(1, run.Run("compare", "--json", "old.dance", "new.dance"));

        using JsonDocument answer = JsonDocument.Parse(run.Out);
        JsonElement change = Assert.Single(answer.RootElement.GetProperty("changes").EnumerateArray());
        Assert.Equal("breakFacing", change.GetProperty("kind").GetString());
        Assert.Equal("Slow Bell", change.GetProperty("track").GetString());
        Assert.Equal(2, change.GetProperty("wallAfter").GetInt32());
        Assert.Equal("12:00", change.GetProperty("writtenBefore").GetString());
        Assert.Equal("3:00", change.GetProperty("writtenAfter").GetString());
    }

    [Fact]
    public void A_script_gets_kind_place_counts_moves_facing_and_weight()
    {
        using ProgramRun run = Put(Changed);

        Assert.Equal(1, run.Run("compare", "--json", "old.dance", "new.dance"));

        using JsonDocument answer = JsonDocument.Parse(run.Out);
        Assert.False(answer.RootElement.GetProperty("same").GetBoolean());
        JsonElement change = Assert.Single(answer.RootElement.GetProperty("changes").EnumerateArray());
        Assert.Equal("steps", change.GetProperty("kind").GetString());
        Assert.Equal(1, change.GetProperty("section").GetInt32());
        Assert.Equal([7.0, 8.0], change.GetProperty("countsAfter").EnumerateArray().Select(c => c.GetDouble()));
        Assert.Equal(["touch R together"], change.GetProperty("movesBefore").EnumerateArray().Select(m => m.GetString()!));
        Assert.Equal(["brush R"], change.GetProperty("movesAfter").EnumerateArray().Select(m => m.GetString()!));
        Assert.Equal("12:00", change.GetProperty("facingAfter").GetString());
        Assert.Equal("L", change.GetProperty("weightAfter").GetString());
        Assert.StartsWith("Section 1, count 8", change.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        Assert.False(change.TryGetProperty("wallAfter", out _));
    }

    [Theory]
    [InlineData("compare")]
    [InlineData("compare", "old.dance")]
    [InlineData("compare", "old.dance", "new.dance", "old.dance")]
    [InlineData("compare", "-", "-")]
    [InlineData("compare", "old.dance", "missing.dance")]
    [InlineData("compare", "--jsno", "old.dance", "new.dance")]
    public void Wrong_usage_and_files_that_cannot_be_read_are_trouble(params string[] args)
    {
        using ProgramRun run = Put(Changed);

        Assert.Equal(2, run.Run(args));

        Assert.Empty(run.Out);
        Assert.NotEmpty(run.Error);
    }

    [Fact]
    public void One_of_the_two_may_come_on_standard_input()
    {
        using ProgramRun run = Put(Changed);

        Assert.Equal(1, run.RunWithInput(Changed, "compare", "old.dance", "-"));

        Assert.Contains("standard input: 1 change", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_help_says_what_the_exit_codes_mean_here()
    {
        using ProgramRun run = new();

        run.Run("help", "compare");
        Assert.Contains("1 when something changed", run.Out, StringComparison.Ordinal);
        run.Run("help", "check");
        Assert.Contains("1 after an error, question or warning", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_says_what_changed_since_the_version_before()
    {
        using ProgramRun run = Put(Changed);

        Assert.Equal(0, run.Run("sheet", "--since", "old.dance", "new.dance"));
        Assert.Contains(
            "What changed\n------------\n- Section 1, count 8: touch R together became brush R; facing and weight\n  unchanged.\n",
            run.Out.ReplaceLineEndings("\n"),
            StringComparison.Ordinal);

        Assert.Equal(0, run.Run("sheet", "new.dance"));
        Assert.DoesNotContain("What changed", run.Out, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("sheet", "--since", "missing.dance", "new.dance"));
        Assert.Equal(2, run.Run("sheet", "--since", "old.dance", "old.dance", "new.dance"));
    }

    private static ProgramRun Put(string later)
    {
        ProgramRun run = new();
        run.Put("old.dance", ProgramRun.CleanDance);
        run.Put("new.dance", later);
        return run;
    }
}
