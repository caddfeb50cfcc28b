using System.Text.Json;

namespace Tests.Web;

/// <summary>What everybody in the hall sees.</summary>
public sealed class HallSessionTests
{
    private const int Clients = 50;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_comes_late_gets_the_present_at_once()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient screen = await studio.Paired("floor");
        Assert.True(await Told(studio.Her, "/api/hall/dance", HallFixture.TellDance("Late Lantern", "step R forward")));
        Assert.True(await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(12.5)));

        using HallStream stream = await HallStream.Of(screen, Stop);
        JsonElement first = (await stream.Next(Stop))!.Value;
        JsonElement dance = (await HallFixture.Send(screen, HttpMethod.Get, "/api/hall/dance")).Body;

        Assert.Equal("Late Lantern", first.GetProperty("dance").GetProperty("title").GetString());
        Assert.Equal(12.5, first.GetProperty("playhead").GetProperty("count").GetDouble());
        Assert.Equal(first.GetProperty("dance").GetProperty("number").GetInt64(), dance.GetProperty("number").GetInt64());
        Assert.Contains(
            dance.GetProperty("floor").GetProperty("steps").EnumerateArray(),
            s => s.GetProperty("words").GetString()!.Contains("step R forward", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Who_lost_the_network_comes_back_with_the_same_cookie_and_misses_nothing_that_counts()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient screen = await studio.Paired("floor");
        using (HallStream before = await HallStream.Of(screen, Stop))
        {
            await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(1));
            await before.Until(1, Stop);
        }

        await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(2));
        await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(3));
        using HallStream after = await HallStream.Of(screen, Stop);

        Assert.Equal(3, (await after.Next(Stop))!.Value.GetProperty("playhead").GetProperty("count").GetDouble());
        await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(4));
        Assert.Equal(4, (await after.Next(Stop))!.Value.GetProperty("playhead").GetProperty("count").GetDouble());
    }

    [Fact]
    public async Task Calls_come_with_the_dance_and_a_change_of_help_is_another_dance()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient screen = await studio.Paired("floor");
        Assert.True(await Told(studio.Her, "/api/hall/dance", Practised("every-step")));
        JsonElement every = (await HallFixture.Send(screen, HttpMethod.Get, "/api/hall/dance")).Body;
        Assert.True(await Told(studio.Her, "/api/hall/dance", Practised("every-step")));
        JsonElement same = (await HallFixture.Send(screen, HttpMethod.Get, "/api/hall/dance")).Body;
        Assert.True(await Told(studio.Her, "/api/hall/dance", Practised("silent")));
        JsonElement silent = (await HallFixture.Send(screen, HttpMethod.Get, "/api/hall/dance")).Body;

        Assert.Contains(every.GetProperty("calls").EnumerateArray(), c => c.GetProperty("kind").GetString() == "move");
        Assert.Equal("every-step", every.GetProperty("help").GetString());
        Assert.Equal(every.GetProperty("number").GetInt64(), same.GetProperty("number").GetInt64());
        Assert.True(silent.GetProperty("number").GetInt64() > every.GetProperty("number").GetInt64());
        Assert.DoesNotContain(silent.GetProperty("calls").EnumerateArray(), c => c.GetProperty("kind").GetString() == "move");
    }

    [Fact]
    public async Task What_a_remote_asks_is_told_and_a_screen_may_ask_nothing()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient tablet = await studio.Paired("tablet");
        using HttpClient screen = await studio.Paired("floor");
        using HallStream stream = await HallStream.Of(studio.Her, Stop);
        await stream.Next(Stop);

        Assert.Equal(200, (await HallFixture.Send(tablet, HttpMethod.Post, "/api/hall/ask", Ask("speed", 0.8))).Status);
        (string name, string content) = await stream.Event(Stop);

        Assert.Equal("ask", name);
        Assert.Equal(0.8, JsonDocument.Parse(content).RootElement.GetProperty("number").GetDouble());
        Assert.Equal(403, (await HallFixture.Send(screen, HttpMethod.Post, "/api/hall/ask", Ask("stop", null))).Status);
    }

    [Theory]
    [InlineData("speed", 9.0, null)]
    [InlineData("speed", null, null)]
    [InlineData("wall", 0.0, null)]
    [InlineData("help", null, "shouting")]
    [InlineData("view", null, "below")]
    [InlineData("delete", null, null)]
    public async Task A_remote_that_asks_nonsense_is_told_so(string kind, double? number, string? word)
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient tablet = await studio.Paired("tablet");

        Assert.Equal(400, (await HallFixture.Send(tablet, HttpMethod.Post, "/api/hall/ask", Ask(kind, number, word))).Status);
    }

    private static object Ask(string kind, double? number, string? word = null) => new { kind, number, to = (double?)null, word };

    private static object Practised(string help)
    {
        const string Text = "Called\n\nsection 1\n1-2   step R forward, touch L together\n";
        return new
        {
            hand = "laptop",
            takes = false,
            title = "Called",
            eight = 8,
            floor = new { text = Text, track = (string?)null, height = (double?)null, ending = false, easier = false },
            calls = new { text = Text, track = (string?)null, ending = false, countsPerMinute = 110.0, table = (double[][]?)null, speed = 1.0, help = new[] { help } },
        };
    }

    [Fact]
    public async Task A_follower_that_leaves_is_forgotten()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient screen = await studio.Paired("floor");
        using (HallStream stream = await HallStream.Of(screen, Stop))
        {
            await stream.Next(Stop);
            Assert.Equal(1, studio.Studio.Hall.Session.Followers);
        }

        // the server learns of it when it next writes
        for (int i = 0; i < 1000 && studio.Studio.Hall.Session.Followers > 0; i++)
        {
            await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(i));
        }

        Assert.Equal(0, studio.Studio.Hall.Session.Followers);
    }

    [Fact]
    public async Task The_hall_follows_the_page_on_which_she_pressed_play_last()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient tablet = await studio.Paired("tablet");

        Assert.True(await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(1, "laptop")));
        Assert.False(await Told(tablet, "/api/hall/playhead", HallFixture.Tell(9, "tablet")));
        Assert.True(await Told(tablet, "/api/hall/playhead", HallFixture.Tell(9, "tablet", takes: true)));
        Assert.False(await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(2, "laptop")));
        Assert.False(await Told(studio.Her, "/api/hall/dance", HallFixture.TellDance("Not Shown", "step R forward", "laptop")));

        using HallStream stream = await HallStream.Of(tablet, Stop);
        JsonElement news = (await stream.Next(Stop))!.Value;
        Assert.Equal(9, news.GetProperty("playhead").GetProperty("count").GetDouble());
        Assert.Equal(JsonValueKind.Null, news.GetProperty("dance").ValueKind);
    }

    [Fact]
    public async Task The_same_dance_told_twice_is_one_change()
    {
        await using HallFixture studio = await HallFixture.Start();
        await Told(studio.Her, "/api/hall/dance", HallFixture.TellDance("Once", "step R forward"));
        await Told(studio.Her, "/api/hall/dance", HallFixture.TellDance("Once", "step R forward"));
        Assert.Equal(1, (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/hall/dance")).Body.GetProperty("number").GetInt64());
        await Told(studio.Her, "/api/hall/dance", HallFixture.TellDance("Once", "step R back"));
        Assert.Equal(2, (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/hall/dance")).Body.GetProperty("number").GetInt64());
    }

    [Fact]
    public async Task Before_anything_is_danced_there_is_no_dance_to_fetch()
    {
        await using HallFixture studio = await HallFixture.Start();

        Assert.Equal(404, (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/hall/dance")).Status);
    }

    [Theory]
    [InlineData(-1, "above")]
    [InlineData(1000, "above")]
    [InlineData(2, "from the ceiling")]
    public async Task A_playhead_that_cannot_be_is_refused(double pace, string view)
    {
        await using HallFixture studio = await HallFixture.Start();
        object tell = HallFixture.Tell(0, pace: pace, view: view);

        Assert.Equal(400, (await HallFixture.Send(studio.Her, HttpMethod.Post, "/api/hall/playhead", tell)).Status);
    }

    [Fact]
    public async Task The_clock_of_the_hall_is_one_for_all_and_rises()
    {
        SteppedClock clock = new();
        await using HallFixture studio = await HallFixture.Start(clock);
        using HttpClient screen = await studio.Paired("floor");
        double before = (await HallFixture.Send(screen, HttpMethod.Get, "/api/hall/time")).Body.GetProperty("now").GetDouble();
        clock.Advance(TimeSpan.FromMilliseconds(1500));

        Assert.Equal(before + 1500, (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/hall/time")).Body.GetProperty("now").GetDouble(), 3);
    }

    [Fact]
    public async Task Fifty_clients_get_every_change_in_order()
    {
        const int Changes = 200;
        await using HallFixture studio = await HallFixture.Start();
        (Uri address, string code) = await studio.Open("floor");
        HttpClient[] clients = [.. Enumerable.Range(0, Clients).Select(_ => HallFixture.Device(address))];
        try
        {
            (int Status, JsonElement)[] paired = await Task.WhenAll(
                clients.Select(c => HallFixture.Send(c, HttpMethod.Post, "/api/hall/pair", new { code })));
            Assert.All(paired, p => Assert.Equal(200, p.Status));
            HallStream[] streams = await Task.WhenAll(clients.Select(c => HallStream.Of(c, Stop)));
            Task<long[]>[] heard = [.. streams.Select(s => Numbers(s, Changes))];

            // a dance is told now and then among the playheads, as when she mends a line while it plays
            for (int i = 1; i <= Changes; i++)
            {
                bool told = i % 50 == 0
                    ? await Told(studio.Her, "/api/hall/dance", HallFixture.TellDance($"Change {i}", "step R forward"))
                    : await Told(studio.Her, "/api/hall/playhead", HallFixture.Tell(i));
                Assert.True(told);
            }

            long[] all = [.. Enumerable.Range(0, Changes + 1).Select(i => (long)i)];
            Assert.All(await Task.WhenAll(heard), numbers => Assert.Equal(all, numbers));
            Assert.Equal(Clients, (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/hall")).Body.GetProperty("screens").GetInt32());
            Array.ForEach(streams, s => s.Dispose());
        }
        finally
        {
            Array.ForEach(clients, c => c.Dispose());
        }

        Assert.Empty(studio.Troubles);
    }

    private static async Task<long[]> Numbers(HallStream stream, long last)
    {
        List<long> numbers = [];
        while ((numbers.Count == 0 || numbers[^1] < last) && await stream.Next(Stop) is { } news)
        {
            numbers.Add(news.GetProperty("number").GetInt64());
        }

        return [.. numbers];
    }

    private static async Task<bool> Told(HttpClient page, string path, object tell)
    {
        (int status, JsonElement body) = await HallFixture.Send(page, HttpMethod.Post, path, tell);
        Assert.Equal(200, status);
        return body.GetProperty("leads").GetBoolean();
    }
}
