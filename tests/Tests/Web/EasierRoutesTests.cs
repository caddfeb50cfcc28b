using System.Text.Json;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Tests.House;

namespace Tests.Web;

public sealed class EasierRoutesTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    private static readonly string Keeper = Repository.Read("demo/dances/lighthouse-keeper.dance");

    [Fact]
    public async Task What_is_taken_on_the_page_is_an_option_that_drops_in()
    {
        int at = Keeper.IndexOf("jazz box", Keeper.IndexOf("section 4", StringComparison.Ordinal) + 40, StringComparison.Ordinal);
        (int status, JsonElement answer) = await studio.Send(HttpMethod.Post, "/api/easier", Asked(Keeper, "level", "beginner", at, at));

        Assert.Equal(200, status);
        JsonElement move = Assert.Single(answer.GetProperty("moves").EnumerateArray());
        Assert.Equal("section 4 count 1", move.GetProperty("place").GetString());
        JsonElement offer = move.GetProperty("offers")[0];
        JsonElement edit = offer.GetProperty("take").GetProperty("edits")[0];
        string text = Keeper[..edit.GetProperty("from").GetInt32()] + edit.GetProperty("text").GetString() + Keeper[edit.GetProperty("to").GetInt32()..];
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));

        StepOption option = analysis.Dance.Sections.ElementAt(3).Lines[0].Options[^1];
        Assert.Equal(offer.GetProperty("counts").GetString(), option.Label);
        Assert.Equal("easier", option.Name);
        Assert.DoesNotContain(analysis.Report.Complaints, c => c.Severity > Severity.Hint);
        Assert.Contains("ends on the same foot and wall", offer.GetProperty("reasons").EnumerateArray().Select(r => r.GetString()));
    }

    [Fact]
    public async Task Without_a_place_the_whole_dance_is_asked_about()
    {
        JsonElement answer = (await studio.Send(HttpMethod.Post, "/api/easier", Asked(Keeper, "turns", "beginner", null, null))).Body;

        Assert.True(answer.GetProperty("moves").GetArrayLength() > 5);
        Assert.Equal("with a turn", answer.GetProperty("sought").GetString());
        Assert.All(answer.GetProperty("moves").EnumerateArray(), move => Assert.Equal(
            move.GetProperty("offers").GetArrayLength() == 0,
            move.GetProperty("none").GetString()!.Length > 0));
    }

    [Theory]
    [InlineData("elbows", "beginner", "level, knees, turns, speed")]
    [InlineData("level", "advanced", "absolute beginner, beginner, improver, intermediate")]
    public async Task What_cannot_be_asked_is_told_with_what_can(string aim, string level, string can)
    {
        (int status, JsonElement answer) = await studio.Send(HttpMethod.Post, "/api/easier", Asked(Keeper, aim, level, null, null));

        Assert.Equal(400, status);
        Assert.Contains(can, answer.GetProperty("sentence").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_easier_version_is_marked_and_says_whom_to_ask()
    {
        JsonElement answer = (await studio.Send(HttpMethod.Post, "/api/easier/version", Asked(Keeper, "level", "beginner", null, null))).Body;
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(answer.GetProperty("text").GetString()!));

        Assert.Equal("Lighthouse Keeper (easier)", analysis.Dance.Title);
        Assert.DoesNotContain(analysis.Report.Complaints, c => c.Severity > Severity.Hint);
        Assert.Contains("Ask who wrote the dance", answer.GetProperty("remarks")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_mirror_is_the_other_foot_and_tells_of_notes_that_name_a_side()
    {
        JsonElement answer = (await studio.Send(HttpMethod.Post, "/api/mirror", new { text = Keeper })).Body;
        Dance mirrored = DanceReader.Read(answer.GetProperty("text").GetString()!).Dance;

        Assert.Equal("Lighthouse Keeper (mirrored)", mirrored.Title);
        Assert.Equal(Weight.Right, mirrored.Start);
        Assert.Contains(answer.GetProperty("remarks").EnumerateArray(), r => r.GetString()!.Contains("draw the R arm across", StringComparison.Ordinal));
    }

    private static object Asked(string text, string aim, string level, int? from, int? to) => new Dictionary<string, object?>
    {
        ["text"] = text,
        ["for"] = aim,
        ["level"] = level,
        ["from"] = from,
        ["to"] = to,
    };
}
