using System.Globalization;
using System.Text.Json;
using Tests.House;

namespace Tests.Web;

public sealed class ClassRoutesTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    private static readonly string Lantern = Repository.Read("demo/dances/tin-lantern.dance");

    private static DateOnly Today => DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);

    [Fact]
    public async Task A_class_is_kept_changed_ended_and_erased()
    {
        JsonElement made = await Class("Mondays");
        string id = IdOf(made);
        Assert.Contains("Mondays at 18:00, 60 minutes, Net loft, about 12 people", made.GetProperty("item").GetProperty("words").GetString(), StringComparison.Ordinal);

        (int status, JsonElement changed) = await studio.Send(HttpMethod.Put, $"/api/classes/{id}", Body("Mondays, early") with { Starts = "17:30" });
        Assert.Equal(200, status);
        Assert.Equal("17:30", changed.GetProperty("item").GetProperty("starts").GetString());

        await studio.Send(HttpMethod.Put, $"/api/classes/{id}", Body("Mondays") with { EndedOn = Plain(Today) });
        JsonElement list = (await studio.Send(HttpMethod.Get, "/api/classes", null)).Body;
        Assert.Contains(list.GetProperty("ended").EnumerateArray(), c => c.GetProperty("id").GetString() == id);
        Assert.DoesNotContain(list.GetProperty("classes").EnumerateArray(), c => c.GetProperty("id").GetString() == id);

        Assert.Equal(200, (await studio.Send(HttpMethod.Delete, $"/api/classes/{id}", null)).Status);
        Assert.Equal(404, (await studio.Send(HttpMethod.Get, $"/api/classes/{id}", null)).Status);
    }

    [Fact]
    public async Task What_cannot_be_kept_is_refused_in_a_sentence()
    {
        string id = IdOf(await Class("Refusals"));
        (HttpMethod Method, string Path, object Body)[] asked =
        [
            (HttpMethod.Post, "/api/classes", Body(" ")),
            (HttpMethod.Post, "/api/classes", Body("x") with { Weekday = 9 }),
            (HttpMethod.Post, "/api/classes", Body("x") with { Starts = "half past" }),
            (HttpMethod.Post, "/api/classes", Body("x") with { Minutes = 0 }),
            (HttpMethod.Post, $"/api/classes/{id}/sessions", Session(isHeld: true) with { Date = "soon" }),
            (HttpMethod.Post, $"/api/classes/{id}/sessions", Session(isHeld: true, new Line("sung", null, "x"))),
            (HttpMethod.Post, $"/api/classes/{id}/sessions", Session(isHeld: true, new Line("taught", null, "x", 5, "", 7))),
            (HttpMethod.Post, $"/api/classes/{id}/marks", new { danceId = "d1", knowing = 9 }),
        ];

        foreach ((HttpMethod method, string path, object body) in asked)
        {
            (int status, JsonElement answer) = await studio.Send(method, path, body);
            Assert.True(status == 400, $"{path} {status}");
            Assert.EndsWith(".", answer.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        }

        Assert.Empty(studio.Troubles);
    }

    [Fact]
    public async Task A_plan_becomes_what_was_held_and_the_dance_is_known_from_then()
    {
        string dance = await Dance(Lantern);
        JsonElement made = await Class("Plans");
        string id = IdOf(made);
        Assert.Equal("", made.GetProperty("next").GetProperty("id").GetString());

        JsonElement planned = (await studio.Send(HttpMethod.Post, $"/api/classes/{id}/sessions", Session(isHeld: false, new Line("taught", dance, "", 20)))).Body;
        string session = planned.GetProperty("session").GetProperty("id").GetString()!;
        Assert.Equal(0, planned.GetProperty("class").GetProperty("known").GetInt32());
        Assert.Equal(session, planned.GetProperty("class").GetProperty("next").GetProperty("id").GetString());
        Assert.Equal("Tin Lantern", planned.GetProperty("session").GetProperty("items")[0].GetProperty("title").GetString());

        JsonElement held = (await studio.Send(HttpMethod.Put, $"/api/classes/{id}/sessions/{session}", Session(isHeld: true, new Line("taught", dance, "", 25, "lost at the tag", 2)) with { People = 14, HowItWent = "well" })).Body;
        Assert.Equal("Taught Tin Lantern.", held.GetProperty("session").GetProperty("words").GetString());
        JsonElement of = held.GetProperty("class");
        Assert.Equal(1, of.GetProperty("held").GetInt32());
        Assert.Equal("", of.GetProperty("next").GetProperty("id").GetString());
        JsonElement known = Assert.Single(of.GetProperty("dances").EnumerateArray());
        Assert.Equal(2, known.GetProperty("knowing").GetInt32());
        Assert.Equal("danced today", known.GetProperty("last").GetString());
        Assert.Equal(2, of.GetProperty("history")[0].GetProperty("items")[0].GetProperty("knowing").GetInt32());

        // corrected, and the mark taken back
        JsonElement corrected = (await studio.Send(HttpMethod.Put, $"/api/classes/{id}/sessions/{session}", Session(isHeld: true, new Line("taught", dance, "", 25)))).Body;
        Assert.Equal(JsonValueKind.Null, corrected.GetProperty("class").GetProperty("dances")[0].GetProperty("knowing").ValueKind);

        JsonElement gone = (await studio.Send(HttpMethod.Delete, $"/api/classes/{id}/sessions/{session}", null)).Body;
        Assert.Equal(0, gone.GetProperty("held").GetInt32());
    }

    [Fact]
    public async Task A_sheet_that_changed_since_it_was_taught_is_warned_of_and_shown()
    {
        (int _, JsonElement kept) = await studio.Send(HttpMethod.Post, "/api/dances", new { text = Lantern });
        string dance = kept.GetProperty("item").GetProperty("id").GetString()!;
        int revision = kept.GetProperty("revision").GetInt32();
        string id = IdOf(await Class("Sheets"));
        await studio.Send(HttpMethod.Post, $"/api/classes/{id}/sessions", Session(isHeld: true, new Line("taught", dance, "")));
        Assert.Equal("", await Warning());

        string words = Lantern.Replace("level: improver", "level: beginner", StringComparison.Ordinal);
        revision = (await studio.Send(HttpMethod.Put, $"/api/dances/{dance}", new { text = words, revision, hand = "a" })).Body.GetProperty("revision").GetInt32();
        Assert.StartsWith("Only words changed since you taught it on ", await Warning(), StringComparison.Ordinal);

        string steps = words.Replace("shuffle R forward", "shuffle R back", StringComparison.Ordinal);
        Assert.NotEqual(words, steps);
        await studio.Send(HttpMethod.Put, $"/api/dances/{dance}", new { text = steps, revision, hand = "a" });
        Assert.StartsWith("Steps changed since you taught it on ", await Warning(), StringComparison.Ordinal);

        JsonElement change = (await studio.Send(HttpMethod.Get, $"/api/classes/{id}/sheet?dance={dance}", null)).Body;
        Assert.NotEmpty(change.GetProperty("changes").EnumerateArray());
        Assert.Equal(404, (await studio.Send(HttpMethod.Get, $"/api/classes/{id}/sheet?dance=nobody", null)).Status);

        async Task<string?> Warning() => (await studio.Send(HttpMethod.Get, $"/api/classes/{id}", null)).Body.GetProperty("dances")[0].GetProperty("warning").GetString();
    }

    [Fact]
    public async Task A_dance_that_is_picked_comes_with_minutes_for_its_role()
    {
        string dance = await Dance(Lantern);
        string id = IdOf(await Class("Picks"));

        int taught = await Minutes("taught");
        int danced = await Minutes("danced");

        Assert.True(taught > danced, $"{taught} {danced}");
        Assert.Equal(0, taught % 5);
        Assert.Equal(404, (await studio.Send(HttpMethod.Get, $"/api/classes/{id}/pick?dance=nobody&role=taught", null)).Status);

        async Task<int> Minutes(string role) => (await studio.Send(HttpMethod.Get, $"/api/classes/{id}/pick?dance={dance}&role={role}", null)).Body.GetProperty("minutes").GetInt32();
    }

    [Fact]
    public async Task Long_histories_come_in_pages()
    {
        string dance = await Dance(Lantern);
        string id = IdOf(await Class("Years"));
        for (int week = 1; week <= 12; week++)
        {
            await studio.Send(HttpMethod.Post, $"/api/classes/{id}/sessions", Session(isHeld: true, new Line("danced", dance, "")) with { Date = Plain(Today.AddDays(-7 * week)) });
        }

        JsonElement of = (await studio.Send(HttpMethod.Get, $"/api/classes/{id}", null)).Body;
        JsonElement rest = (await studio.Send(HttpMethod.Get, $"/api/classes/{id}/history?skip={of.GetProperty("history").GetArrayLength()}", null)).Body;

        string[] days = [.. of.GetProperty("history").EnumerateArray().Concat(rest.GetProperty("rows").EnumerateArray()).Select(s => s.GetProperty("date").GetString()!)];
        Assert.Equal(12, of.GetProperty("held").GetInt32());
        Assert.Equal(12, days.Distinct().Count());
        Assert.Equal(days.OrderDescending(StringComparer.Ordinal), days);
    }

    [Fact]
    public async Task The_book_stays_on_this_machine()
    {
        await using HallFixture hall = await HallFixture.Start();
        using HttpClient tablet = await hall.Paired("tablet");
        foreach (string path in (string[])["/api/classes", "/api/classes/c1", "/api/classes/c1/history", "/api/classes/c1/dances", "/api/book/file/calendar"])
        {
            Assert.Equal(403, (await HallFixture.Send(tablet, HttpMethod.Get, path)).Status);
        }

        Assert.Equal(403, (await HallFixture.Send(tablet, HttpMethod.Post, "/api/classes", Body("From the hall"))).Status);
        Assert.Equal(200, (await HallFixture.Send(tablet, HttpMethod.Get, "/api/evenings")).Status);
        Assert.Equal(200, (await HallFixture.Send(hall.Her, HttpMethod.Get, "/api/classes")).Status);
    }

    private static string IdOf(JsonElement answer) => answer.GetProperty("item").GetProperty("id").GetString()!;

    private static string Plain(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static ClassSaid Body(string title) => new(title, "beginner", 1, "18:00", 60, "Net loft", 12, "", null);

    private static SessionSaid Session(bool isHeld, params Line[] items) => new(Plain(Today), null, null, isHeld, null, "", items);

    private async Task<JsonElement> Class(string title)
    {
        (int status, JsonElement body) = await studio.Send(HttpMethod.Post, "/api/classes", Body(title));
        Assert.Equal(201, status);
        return body;
    }

    private async Task<string> Dance(string text) => (await studio.Send(HttpMethod.Post, "/api/dances", new { text })).Body.GetProperty("item").GetProperty("id").GetString()!;

    private sealed record ClassSaid(string Title, string Level, int? Weekday, string? Starts, int Minutes, string Place, int? People, string Notes, string? EndedOn);

    private sealed record SessionSaid(string Date, string? Starts, int? Minutes, bool IsHeld, int? People, string HowItWent, Line[] Items);

    private sealed record Line(string Role, string? DanceId, string Title, int? Minutes = null, string Note = "", int? Knowing = null);
}
