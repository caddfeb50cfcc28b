using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using Scuff.App.Web.Tracks;
using Scuff.Audio.Signals;
using Scuff.Audio.Songs;
using Tests.Audio;

namespace Tests.Web;

public sealed class TrackRoutesTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    // A beat every half second, for so many seconds; each of another length is another file.
    private static byte[] Wav(double seconds)
    {
        MonoAudio clicks = MadeSounds.Clicks([.. Enumerable.Range(0, (int)(seconds * 2)).Select(i => 0.25 + (0.5 * i))], seconds);
        using MemoryStream file = new();
        new StereoSound(clicks.Samples, clicks.Samples, clicks.Rate).WriteWav(file, "Click Row", "The Metronomes");
        return file.ToArray();
    }

    [Fact]
    public async Task A_file_is_taken_in_heard_and_can_be_drawn()
    {
        (int status, JsonElement taken) = await Take("click row.wav", Wav(21));

        Assert.Equal(200, status);
        Assert.True(taken.GetProperty("wasNew").GetBoolean());
        JsonElement track = await Heard(taken);
        JsonElement music = track.GetProperty("music");
        Assert.Equal("Click Row", track.GetProperty("track").GetProperty("title").GetString());
        Assert.Equal("The Metronomes", track.GetProperty("track").GetProperty("artist").GetString());
        Assert.InRange(music.GetProperty("beats").GetArrayLength(), 38, 43);
        Assert.Contains("beats a minute", music.GetProperty("tempo").GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.InRange(music.GetProperty("loudness").GetArrayLength(), 210, 211);
        JsonElement[] eights = [.. music.GetProperty("eights").EnumerateArray()];
        Assert.Equal(music.GetProperty("beats").GetArrayLength(), eights.Sum(e => e.GetProperty("beats").GetInt32()));
        Assert.Empty(studio.Troubles);
    }

    [Fact]
    public async Task The_same_file_twice_is_one_track()
    {
        byte[] file = Wav(22);
        (_, JsonElement first) = await Take("one.wav", file);
        (int status, JsonElement second) = await Take("two.wav", file);

        Assert.Equal(200, status);
        Assert.False(second.GetProperty("wasNew").GetBoolean());
        Assert.Equal(IdOf(first), IdOf(second));
        Assert.Contains("has this very file already", second.GetProperty("sentence").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../../../escaped.wav", "escaped.wav", 41)]
    [InlineData("..\\..\\escaped too.wav", "escaped too.wav", 42)]
    [InlineData("page.html", "page.html.wav", 43)]
    [InlineData("\u0000bad\r\nname", "badname.wav", 44)]
    [InlineData("", "track.wav", 45)]
    public async Task A_name_is_only_a_name(string given, string kept, int seconds)
    {
        (int status, JsonElement taken) = await Take(given, Wav(seconds));

        Assert.Equal(200, status);
        Assert.Equal(kept, taken.GetProperty("track").GetProperty("fileName").GetString());
        Assert.Equal("audio/wav", taken.GetProperty("track").GetProperty("mediaType").GetString());
        Assert.DoesNotContain(Directory.EnumerateFiles(Path.GetDirectoryName(studio.Folder)!), f => f.Contains("escaped", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_is_no_sound_is_refused_in_a_sentence_and_leaves_nothing_behind()
    {
        int before = await Total();

        (int text, JsonElement why) = await Take("notes.mp3", Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("these are my notes for tonight\n", 400))));
        (int empty, JsonElement nothing) = await Take("empty.wav", []);
        (int head, JsonElement cut) = await Take("cut.wav", Wav(20)[..30]);

        Assert.Equal((422, 422, 422), (text, empty, head));
        Assert.StartsWith("notes.mp3 was not taken. This is not a sound file", Sentence(why), StringComparison.Ordinal);
        Assert.Contains("The file is empty.", Sentence(nothing), StringComparison.Ordinal);
        Assert.StartsWith("cut.wav was not taken.", Sentence(cut), StringComparison.Ordinal);
        Assert.Equal(before, await Total());
    }

    [Fact]
    public async Task A_file_that_ends_early_is_heard_as_far_as_it_goes_and_says_so()
    {
        byte[] whole = Wav(30);
        (int status, JsonElement taken) = await Take("half.wav", whole[..(whole.Length * 2 / 3)]);

        Assert.Equal(200, status);
        JsonElement track = await Heard(taken);
        Assert.Contains(track.GetProperty("notes").EnumerateArray(), n => n.GetString()!.StartsWith("The file ends early", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_file_beyond_the_limit_is_refused_before_it_is_sent()
    {
        using TcpClient raw = new();
        await raw.ConnectAsync(IPAddress.Loopback, studio.Client.BaseAddress!.Port, TestContext.Current.CancellationToken);
        using NetworkStream stream = raw.GetStream();
        string head = $"POST /api/tracks?name=huge.wav HTTP/1.1\r\nHost: {studio.Client.BaseAddress.Authority}\r\nContent-Type: application/octet-stream\r\n"
            + "Content-Length: 2000000000\r\n\r\n";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head), TestContext.Current.CancellationToken);
        using StreamReader reader = new(stream);
        string? first = await reader.ReadLineAsync(TestContext.Current.CancellationToken);

        Assert.StartsWith("HTTP/1.1 413", first, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_browser_decodes_is_heard_from_its_samples()
    {
        byte[] m4a = [0, 0, 0, 32, .. "ftypM4A "u8, .. new byte[400]];
        (int status, JsonElement taken) = await Take("from a phone.m4a", m4a);
        Assert.Equal(200, status);
        Assert.True(taken.GetProperty("needsSamples").GetBoolean());
        Assert.Equal("audio/mp4", taken.GetProperty("track").GetProperty("mediaType").GetString());
        string id = IdOf(taken);

        MonoAudio clicks = MadeSounds.Clicks([.. Enumerable.Range(0, 40).Select(i => 0.25 + (0.5 * i))], 20);
        byte[] samples = new byte[clicks.Samples.Length * 4];
        Buffer.BlockCopy(clicks.Samples, 0, samples, 0, samples.Length);
        (int strange, _) = await Send($"/api/tracks/{id}/samples?rate=7", samples);
        (int broken, JsonElement why) = await Send($"/api/tracks/{id}/samples?rate=22050", samples[..^1]);
        (int taken2, JsonElement _) = await Send($"/api/tracks/{id}/samples?rate={clicks.Rate}", samples);

        Assert.Equal((400, 422, 202), (strange, broken, taken2));
        Assert.Equal("The sound did not arrive whole. Try again.", Sentence(why));
        JsonElement track = await Heard(taken);
        Assert.InRange(track.GetProperty("music").GetProperty("beats").GetArrayLength(), 36, 41);
        Assert.Equal("from a phone", track.GetProperty("track").GetProperty("title").GetString());
    }

    [Fact]
    public async Task The_sound_is_given_in_stretches()
    {
        byte[] file = Wav(24);
        (_, JsonElement taken) = await Take("stretches.wav", file);
        string path = $"/api/tracks/{IdOf(taken)}/sound";

        using HttpResponseMessage whole = await studio.Client.GetAsync(path, TestContext.Current.CancellationToken);
        using HttpResponseMessage middle = await Get(path, "bytes=1000-1999");
        using HttpResponseMessage end = await Get(path, "bytes=-100");
        using HttpResponseMessage beyond = await Get(path, $"bytes={file.Length}-");

        Assert.Equal(file, await whole.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal("audio/wav", whole.Content.Headers.ContentType!.ToString());
        Assert.Equal(HttpStatusCode.PartialContent, middle.StatusCode);
        Assert.Equal(file[1000..2000], await middle.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal($"bytes 1000-1999/{file.Length}", middle.Content.Headers.ContentRange!.ToString());
        Assert.Equal(file[^100..], await end.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.RequestedRangeNotSatisfiable, beyond.StatusCode);
    }

    [Fact]
    public async Task What_she_says_is_kept_apart_with_a_revision_and_can_be_taken_back()
    {
        string id = IdOf(await ByHand("Quay Road.track", "title: Quay Road\ntempo 120, first beat 0.5, 4/4\nintro 16, A 32, B 32, A 32\n"));
        JsonElement heard = await Track(id);
        Assert.Equal(0, heard.GetProperty("revision").GetInt32());
        JsonElement half = Other(heard, "tempo", "half as fast");

        (int status, JsonElement slower) = await Say(id, 0, half);
        (int stale, JsonElement why) = await Say(id, 0, half);
        (int nonsense, JsonElement what) = await Say(id, 1, JsonSerializer.SerializeToElement(new { kind = "swing", ratio = 99.0 }));
        (int back, JsonElement again) = await studio.Send(HttpMethod.Post, $"/api/tracks/{id}/said", new { revision = 1, say = (object?)null, again = (string?)null, takeBack = 0 });

        Assert.Equal((200, 409, 422, 200), (status, stale, nonsense, back));
        Assert.Equal("60 beats a minute", Words(slower, "tempo"));
        Assert.Equal("said by you", slower.GetProperty("music").GetProperty("tempo").GetProperty("sure").GetString());
        Assert.Equal("the beat is half as fast", Assert.Single(slower.GetProperty("said").EnumerateArray()).GetProperty("words").GetString());
        Assert.Contains("in the meantime", Sentence(why), StringComparison.Ordinal);
        Assert.Contains("\"ratio\" is 99", Sentence(what), StringComparison.Ordinal);
        Assert.Equal(heard.GetProperty("music").GetRawText(), again.GetProperty("music").GetRawText());
        Assert.Empty(again.GetProperty("said").EnumerateArray());
    }

    [Fact]
    public async Task Everything_can_be_said_and_said_again()
    {
        string id = IdOf(await ByHand("Said.track", "title: Said\ntempo 120, first beat 0.5, 4/4\nintro 16, A 32, B 32, A 32\n"));
        object[] all =
        [
            new { kind = "taps", seconds = new[] { 1.0, 1.5, 2.0, 2.5 } }, new { kind = "beat", @is = "off-beat" }, new { kind = "one", beatsLater = 1, from = 20.0 },
            new { kind = "meter", @is = "3/4" }, new { kind = "boundary-added", at = 30.0, label = "C" }, new { kind = "boundary-moved", from = 30.0, to = 33.0 },
            new { kind = "boundary-removed", at = 33.0 }, new { kind = "section", at = 12.0, label = "V", name = "verse" }, new { kind = "swing", ratio = 2.0 },
            new { kind = "first-count", at = 9.0 },
        ];
        JsonElement track = await Track(id);
        foreach (object one in all)
        {
            (int status, track) = await Say(id, track.GetProperty("revision").GetInt32(), JsonSerializer.SerializeToElement(one));
            Assert.Equal(200, status);
        }

        Assert.Equal(all.Length, track.GetProperty("said").EnumerateArray().Select(s => s.GetProperty("words").GetString()).Distinct().Count());
        using HttpResponseMessage file = await studio.Client.GetAsync($"/api/tracks/{id}/as/corrections", TestContext.Current.CancellationToken);
        string text = await file.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        string other = IdOf(await ByHand("Same.track", "title: Same\ntempo 120, first beat 0.5, 4/4\nintro 16, A 32, B 32, A 32\n"));
        (int taken, JsonElement same) = await studio.Send(
            HttpMethod.Post, "/api/tracks/text", new { name = "said.corrections.json", text, sections = (string?)null, track = other, revision = 0 });
        Assert.Equal(200, taken);
        Assert.Equal(track.GetProperty("music").GetRawText(), same.GetProperty("music").GetRawText());
        string last = track.GetProperty("said")[all.Length - 1].GetProperty("text").GetString()!;
        (int once, JsonElement more) = await studio.Send(
            HttpMethod.Post, $"/api/tracks/{id}/said", new { revision = all.Length, say = (object?)null, again = last, takeBack = all.Length - 1 });
        Assert.Equal(200, once);
        Assert.Equal(track.GetProperty("said").GetRawText(), more.GetProperty("said").GetRawText());
    }

    [Fact]
    public async Task Labels_go_out_and_come_back_and_a_text_that_is_none_is_refused()
    {
        string id = IdOf(await ByHand("Out.track", "title: Out\ntempo 110, first beat 1, 4/4\nA 32, B 32\n"));
        string beats = await studio.Client.GetStringAsync($"/api/tracks/{id}/as/beats", TestContext.Current.CancellationToken);
        string sections = await studio.Client.GetStringAsync($"/api/tracks/{id}/as/sections", TestContext.Current.CancellationToken);
        string picture = await studio.Client.GetStringAsync($"/api/tracks/{id}/as/picture", TestContext.Current.CancellationToken);

        (int status, JsonElement back) = await studio.Send(
            HttpMethod.Post, "/api/tracks/text", new { name = "Back.beats.txt", text = beats, sections, track = (string?)null, revision = 0 });
        (int strange, JsonElement why) = await studio.Send(
            HttpMethod.Post, "/api/tracks/text", new { name = "list.docx", text = "x", sections = (string?)null, track = (string?)null, revision = 0 });
        (int wrong, JsonElement line) = await studio.Send(
            HttpMethod.Post, "/api/tracks/text", new { name = "bad.track", text = "title: Bad\ntempo fast\n", sections = (string?)null, track = (string?)null, revision = 0 });

        Assert.StartsWith("<svg", picture, StringComparison.Ordinal);
        Assert.Equal(200, status);
        Assert.Equal(64, back.GetProperty("music").GetProperty("beats").GetArrayLength());
        Assert.Equal(2, back.GetProperty("music").GetProperty("sections").GetArrayLength());
        Assert.True(back.GetProperty("track").GetProperty("isByHand").GetBoolean());
        Assert.Equal((415, 422), (strange, wrong));
        Assert.Contains(".beats.txt", Sentence(why), StringComparison.Ordinal);
        Assert.Contains("line 2", Sentence(line), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Work_waits_its_turn_and_can_be_stopped_wherever_it_stands()
    {
        (_, JsonElement work) = await studio.Send(HttpMethod.Post, "/api/tracks/songs", new { titles = new[] { "Trim the Wick", "Pink in the Pot" } });
        JsonElement[] songs = [.. work.GetProperty("rows").EnumerateArray().Where(j => j.GetProperty("kind").GetString() == "play")];
        Assert.Equal(2, songs.Length);

        (int second, _) = await studio.Send(HttpMethod.Delete, $"/api/jobs/{songs[1].GetProperty("id").GetString()}", null);
        (int first, _) = await studio.Send(HttpMethod.Delete, $"/api/jobs/{songs[0].GetProperty("id").GetString()}", null);
        (int again, JsonElement why) = await studio.Send(HttpMethod.Delete, $"/api/jobs/{songs[0].GetProperty("id").GetString()}", null);
        (_, JsonElement after) = await studio.Send(HttpMethod.Get, "/api/jobs", null);
        (int unknown, JsonElement which) = await studio.Send(HttpMethod.Post, "/api/tracks/songs", new { titles = new[] { "Nobody Plays This" } });

        Assert.Equal((200, 200, 404), (second, first, again));
        Assert.Equal("This is over already.", Sentence(why));
        Assert.All(after.GetProperty("rows").EnumerateArray().Where(j => j.GetProperty("kind").GetString() == "play"), j => Assert.Equal("stopped", j.GetProperty("state").GetString()));
        (_, JsonElement list) = await studio.Send(HttpMethod.Get, "/api/tracks/songs", null);
        Assert.All(list.GetProperty("rows").EnumerateArray(), s => Assert.Equal(JsonValueKind.Null, s.GetProperty("track").ValueKind));
        Assert.Equal(404, unknown);
        Assert.Contains("Harbour Lights Out", Sentence(which), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_track_goes_into_the_bin_and_comes_back()
    {
        string id = IdOf(await ByHand("Bin.track", "title: Bin\ntempo 120, first beat 0.5, 4/4\nA 32\n"));

        (int gone, _) = await studio.Send(HttpMethod.Delete, $"/api/tracks/{id}", null);
        (int twice, _) = await studio.Send(HttpMethod.Delete, $"/api/tracks/{id}", null);
        (_, JsonElement inBin) = await studio.Send(HttpMethod.Get, "/api/tracks?bin=yes", null);
        (int back, _) = await studio.Send(HttpMethod.Post, $"/api/tracks/{id}/back", null);
        (int named, JsonElement track) = await studio.Send(HttpMethod.Put, $"/api/tracks/{id}", new { title = " Another Name ", artist = "Somebody" });
        (int sound, _) = await studio.Send(HttpMethod.Get, $"/api/tracks/{id}/sound", null);
        (int nobody, JsonElement why) = await studio.Send(HttpMethod.Get, "/api/tracks/nobody", null);

        Assert.Equal((200, 409, 200, 200, 404, 404), (gone, twice, back, named, sound, nobody));
        Assert.Contains(inBin.GetProperty("rows").EnumerateArray(), r => r.GetProperty("id").GetString() == id);
        Assert.Equal("Another Name", track.GetProperty("track").GetProperty("title").GetString());
        Assert.Contains("not in the club any more", Sentence(why), StringComparison.Ordinal);
    }

    [Fact]
    public void A_thread_is_there_only_while_there_is_work_and_its_troubles_are_told_as_sentences()
    {
        List<string> told = [];
        using TrackJobs jobs = new((place, _) => told.Add(place));
        using ManualResetEventSlim go = new();
        using ManualResetEventSlim over = new();

        jobs.Add("hear", "first", null, (_, _) => go.Wait(TestContext.Current.CancellationToken));
        jobs.Add("hear", "same", "t1", (_, _) => throw new InvalidOperationException("inside"));
        TrackJob twice = jobs.Add("hear", "same", "t1", (_, _) => { });
        jobs.Add("hear", "last", null, (job, _) =>
        {
            job.Report(0.5);
            job.Report(0.2);
            over.Set();
        });
        go.Set();
        Assert.True(over.Wait(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken));

        Assert.Equal("2", twice.Id);
        Assert.Equal(3, jobs.All(j => j).Count);
        Assert.True(SpinWait.SpinUntil(() => jobs.All(j => j.IsOpen).All(o => !o), TimeSpan.FromSeconds(30)));
        Assert.Equal([JobState.Done, JobState.Failed, JobState.Done], jobs.All(j => j.State));
        Assert.Equal(["same"], told);
        Assert.DoesNotContain("inside", jobs.All(j => j.Sentence)[1], StringComparison.Ordinal);
    }

    private static string IdOf(JsonElement answer) => answer.GetProperty("track").GetProperty("id").GetString()!;

    private static string Sentence(JsonElement answer) => answer.GetProperty("sentence").GetString()!;

    private static string Words(JsonElement track, string estimate) => track.GetProperty("music").GetProperty(estimate).GetProperty("words").GetString()!;

    private static JsonElement Other(JsonElement track, string estimate, string words) => track.GetProperty("music").GetProperty(estimate).GetProperty("others").EnumerateArray()
        .First(o => o.GetProperty("words").GetString()!.EndsWith(words, StringComparison.Ordinal)).GetProperty("say");

    private Task<(int Status, JsonElement Body)> Take(string name, byte[] file) => Send($"/api/tracks?name={Uri.EscapeDataString(name)}", file);

    private async Task<(int Status, JsonElement Body)> Send(string path, byte[] bytes)
    {
        using ByteArrayContent content = new(bytes);
        content.Headers.ContentType = new("application/octet-stream");
        using HttpResponseMessage answer = await studio.Client.PostAsync(path, content, TestContext.Current.CancellationToken);
        return ((int)answer.StatusCode, JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement.Clone());
    }

    private async Task<HttpResponseMessage> Get(string path, string range)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, path);
        request.Headers.TryAddWithoutValidation("Range", range);
        return await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private async Task<int> Total() => (await studio.Send(HttpMethod.Get, "/api/tracks", null)).Body.GetProperty("total").GetInt32();

    private async Task<JsonElement> Track(string id) => (await studio.Send(HttpMethod.Get, $"/api/tracks/{id}", null)).Body;

    private async Task<JsonElement> ByHand(string name, string text)
    {
        (int status, JsonElement track) = await studio.Send(
            HttpMethod.Post, "/api/tracks/text", new { name, text, sections = (string?)null, track = (string?)null, revision = 0 });
        Assert.Equal(200, status);
        return track;
    }

    private Task<(int Status, JsonElement Body)> Say(string id, int revision, JsonElement say)
        => studio.Send(HttpMethod.Post, $"/api/tracks/{id}/said", new { revision, say, again = (string?)null, takeBack = (int?)null });

    private async Task<JsonElement> Heard(JsonElement taken)
    {
        string id = IdOf(taken);
        for (int i = 0; i < 600; i++)
        {
            JsonElement track = await Track(id);
            if (track.GetProperty("track").GetProperty("isHeard").GetBoolean())
            {
                return track;
            }

            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        throw new TimeoutException(string.Create(CultureInfo.InvariantCulture, $"{id} was not heard"));
    }
}
