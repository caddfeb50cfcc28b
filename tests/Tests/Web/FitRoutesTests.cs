using System.Text.Json;
using System.Text.Json.Nodes;
using Scuff.Analysis.Fit;
using Scuff.App.Fitting;
using Tests.App;
using Tests.House;

namespace Tests.Web;

public sealed class FitRoutesTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    private const string Map = """
        title: Quay Road
        artist: The Slipway Six
        tempo 112, first beat 0.5, 4/4
        intro 32, A 32 verse, B 36, A 32 verse, B 64, A 64 verse, B 64
        stop 40 to 42
        """;

    private static readonly string Dance = File.ReadAllText(Path.Combine(Repository.Root, "demo/dances/customs-house.dance"));

    [Fact]
    public async Task The_page_gets_what_the_command_says()
    {
        string track = await Track("quay-road.track", Map);
        using ProgramRun run = new();
        run.Put("d.dance", Dance);
        run.Put("quay-road.track", Map);

        Assert.InRange(run.Run("fit", "--json", "d.dance", "quay-road.track"), 0, 1);
        JsonElement fit = await Fit(Asked(Dance, track));

        Assert.True(JsonNode.DeepEquals(Unnamed(JsonNode.Parse(run.Out)![0]!), Unnamed(JsonNode.Parse(fit.GetProperty("fit").GetRawText())!)));
        Assert.Equal(fit.GetProperty("fit").GetProperty("plans").GetArrayLength(), fit.GetProperty("plans").GetArrayLength());
    }

    [Fact]
    public async Task The_plan_is_written_danced_and_played_by_one_and_the_same_count()
    {
        string track = await Track("written.track", Map.Replace("Quay Road", "Written", StringComparison.Ordinal));
        object asked = Asked(Dance, track);
        JsonElement fit = await Fit(asked);
        (int status, JsonElement floor) = await studio.Send(HttpMethod.Post, "/api/fit/floor", asked);
        string text = fit.GetProperty("text").GetString()!;
        JsonElement again = await Fit(Asked(text, track));

        Assert.Equal(200, status);
        int chosen = fit.GetProperty("chosen").GetInt32();
        JsonElement plan = fit.GetProperty("fit").GetProperty("plans")[chosen];

        // what it pays is not the same: a tag that stands in the text need not be made any more
        Assert.Equal(plan.GetProperty("walls").GetRawText(), again.GetProperty("fit").GetProperty("asWritten").GetProperty("walls").GetRawText());
        double[][] table = [.. fit.GetProperty("table").EnumerateArray().Select(t => t.EnumerateArray().Select(n => n.GetDouble()).ToArray())];
        foreach (JsonElement wall in plan.GetProperty("walls").EnumerateArray())
        {
            double count = wall.GetProperty("begins").GetInt32() - fit.GetProperty("plans")[chosen].GetProperty("begins").GetInt32();
            Assert.Contains(floor.GetProperty("stretches").EnumerateArray(), s => s.GetProperty("startsWall").GetBoolean() && s.GetProperty("at").GetDouble() == count);
            Assert.Equal(wall.GetProperty("seconds").GetDouble(), table.First(t => t[0] == count)[1], 3);
        }

        Assert.False(floor.GetProperty("goesRound").GetBoolean());
        Assert.All(table.Zip(table.Skip(1)), pair => Assert.True(pair.First[0] < pair.Second[0] && pair.First[1] < pair.Second[1]));
    }

    [Fact]
    public async Task The_plan_of_the_text_is_danced_and_called_on_its_track()
    {
        string track = await Track("played.track", Map.Replace("Quay Road", "Played", StringComparison.Ordinal));
        JsonElement fit = await Fit(Asked(Dance, track));
        string text = fit.GetProperty("text").GetString()!;
        JsonElement danced = (await studio.Send(HttpMethod.Post, "/api/fit/floor", Asked(Dance, track))).Body;

        (int status, JsonElement floor) = await studio.Send(HttpMethod.Post, "/api/floor", new { text, ending = false, track = (string?)null, height = (double?)null, plays = track });
        (int called, JsonElement calls) = await studio.Send(HttpMethod.Post, "/api/calls", Calls(text));
        (int refused, JsonElement why) = await studio.Send(HttpMethod.Post, "/api/calls", Calls(Dance));

        Assert.Equal((200, 200, 422), (status, called, refused));
        Assert.Equal(danced.GetProperty("length").GetDouble(), floor.GetProperty("length").GetDouble());
        Assert.Equal(Stretches(danced), Stretches(floor));
        double[][] table = [.. fit.GetProperty("table").EnumerateArray().Select(t => t.EnumerateArray().Select(n => n.GetDouble()).ToArray())];
        JsonElement one = calls.GetProperty("calls").EnumerateArray().First(c => c.GetProperty("for").GetDouble() == 0);
        Assert.Equal(table.First(t => t[0] == 0)[1], one.GetProperty("due").GetDouble(), 2);
        Assert.Contains("Choose one in the room Fit", why.GetProperty("sentence").GetString(), StringComparison.Ordinal);

        object Calls(string of) => new
        {
            text = of,
            track = (string?)null,
            ending = false,
            countsPerMinute = (double?)null,
            table = (double[][]?)null,
            speed = 1.0,
            help = new[] { "every-step" },
            plays = track,
        };

        static IEnumerable<(double, string?)> Stretches(JsonElement floor)
            => floor.GetProperty("stretches").EnumerateArray().Select(s => (s.GetProperty("at").GetDouble(), s.GetProperty("facing").GetString()));
    }

    [Fact]
    public async Task Without_a_track_that_can_be_played_the_page_is_told_what_to_do()
    {
        JsonElement none = (await studio.Send(HttpMethod.Post, "/api/played", Played("Bare\n\nsection 1\n1-2 step R forward, touch L together\n"))).Body;
        JsonElement unheard = (await studio.Send(HttpMethod.Post, "/api/played", Played(Dance))).Body;

        Assert.Equal(JsonValueKind.Null, none.GetProperty("floor").ValueKind);
        Assert.Contains("names no track", none.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        Assert.NotEqual("", unheard.GetProperty("sentence").GetString());

        static object Played(string text) => new { text, track = (string?)null, easier = false };
    }

    [Fact]
    public async Task She_decides_where_a_wall_begins_and_what_things_cost()
    {
        string track = await Track("decided.track", Map.Replace("Quay Road", "Decided", StringComparison.Ordinal));
        JsonElement free = await Fit(Asked(Dance, track));
        JsonElement pinned = await Fit(Asked(Dance, track, pins: [Pin("begins", 80)]));
        JsonElement impossible = await Fit(Asked(Dance, track, pins: [Pin("begins", 80), Pin("extra", 80)]));
        JsonElement dear = await Fit(Asked(Dance, track, prices: "interruption=100000"));

        Assert.DoesNotContain(80, Walls(free));
        Assert.Contains(80, Walls(pinned));
        Assert.Equal(JsonValueKind.Null, impossible.GetProperty("chosen").ValueKind);
        Assert.Contains(impossible.GetProperty("fit").GetProperty("remarks").EnumerateArray(), r => r.GetString()!.StartsWith("No way through keeps", StringComparison.Ordinal));
        Assert.Equal(1, dear.GetProperty("fit").GetProperty("plans").GetArrayLength());
    }

    [Fact]
    public async Task What_cannot_be_asked_is_refused_in_a_sentence()
    {
        string track = await Track("refused.track", Map.Replace("Quay Road", "Refused", StringComparison.Ordinal));

        (int price, JsonElement why) = await studio.Send(HttpMethod.Post, "/api/fit", Asked(Dance, track, prices: "tea=3"));
        (int pin, _) = await studio.Send(HttpMethod.Post, "/api/fit", Asked(Dance, track, pins: [Pin("sideways", 1)]));
        (int many, _) = await studio.Send(HttpMethod.Post, "/api/fit", Asked(Dance, track, interruptions: 99));
        (int nobody, _) = await studio.Send(HttpMethod.Post, "/api/fit", Asked(Dance, "nobody"));
        JsonElement empty = await Fit(Asked("Nothing yet\n", track));

        Assert.Equal((400, 400, 400, 404), (price, pin, many, nobody));
        Assert.StartsWith("There is no price tea.", why.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        Assert.Contains(empty.GetProperty("fit").GetProperty("remarks").EnumerateArray(), r => r.GetString()!.StartsWith("This dance has no counts", StringComparison.Ordinal));
        Assert.Empty(studio.Troubles);
    }

    [Fact]
    public async Task Matches_both_ways_are_what_the_command_says()
    {
        string even = "title: Even Keel\ntempo 116, first beat 0.5, 4/4\nintro 32, A 64, B 64, A 64, B 64, A 64\n";
        string first = await Track("even-keel.track", even);
        await Track("match.track", Map.Replace("Quay Road", "Match", StringComparison.Ordinal));
        (_, JsonElement added) = await studio.Send(HttpMethod.Post, "/api/dances", new { text = Dance });
        using ProgramRun run = new();
        run.Put("d.dance", Dance);
        run.Put("one.track", even);

        Assert.Equal(0, run.Run("match", "--json", "d.dance", "one.track"));
        (int tracks, JsonElement forDance) = await studio.Send(HttpMethod.Post, "/api/match/tracks", new { text = Dance, noTags = false, most = 50 });
        (int noTag, JsonElement plain) = await studio.Send(HttpMethod.Post, "/api/match/tracks", new { text = Dance, noTags = true, most = 50 });
        (int dances, JsonElement forTrack) = await studio.Send(HttpMethod.Post, "/api/match/dances", new { track = first, noTags = false, most = 5 });

        Assert.Equal((200, 200, 200), (tracks, noTag, dances));
        JsonNode said = JsonNode.Parse(run.Out)![0]!;
        JsonElement mine = forDance.GetProperty("rows").EnumerateArray().First(r => r.GetProperty("track").GetString() == first).GetProperty("match");
        Assert.Equal(said["points"]!.GetValue<int>(), mine.GetProperty("points").GetInt32());
        Assert.Equal(said["why"]!.GetValue<string>(), mine.GetProperty("why").GetString());
        Assert.All(plain.GetProperty("rows").EnumerateArray(), r => Assert.Equal(0, r.GetProperty("match").GetProperty("interruptions").GetInt32()));
        JsonElement best = forTrack.GetProperty("rows")[0];
        Assert.Equal(added.GetProperty("item").GetProperty("id").GetString(), best.GetProperty("dance").GetString());
        Assert.Equal(said["points"]!.GetValue<int>(), best.GetProperty("match").GetProperty("points").GetInt32());
    }

    [Fact]
    public void Every_price_has_its_words()
    {
        Assert.Equal(typeof(FitPrices).GetProperties().Count(p => p.PropertyType == typeof(int)), PriceList.Names.Count);
        Assert.Equal(PriceList.Names.Count, PriceList.Names.Select(PriceList.Words).Distinct().Count());
    }

    private static object Asked(string text, string track, int? interruptions = null, object[]? pins = null, params string[] prices)
        => new { text, track, interruptions, intro = (int?)null, pins = pins ?? [], prices };

    private static object Pin(string kind, int at) => new { kind, at, to = (int?)null };

    private static int[] Walls(JsonElement fit)
    {
        JsonElement plan = fit.GetProperty("fit").GetProperty("plans")[fit.GetProperty("chosen").GetInt32()];
        return [.. plan.GetProperty("walls").EnumerateArray().Select(w => w.GetProperty("begins").GetInt32())];
    }

    // the command names files, the page titles
    private static JsonNode Unnamed(JsonNode row)
    {
        row["dance"] = "";
        row["track"] = "";
        return row;
    }

    private async Task<JsonElement> Fit(object asked)
    {
        (int status, JsonElement fit) = await studio.Send(HttpMethod.Post, "/api/fit", asked);
        Assert.Equal(200, status);
        return fit;
    }

    private async Task<string> Track(string name, string text)
    {
        (int status, JsonElement track) = await studio.Send(
            HttpMethod.Post, "/api/tracks/text", new { name, text, sections = (string?)null, track = (string?)null, revision = 0 });
        Assert.Equal(200, status);
        return track.GetProperty("track").GetProperty("id").GetString()!;
    }
}
