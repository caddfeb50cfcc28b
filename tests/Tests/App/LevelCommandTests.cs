using System.Text.Json;

namespace Tests.App;

public sealed class LevelCommandTests
{
    private const string Restarting = """
        Slack Rope

        level: beginner

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        section 2
        1-2  step R forward, touch L together
        3-4  step L back, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 3: after 12 restart
        """;

    [Fact]
    public void Level_says_what_why_and_what_would_make_it_easier()
    {
        using ProgramRun run = new();
        run.Put("rope.dance", Restarting);

        Assert.Equal(0, run.Run("level", "rope.dance"));

        Assert.Equal(
            "Slack Rope: improver (the heading says beginner)\n  improver: a restart once; beginner allows none\n  One level down: drop the restart.\n",
            run.Out.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Sources_are_told_when_asked_for()
    {
        using ProgramRun run = new();
        run.Put("rope.dance", Restarting);

        Assert.Equal(0, run.Run("level", "--sources", "rope.dance"));

        Assert.Contains("pdfslide.net", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_has_the_fixed_fields()
    {
        using ProgramRun run = new();
        run.Put("rope.dance", Restarting);

        Assert.Equal(2, run.Run("level", "--json", "rope.dance", "none.dance"));

        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement file = json.RootElement[0];
        Assert.Equal(["file", "level", "stated", "isComplete", "reasons", "oneLevelDown"], file.EnumerateObject().Select(p => p.Name));
        Assert.Equal(("improver", "beginner"), (file.GetProperty("level").GetString(), file.GetProperty("stated").GetString()));
        JsonElement reason = Assert.Single(file.GetProperty("reasons").EnumerateArray().ToArray());
        Assert.Equal(
            ["level", "measure", "value", "most", "words", "place", "line", "remedy", "source"],
            reason.EnumerateObject().Select(p => p.Name));
        Assert.Equal(("drop the restart", 1), (reason.GetProperty("remedy").GetString(), reason.GetProperty("value").GetDouble()));
        Assert.True(json.RootElement[1].TryGetProperty("error", out _));
    }

    [Fact]
    public void Two_files_of_one_title_without_versions_are_told_apart_by_nobody()
    {
        using ProgramRun run = new();
        run.Put("one.dance", ProgramRun.CleanDance);
        run.Put("two.dance", ProgramRun.CleanDance.Replace("by:", "version: 2\nby:", StringComparison.Ordinal));

        Assert.Equal(0, run.Run("check", "one.dance"));
        Assert.Equal(0, run.Run("check", "one.dance", "one.dance"));
        Assert.Equal(1, run.Run("check", "--json", "one.dance", "two.dance"));
        Assert.Contains("one.dance, which has the same title", run.Out, StringComparison.Ordinal);
    }
}
