using System.Text.Json;
using Scuff.Steps;

namespace Tests.App;

public sealed class StepsCommandTests
{
    [Fact]
    public void A_move_is_found_by_its_name_and_shown_count_by_count()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("steps", "coaster", "step"));

        Assert.StartsWith("coaster step, 2 counts", run.Out, StringComparison.Ordinal);
        Assert.Contains("count  foot  weight  action", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Coaster-Step")]
    [InlineData("coaster_back")]
    [InlineData("coast")]
    public void Ids_other_spellings_and_beginnings_of_words_find_it_too(string words)
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("steps", "--json", words));

        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Contains("coaster_back", json.RootElement.EnumerateArray().Select(e => e.GetProperty("id").GetString()));
    }

    [Fact]
    public void Json_gives_rows_weight_and_sources()
    {
        using ProgramRun run = new();

        run.Run("steps", "--json", "coaster_back");

        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement entry = json.RootElement[0];
        Assert.Equal(["1", "&", "2"], entry.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("count").GetString()));
        Assert.Equal(["R", "L", "R"], entry.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("weight").GetString()));
        Assert.True(entry.GetProperty("sources").GetArrayLength() > 0);
    }

    [Fact]
    public void Without_words_every_move_is_named()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("steps"));

        Assert.All(StepCatalogue.Default.Definitions, d => Assert.Contains(d.Id, run.Out, StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_not_there_ends_with_1()
    {
        using ProgramRun run = new();

        Assert.Equal(1, run.Run("steps", "moonwalk on stilts"));
        Assert.Contains("No move is called", run.Error, StringComparison.Ordinal);
        Assert.Equal(1, run.Run("steps", "--json", "moonwalk on stilts"));
        Assert.Equal("[]", run.Out.Trim());
    }
}
