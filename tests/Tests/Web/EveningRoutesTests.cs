using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using Scuff.App.Clubs;
using Scuff.App.Web;
using Scuff.Repertoire;
using Tests.House;

namespace Tests.Web;

public sealed class EveningRoutesTests : IAsyncLifetime
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "scuff-evening-" + Path.GetRandomFileName());
    private readonly List<string> _troubles = [];
    private readonly SteppedClock _clock = new();
    private readonly PlainNightDesk _desk = new();
    private readonly HttpClient _client = new();
    private Club? _club;
    private Studio? _studio;
    private StudioServer? _server;

    public async ValueTask InitializeAsync()
    {
        _club = Club.Open(_folder, TimeProvider.System, new DanceFactReader());
        foreach (string name in (string[])["first-tide", "tin-lantern", "moorings", "net-loft", "rope-walk", "gangplank"])
        {
            _club.Dances.Add(Repository.Read($"demo/dances/{name}.dance"), "test");
        }

        _studio = new Studio(_club, _clock, _troubles.Add) { Night = _desk };
        _server = await StudioServer.Start(_studio, 0);
        _client.BaseAddress = _server.Address;
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _server!.DisposeAsync();
        _studio!.Dispose();
        _club!.Dispose();
        Directory.Delete(_folder, recursive: true);
        Assert.Empty(_troubles);
    }

    [Fact]
    public async Task A_new_evening_asks_all_classes_and_has_no_programme()
    {
        _club!.Book.SaveClass(new ClubClass { Title = "Mondays", Level = "beginner", People = 12 });

        JsonElement made = await Make();

        Assert.Equal("Mondays", Assert.Single(made.GetProperty("wishes").GetProperty("groups").EnumerateArray()).GetProperty("name").GetString());
        Assert.Equal(JsonValueKind.Null, made.GetProperty("programme").ValueKind);
        Assert.True(made.GetProperty("curves").GetArrayLength() >= 3);
        Assert.Equal(1, (await Send(HttpMethod.Get, "/api/evenings")).Body.GetProperty("total").GetInt32());
        Assert.Equal(409, (await Turn(made, "begin")).Status);
    }

    [Fact]
    public async Task Wishes_are_kept_and_make_the_programme_stale_and_a_title_does_not()
    {
        JsonElement planned = await Plan(await Make());
        Assert.Equal("", planned.GetProperty("programme").GetProperty("stale").GetString());

        JsonElement titled = (await Send(HttpMethod.Put, PathOf(planned), Body(planned) with { Title = "Winter social" })).Body;
        Assert.Equal("", titled.GetProperty("programme").GetProperty("stale").GetString());

        Dictionary<string, JsonElement> wishes = titled.GetProperty("wishes").EnumerateObject().ToDictionary(p => p.Name, p => p.Value, StringComparer.Ordinal);
        object[] stops = [new { at = Clock(20), minutes = 5, isLesson = false, danceId = (string?)null, title = "" }];
        wishes["stops"] = JsonSerializer.SerializeToElement(stops);
        JsonElement wished = (await Send(HttpMethod.Put, PathOf(titled), Body(titled) with { Wishes = wishes })).Body;

        Assert.NotEqual("", wished.GetProperty("programme").GetProperty("stale").GetString());
        Assert.Equal(Clock(20), wished.GetProperty("wishes").GetProperty("stops")[0].GetProperty("at").GetString());
        JsonElement anew = await Plan(wished);
        Assert.Equal(["dancing", "rest", "dancing"], anew.GetProperty("programme").GetProperty("stretches").EnumerateArray().Select(s => s.GetProperty("kind").GetString()));
    }

    [Fact]
    public async Task What_was_changed_elsewhere_is_never_written_over()
    {
        JsonElement first = await Make();
        await Send(HttpMethod.Put, PathOf(first), Body(first) with { Title = "Theirs" });

        Assert.Equal(409, (await Send(HttpMethod.Put, PathOf(first), Body(first) with { Title = "Mine" })).Status);
        Assert.Equal(409, (await Send(HttpMethod.Post, PathOf(first) + "/plan", new { revision = first.GetProperty("revision").GetInt32() })).Status);
        Assert.Equal("Theirs", (await Send(HttpMethod.Get, PathOf(first))).Body.GetProperty("item").GetProperty("title").GetString());
    }

    [Fact]
    public async Task A_decision_is_kept_and_the_programme_made_anew()
    {
        JsonElement planned = await Plan(await Make());
        string third = Lines(planned)[2].GetProperty("danceId").GetString()!;

        JsonElement pinned = (await Decide(planned, "pin", third, 0, 0)).Body;
        Assert.Equal(third, Lines(pinned)[0].GetProperty("danceId").GetString());
        Assert.True(Lines(pinned)[0].GetProperty("isPinned").GetBoolean());
        Assert.Equal("at", Assert.Single(pinned.GetProperty("wishes").GetProperty("pins").EnumerateArray()).GetProperty("kind").GetString());

        JsonElement forbidden = (await Decide(pinned, "forbid", third)).Body;
        Assert.DoesNotContain(Lines(forbidden), l => l.GetProperty("danceId").GetString() == third);
        Assert.Contains("1 left the programme.", forbidden.GetProperty("moved").EnumerateArray().Select(m => m.GetString()));
        Assert.Equal(400, (await Decide(forbidden, "sing", third)).Status);

        JsonElement again = (await Send(HttpMethod.Get, PathOf(planned))).Body;
        Assert.Equal(forbidden.GetProperty("revision").GetInt32(), again.GetProperty("revision").GetInt32());
        Assert.Equal(Lines(forbidden).Select(l => l.GetProperty("danceId").GetString()), Lines(again).Select(l => l.GetProperty("danceId").GetString()));
    }

    [Fact]
    public async Task A_night_is_ticked_off_and_every_tick_is_on_the_disk()
    {
        JsonElement night = (await Turn(await Plan(await Make()), "begin")).Body;
        string[] titles = [.. Lines(night).Select(l => l.GetProperty("title").GetString()!)];
        _clock.Advance(TimeSpan.FromMinutes(5));
        night = (await Turn(night, "danced", line: 0)).Body;

        Assert.Equal(titles[1], Lines(night)[0].GetProperty("title").GetString());
        Assert.Equal(titles[0], night.GetProperty("night").GetProperty("done")[0].GetProperty("title").GetString());
        Assert.Equal(300, night.GetProperty("night").GetProperty("since").GetInt32());
        Assert.Equal(1, _desk.Asked);

        // another page that has not heard of it
        (int status, JsonElement refused) = await Turn(night, "danced", line: 0);
        Assert.Equal(409, status);
        Assert.Contains("meanwhile", refused.GetProperty("sentence").GetString(), StringComparison.Ordinal);

        JsonElement read = (await Send(HttpMethod.Get, PathOf(night))).Body;
        Assert.Equal(1, read.GetProperty("night").GetProperty("done").GetArrayLength());
        JsonElement back = (await Turn(night, "back")).Body;
        Assert.Equal(titles, Lines(back).Select(l => l.GetProperty("title").GetString()));
    }

    [Fact]
    public async Task Time_that_runs_short_makes_the_rest_anew()
    {
        JsonElement night = (await Turn(await Plan(await Make(minutes: 30)), "begin")).Body;
        Assert.Equal(6, Lines(night).Length);
        _clock.Advance(TimeSpan.FromMinutes(12));
        night = (await Turn(night, "danced", line: 0)).Body;

        Assert.Equal(2, _desk.Asked);
        Assert.Equal(3, Lines(night).Length);
        Assert.Equal(720, Lines(night)[0].GetProperty("startSecond").GetInt32());
        Assert.StartsWith("Time ran short", night.GetProperty("moved")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task She_must_end_earlier_and_the_present_dance_stays()
    {
        JsonElement night = (await Turn(await Plan(await Make(minutes: 30)), "begin")).Body;
        string present = Lines(night)[0].GetProperty("title").GetString()!;
        _clock.Advance(TimeSpan.FromMinutes(1));
        night = (await Turn(night, "end-at", endsAt: Clock(15))).Body;

        Assert.Equal(present, Lines(night)[0].GetProperty("title").GetString());
        Assert.Equal(3, Lines(night).Length);
        Assert.Equal(900, night.GetProperty("night").GetProperty("endSecond").GetInt32());
        Assert.Equal(Clock(15), night.GetProperty("night").GetProperty("endsAt").GetString());
    }

    [Fact]
    public async Task A_request_on_the_spot_comes_in_and_a_dance_left_out_does_not_come_again()
    {
        JsonElement night = (await Turn(await Plan(await Make(minutes: 15)), "begin")).Body;
        string asked = _club!.Dances.Every().Select(d => d.Id).First(id => Lines(night).All(l => l.GetProperty("danceId").GetString() != id));

        night = (await Turn(night, "request", danceId: asked)).Body;
        Assert.Contains(Lines(night), l => l.GetProperty("danceId").GetString() == asked && l.GetProperty("isAsked").GetBoolean());

        JsonElement left = Lines(night)[1];
        night = (await Turn(night, "skip", line: left.GetProperty("startSecond").GetInt32())).Body;
        Assert.DoesNotContain(Lines(night), l => l.GetProperty("danceId").GetString() == left.GetProperty("danceId").GetString());
        Assert.True(night.GetProperty("night").GetProperty("done")[0].GetProperty("isSkipped").GetBoolean());
    }

    [Fact]
    public async Task A_night_is_closed_with_a_sentence_and_goes_on_if_she_likes()
    {
        JsonElement night = (await Turn(await Plan(await Make()), "begin")).Body;
        night = (await Turn(night, "danced", line: 0)).Body;
        night = (await Turn(night, "close")).Body;

        Assert.StartsWith("1 dance danced.", night.GetProperty("night").GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.False((await Turn(night, "reopen")).Body.GetProperty("night").GetProperty("isOver").GetBoolean());
    }

    [Fact]
    public async Task What_cannot_be_is_refused_in_a_sentence()
    {
        JsonElement made = await Make();
        (int Status, JsonElement Body)[] answers =
        [
            await Send(HttpMethod.Post, "/api/evenings", Body(made) with { Date = "soon" }),
            await Send(HttpMethod.Put, PathOf(made), Body(made) with { Starts = "late" }),
            await Send(HttpMethod.Put, PathOf(made), Body(made) with { Minutes = 3 }),
            await Send(HttpMethod.Put, PathOf(made), Body(made) with { Title = "" }),
        ];

        Assert.All(answers, a => Assert.Equal(400, a.Status));
        Assert.All(answers, a => Assert.EndsWith(".", a.Body.GetProperty("sentence").GetString(), StringComparison.Ordinal));
        Assert.Equal(404, (await Send(HttpMethod.Get, "/api/evenings/nobody")).Status);
        Assert.Equal(404, (await Send(HttpMethod.Get, PathOf(made) + "/file/parchment")).Status);
        Assert.Equal(200, (await Send(HttpMethod.Delete, PathOf(made))).Status);
        Assert.Equal(404, (await Send(HttpMethod.Get, PathOf(made))).Status);
    }

    private static string PathOf(JsonElement evening) => "/api/evenings/" + evening.GetProperty("item").GetProperty("id").GetString();

    private static JsonElement[] Lines(JsonElement evening)
        => [.. evening.GetProperty("programme").GetProperty("stretches").EnumerateArray().SelectMany(s => s.GetProperty("lines").EnumerateArray())];

    private static EveningSaid Body(JsonElement evening)
    {
        JsonElement item = evening.GetProperty("item");
        return new(
            evening.GetProperty("revision").GetInt32(),
            item.GetProperty("title").GetString()!,
            item.GetProperty("date").GetString()!,
            item.GetProperty("starts").GetString()!,
            item.GetProperty("minutes").GetInt32(),
            "",
            null);
    }

    // an evening that begins now
    private async Task<JsonElement> Make(int minutes = 60)
    {
        DateTimeOffset now = _clock.GetLocalNow();
        (int status, JsonElement body) = await Send(HttpMethod.Post, "/api/evenings", new EveningSaid(0, "Social", now.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), Clock(0), minutes, "", null));
        Assert.Equal(201, status);
        return body;
    }

    private string Clock(int minutes)
    {
        DateTimeOffset begin = TimeZoneInfo.ConvertTime(new SteppedClock().GetUtcNow(), _clock.LocalTimeZone);
        return begin.AddMinutes(minutes).ToString("HH:mm", CultureInfo.InvariantCulture);
    }

    private async Task<JsonElement> Plan(JsonElement evening)
    {
        (int status, JsonElement body) = await Send(HttpMethod.Post, PathOf(evening) + "/plan", new { revision = evening.GetProperty("revision").GetInt32() });
        Assert.Equal(200, status);
        return body;
    }

    private Task<(int Status, JsonElement Body)> Decide(JsonElement evening, string what, string danceId, int stretch = 0, int place = 0)
        => Send(HttpMethod.Post, PathOf(evening) + "/decide", new { revision = evening.GetProperty("revision").GetInt32(), what, danceId, stretch, place, songKey = "" });

    private Task<(int Status, JsonElement Body)> Turn(JsonElement evening, string what, string danceId = "", int line = 0, string endsAt = "")
        => Send(HttpMethod.Post, PathOf(evening) + "/night", new { revision = evening.GetProperty("revision").GetInt32(), what, danceId, line, endsAt });

    private async Task<(int Status, JsonElement Body)> Send(HttpMethod method, string path, object? body = null)
    {
        using HttpRequestMessage request = new(method, path) { Content = body is null ? null : JsonContent.Create(body) };
        using HttpResponseMessage answer = await _client.SendAsync(request);
        string text = await answer.Content.ReadAsStringAsync();
        return ((int)answer.StatusCode, JsonDocument.Parse(text).RootElement.Clone());
    }

    private sealed record EveningSaid(int Revision, string Title, string Date, string Starts, int Minutes, string Place, object? Wishes);
}
