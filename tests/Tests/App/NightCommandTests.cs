using System.Text.Json;

namespace Tests.App;

public sealed class NightCommandTests : IDisposable
{
    private readonly ProgramRun _run = new();

    public NightCommandTests()
    {
        foreach (string title in new[] { "Harbour Box", "Tin Lantern", "Tin Tide", "Net Walk", "Rope Step" })
        {
            _run.Put($"in/{title}.dance", ProgramRun.CleanDance.Replace("Harbour Box", title, StringComparison.Ordinal) + $"\n\ntrack: \"Song of {title}\" by The Demo Band, 112 bpm, intro 32\n");
        }

        _run.Run("club", "import", "--club", "mine", "in");
    }

    public void Dispose() => _run.Dispose();

    [Fact]
    public void An_evening_is_made_planned_shown_and_removed()
    {
        Night(0);
        Assert.StartsWith("There is no evening yet.", _run.Out, StringComparison.Ordinal);
        Night(0, "make", "Harbour social", "2026-12-05", "--minutes", "40", "--level", "beginner:20", "--place", "The net loft");
        Assert.StartsWith("Kept Harbour social on 2026-12-05.", _run.Out, StringComparison.Ordinal);

        Night(0, "plan", "harbour", "--request", "net:2", "--rest", "15:5", "--closing", "rope", "--never", "harbour-box", "--why", "--seconds", "20");

        Assert.Contains("rest, 5 minutes", _run.Out, StringComparison.Ordinal);
        Assert.Contains("Net Walk, to Song of Net Walk", _run.Out, StringComparison.Ordinal);
        Assert.Contains("It was asked for by two people.", _run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Harbour Box, to", _run.Out, StringComparison.Ordinal);
        Assert.Contains("percent from the best there can be.", _run.Out.Replace("Proven: no better programme exists for these wishes.", "percent from the best there can be.", StringComparison.Ordinal), StringComparison.Ordinal);
        Night(0, "show", "2026-12-05", "--json");
        using (JsonDocument shown = JsonDocument.Parse(_run.Out))
        {
            Assert.Equal("Rope Step", shown.RootElement.GetProperty("lines").EnumerateArray().Last().GetProperty("title").GetString());
            Assert.True(shown.RootElement.GetProperty("points").GetInt32() <= shown.RootElement.GetProperty("bound").GetInt32());
        }

        Night(0, "remove", "harbour");
        Night(0);
        Assert.StartsWith("There is no evening yet.", _run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_class_is_there_with_what_it_knows()
    {
        _run.Run("book", "class", "Monday", "--people", "12", "--level", "beginner", "--club", "mine");
        _run.Run("book", "record", "Monday", "2026-11-20", "--taught", "tin-lantern", "--danced", "tin-tide", "--club", "mine");
        _run.Run("book", "known", "Monday", "tin-lantern", "alone", "--date", "2026-11-20", "--club", "mine");

        Night(0, "make", "Social", "2026-12-05", "--minutes", "10", "--class", "monday", "--cool-down", "0");
        Night(0, "plan", "social", "--json", "--seconds", "20");

        using JsonDocument shown = JsonDocument.Parse(_run.Out);
        JsonElement[] lines = [.. shown.RootElement.GetProperty("lines").EnumerateArray()];
        Assert.Contains(lines, l => l.GetProperty("title").GetString() == "Tin Lantern" && l.GetProperty("floorPercent").GetInt32() > 60);
    }

    [Fact]
    public void It_is_written_in_every_form_it_has()
    {
        Night(0, "make", "Social", "2026-12-05", "--minutes", "15");
        Night(2, "write", "social", "programme.pdf");
        Assert.Contains("has no programme yet", _run.Error, StringComparison.Ordinal);
        Night(0, "plan", "social", "--seconds", "5");

        foreach (string form in new[] { "programme.pdf", "notes.html", "programme.txt", "playlist.m3u8", "playlist.xspf" })
        {
            Night(0, "write", "social", form, "out-" + form);
            Assert.True(new FileInfo(Path.Combine(_run.Folder, "out-" + form)).Length > 100, form);
        }

        Night(2, "write", "social", "programme.doc");
        Assert.Contains("An evening cannot be written as programme.doc.", _run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("There is no dance called nowhere in the club.", "plan", "social", "--request", "nowhere")]
    [InlineData("tin may be one of 2 dances", "plan", "social", "--must", "tin")]
    [InlineData("There is no course of effort called steep.", "plan", "social", "--course", "steep")]
    [InlineData("A rest is written as the minute it begins at", "plan", "social", "--rest", "soon")]
    [InlineData("expert is no level.", "plan", "social", "--level", "expert")]
    [InlineData("There is no evening called elsewhere.", "plan", "elsewhere")]
    [InlineData("A planner looks for a second up to an hour", "plan", "social", "--seconds", "0")]
    [InlineData("--why does not go with make.", "make", "Other", "2026-12-06", "--why")]
    [InlineData("Usage: scuff night make TITLE DAY", "make", "Other")]
    [InlineData("soon is no day.", "make", "Other", "soon")]
    public void What_cannot_be_meant_is_said_and_nothing_is_changed(string sentence, params string[] words)
    {
        Night(0, "make", "Social", "2026-12-05");

        Night(2, words);

        Assert.Contains(sentence, _run.Error, StringComparison.Ordinal);
        Night(0);
        Assert.Contains("Social", _run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Other", _run.Out, StringComparison.Ordinal);
    }

    private void Night(int code, params string[] words)
    {
        int ended = _run.Run(["night", .. words, "--club", "mine"]);
        Assert.True(code == ended, $"ended with {ended}: {_run.Error}");
    }
}
