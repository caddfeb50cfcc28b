using System.Net.Http.Json;
using System.Text.Json;
using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.Audio.Decoding;
using Scuff.Prose;
using Tests.House;

namespace Tests.Web;

public sealed class CallRoutesTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    private static readonly string Lantern = Repository.Read("demo/dances/tin-lantern.dance");

    [Fact]
    public async Task The_page_is_told_the_calls_of_the_front_door()
    {
        (int status, JsonElement answer) = await studio.Send(HttpMethod.Post, "/api/calls", Question(countsPerMinute: 96, help: ["every-step"]));
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(Lantern));
        CallScript expected = CallWriter.Write(
            analysis.Dance, analysis.TrackTimelines[0].Timeline, CountClock.Even(96), new CallOptions { HelpByWall = [CallHelp.EveryStep] });

        Assert.Equal(200, status);
        Assert.Equal(8, answer.GetProperty("countIn").GetInt32());
        Assert.Equal(
            expected.Calls.Select(c => (c.Words, Math.Round(c.At, 4), c.For.Value.ToDouble())),
            answer.GetProperty("calls").EnumerateArray()
                .Select(c => (c.GetProperty("words").GetString()!, c.GetProperty("at").GetDouble(), c.GetProperty("for").GetDouble())));
    }

    [Fact]
    public async Task A_track_gives_the_seconds()
    {
        double[][] table = [[-8, 2], [0, 6], [400, 206]];
        JsonElement answer = (await studio.Send(HttpMethod.Post, "/api/calls", Question(table: table, speed: 0.8))).Body;

        JsonElement eight = answer.GetProperty("calls").EnumerateArray().First(c => c.GetProperty("words").GetString() == "8");
        Assert.Equal(5.5 / 0.8, eight.GetProperty("seconds").GetDouble(), 3);
        Assert.Equal(-1, eight.GetProperty("at").GetDouble(), 3);
    }

    [Fact]
    public async Task What_cannot_be_called_gets_a_sentence()
    {
        Assert.Equal(400, (await studio.Send(HttpMethod.Post, "/api/calls", Question(countsPerMinute: 4000))).Status);
        Assert.Equal(400, (await studio.Send(HttpMethod.Post, "/api/calls", Question(speed: 0))).Status);
        Assert.Equal(400, (await studio.Send(HttpMethod.Post, "/api/calls", Question(table: [[0, 1]]))).Status);
        Assert.Equal(400, (await studio.Send(HttpMethod.Post, "/api/calls", Question(table: [[0, 2], [1, 1]]))).Status);
        (int status, JsonElement body) = await studio.Send(HttpMethod.Post, "/api/calls", Question(help: ["loud"]));
        Assert.Equal(400, status);
        Assert.Contains("no help named loud", body.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_call_track_can_be_kept_as_sound_and_as_captions()
    {
        object calls = new { text = Lantern, track = "none", ending = false, countsPerMinute = 120, table = (double[][]?)null, speed = 1.0, help = new[] { "headings" }, easier = false, plays = (string?)null, firstWall = 1 };
        using HttpResponseMessage sound = await File(calls, "wav");
        Assert.Equal("audio/wav", sound.Content.Headers.ContentType!.MediaType);
        using MemoryStream wav = new(await sound.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));

        // four walls of 32 counts and eight of count-in, half a second each
        Assert.Equal((8 + (4 * 32)) / 2.0, AudioFile.Read(wav).Audio.Seconds, 0.5);

        using HttpResponseMessage captions = await File(calls, "vtt");
        Assert.StartsWith("WEBVTT Tin Lantern", await captions.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(400, (await studio.Send(HttpMethod.Post, "/api/calls/file", new { calls, kind = "film", clicks = false })).Status);
    }

    [Fact]
    public async Task What_nobody_can_say_is_told_beside_the_file()
    {
        string text = Lantern.Replace("7&8   shuffle L back                            [12:00]\n", "7&8   shuffle L back                            [12:00]\n      call: qwrtz\n", StringComparison.Ordinal);
        object calls = new { text, track = "none", ending = false, countsPerMinute = 100, table = (double[][]?)null, speed = 1.0, help = new[] { "every-step" }, easier = false, plays = (string?)null, firstWall = 1 };

        using HttpResponseMessage sound = await File(calls, "wav");

        Assert.Equal(200, (int)sound.StatusCode);
        string missing = Uri.UnescapeDataString(Assert.Single(sound.Headers.GetValues("Scuff-Missing")));
        Assert.Contains("No voice can say “qwrtz”", missing, StringComparison.Ordinal);
    }

    private Task<HttpResponseMessage> File(object calls, string kind)
        => studio.Client.PostAsync("/api/calls/file", JsonContent.Create(new { calls, kind, clicks = true }), TestContext.Current.CancellationToken);

    private static object Question(double? countsPerMinute = null, double[][]? table = null, double speed = 1, string[]? help = null)
        => new { text = Lantern, track = (string?)null, ending = false, countsPerMinute, table, speed, help };
}
