using System.Text.Json;
using Tests.House;

namespace Tests.App;

public sealed class LessonCommandTests
{
    private static readonly string Lantern = Repository.Read("demo/dances/tin-lantern.dance");

    [Fact]
    public void A_plan_is_shown_with_minutes_and_boxes()
    {
        using ProgramRun run = new();
        run.Put("lantern.dance", Lantern);

        Assert.Equal(0, run.Run("lesson", "--minutes", "30", "lantern.dance"));

        Assert.Contains("Tin Lantern: lesson plan", run.Out, StringComparison.Ordinal);
        Assert.Contains("[ ] 0:00", run.Out, StringComparison.Ordinal);
        Assert.Contains("30 min for a class of level improver.", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_class_knows_is_read_from_other_dances()
    {
        using ProgramRun run = new();
        run.Put("lantern.dance", Lantern);
        run.Put("customs.dance", Repository.Read("demo/dances/customs-house.dance"));

        Assert.Equal(0, run.Run("lesson", "--class", "beginner", "--knows", "customs.dance", "--format", "json", "lantern.dance"));
        string[] some = Figures(run.Out);
        Assert.Equal(0, run.Run("lesson", "--class", "beginner", "--knows", "customs.dance", "--knows", "lantern.dance", "--format", "json", "lantern.dance"));

        Assert.NotEmpty(some);
        Assert.Empty(Figures(run.Out));
    }

    [Fact]
    public void Json_has_the_fixed_fields_and_adds_up()
    {
        using ProgramRun run = new();
        run.Put("lantern.dance", Lantern);

        Assert.Equal(0, run.Run("lesson", "--minutes", "25", "--format", "json", "lantern.dance"));

        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement plan = json.RootElement;
        Assert.Equal(25 * 60, plan.GetProperty("seconds").GetInt32());
        Assert.Equal(25 * 60, plan.GetProperty("steps").EnumerateArray().Sum(s => s.GetProperty("seconds").GetInt32()));
        Assert.Equal("forward", plan.GetProperty("order").GetString());
        Assert.True(plan.GetProperty("isWhole").GetBoolean());
        Assert.Contains(plan.GetProperty("chunks").EnumerateArray(), c => c.GetProperty("reasons").TryGetProperty("off-beats", out _));
    }

    [Fact]
    public void A_plan_is_written_into_a_file_of_any_format()
    {
        using ProgramRun run = new();
        run.Put("lantern.dance", Lantern);

        foreach (string format in (string[])["pdf", "html", "markdown", "docx", "json", "text"])
        {
            Assert.Equal(0, run.Run("lesson", "--format", format, "--output", "plan." + format, "--paper", "letter", "lantern.dance"));
            Assert.True(new FileInfo(Path.Combine(run.Folder, "plan." + format)).Length > 500);
        }

        Assert.StartsWith("%PDF", run.Get("plan.pdf"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A lesson has 1 to 600 minutes.", "--minutes", "0")]
    [InlineData("There is no level expert.", "--class", "expert")]
    [InlineData("There is no format parchment.", "--format", "parchment")]
    [InlineData("A tempo lies between 20 and 400 counts a minute.", "--practice-tempo", "4")]
    public void What_is_asked_wrongly_is_answered_with_what_is_possible(string sentence, string option, string value)
    {
        using ProgramRun run = new();
        run.Put("lantern.dance", Lantern);

        Assert.Equal(2, run.Run("lesson", option, value, "lantern.dance"));
        Assert.Contains(sentence, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dance_that_is_not_there_and_a_folder_that_cannot_be_written_are_told()
    {
        using ProgramRun run = new();
        run.Put("lantern.dance", Lantern);

        Assert.Equal(2, run.Run("lesson", "none.dance"));
        Assert.Equal(2, run.Run("lesson", "--knows", "none.dance", "lantern.dance"));
        Assert.Equal(2, run.Run("lesson", "--output", "no/such/folder/plan.txt", "lantern.dance"));
        Assert.Contains("plan.txt", run.Error, StringComparison.Ordinal);
    }

    private static string[] Figures(string output)
    {
        using JsonDocument json = JsonDocument.Parse(output);
        return [.. json.RootElement.GetProperty("newFigures").EnumerateArray().Select(f => f.GetString()!)];
    }
}
