using System.Text.Json;

namespace Tests.App;

public sealed class CallsCommandTests
{
    [Fact]
    public void The_list_says_when_what_and_for_which_count()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.RunWithInput(ProgramRun.CleanDance, "calls", "--bpm", "100", "-"));

        Assert.Contains("Harbour Box, called at 100 counts a minute", run.Out, StringComparison.Ordinal);
        Assert.Matches(@"(?m)^  0:02\.4      1     in  5$", run.Out);
        Assert.Contains("together", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_has_every_call_with_its_seconds()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.RunWithInput(ProgramRun.CleanDance, "calls", "--format", "json", "--bpm", "120", "--speed", "50", "--help-level", "every-step", "-"));

        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement[] calls = [.. json.RootElement.GetProperty("calls").EnumerateArray()];

        // at half of 120 a count is a second, and the dance begins after eight
        JsonElement five = calls.Single(c => c.GetProperty("words").GetString() == "5");
        Assert.Equal(4, five.GetProperty("seconds").GetDouble(), 6);
        Assert.Equal("count-in", five.GetProperty("kind").GetString());
        Assert.All(calls, c => Assert.True(c.GetProperty("seconds").GetDouble() >= 0));
        Assert.All(calls.Where(c => c.GetProperty("kind").GetString() == "move"), c => Assert.Equal(8 + c.GetProperty("for").GetDouble(), c.GetProperty("due").GetDouble(), 6));
    }

    [Theory]
    [InlineData("--bpm takes counts a minute between 20 and 400, and not fast.", "--bpm", "fast")]
    [InlineData("--speed takes per cent between 25 and 200, and not 5.", "--speed", "5")]
    [InlineData("There is no help named loud. It is every-step, headings, warnings, silent, with commas between walls.", "--help-level", "headings,loud")]
    [InlineData("There is no format film. The formats are text, json, chapters, counts, counts-srt, srt, vtt.", "--format", "film")]
    public void What_is_typed_wrong_gets_a_sentence(string expected, params string[] words)
    {
        using ProgramRun run = new();

        Assert.Equal(2, run.RunWithInput(ProgramRun.CleanDance, ["calls", .. words, "-"]));

        Assert.Contains(expected, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Captions_are_written_into_a_file_whole()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("calls", "--format", "vtt", "--output", "film.vtt", "box.dance"));

        Assert.StartsWith("WEBVTT Harbour Box\n\n1\n", File.ReadAllText(Path.Combine(run.Folder, "film.vtt")), StringComparison.Ordinal);
        Assert.Contains("Wrote film.vtt", run.Error, StringComparison.Ordinal);

        Assert.Equal(2, run.Run("calls", "--format", "vtt", "--output", "no/such/film.vtt", "box.dance"));
        Assert.Contains("film.vtt", run.Error, StringComparison.Ordinal);
    }
}
