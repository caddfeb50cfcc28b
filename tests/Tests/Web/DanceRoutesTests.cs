using System.Text.Json;
using Scuff.Analysis;
using Scuff.Prose;
using Tests.House;

namespace Tests.Web;

public sealed class DanceRoutesTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    private static readonly string Lantern = Repository.Read("demo/dances/tin-lantern.dance");

    [Fact]
    public async Task The_page_is_told_what_the_command_line_is_told()
    {
        string text = Lantern.Replace("[9:00]", "[3:00]", StringComparison.Ordinal);
        (int status, JsonElement answer) = await studio.Send(HttpMethod.Post, "/api/read", new { text, dance = (string?)null });
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));

        Assert.Equal(200, status);
        Assert.Equal(
            analysis.Report.Complaints.Select(c => (c.Rule.Id, c.Span.Start, c.Message)),
            answer.GetProperty("complaints").EnumerateArray().Select(c => (c.GetProperty("id").GetString()!, c.GetProperty("from").GetInt32(), c.GetProperty("message").GetString()!)));
    }

    [Fact]
    public async Task A_mend_of_the_page_is_the_mend_of_the_program()
    {
        string text = Lantern.Replace("pivot 1/4 left            [9:00]", "pivot 1/4 left            [3:00]", StringComparison.Ordinal);
        JsonElement answer = (await studio.Send(HttpMethod.Post, "/api/read", new { text, dance = (string?)null })).Body;
        JsonElement complaint = answer.GetProperty("complaints").EnumerateArray().Single(c => c.GetProperty("id").GetString() == "facing/claim-differs");
        JsonElement edit = complaint.GetProperty("fixes")[0].GetProperty("edits")[0];

        string mended = text[..edit.GetProperty("from").GetInt32()] + edit.GetProperty("text").GetString() + text[edit.GetProperty("to").GetInt32()..];

        Assert.Equal(Lantern, mended);
    }

    [Theory]
    [InlineData("weight on L", "touch R", true)]
    [InlineData("weight on L", "touch L", false)]
    [InlineData("weight on R", "touch L", true)]
    [InlineData("weight on R", "touch R", false)]
    public async Task Offers_are_possible_with_the_free_foot_and_say_why_others_are_not(string start, string move, bool isPossible)
    {
        string text = $"Try\n\nstart: {start}\n\nsection 1\n1     {move}";
        JsonElement offers = (await studio.Send(HttpMethod.Post, "/api/complete", new { text, at = text.Length })).Body.GetProperty("offers");
        JsonElement offer = offers.EnumerateArray().Single(o => o.GetProperty("text").GetString() == move);

        Assert.Equal(isPossible, offer.GetProperty("isPossible").GetBoolean());
        Assert.Equal(!isPossible, offer.GetProperty("about").GetString()!.Contains("weight is on", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_is_offered_as_possible_is_read_and_danced_without_a_complaint_about_the_foot()
    {
        string head = "Try\n\nstart: weight on R\n\nsection 1\n1-8   ";
        foreach (string begun in (string[])["", "step", "ro", "sh", "vi", "sa", "ki", "cr", "pi"])
        {
            string text = head + begun;
            JsonElement answer = (await studio.Send(HttpMethod.Post, "/api/complete", new { text, at = text.Length })).Body;
            int from = answer.GetProperty("from").GetInt32();
            foreach (JsonElement offer in answer.GetProperty("offers").EnumerateArray().Where(o => o.GetProperty("isPossible").GetBoolean()))
            {
                string tried = text[..from] + offer.GetProperty("text").GetString();
                Assert.DoesNotContain(DanceAnalysis.Of(DanceReader.Read(tried)).Report.Complaints, c => c.Rule.Id is "weight/foot-not-free" or "reading/unknown-words");
            }
        }
    }

    [Fact]
    public async Task The_floor_says_what_is_learned_as_one_piece_wall_by_wall()
    {
        JsonElement floor = (await studio.Send(HttpMethod.Post, "/api/floor", new { text = Lantern, track = "none", height = (double?)null, ending = false })).Body;
        JsonElement[] sections = [.. floor.GetProperty("sections").EnumerateArray()];

        Assert.Equal(16, sections.Length);
        Assert.Equal(Enumerable.Range(0, 16).Select(i => 8.0 * i), sections.Select(s => s.GetProperty("at").GetDouble()));
        Assert.Equal(["section 1", "section 2", "section 3", "section 4"], sections.Take(4).Select(s => s.GetProperty("name").GetString()!));
        Assert.Equal("box with shuffles", sections[0].GetProperty("title").GetString());
        Assert.Equal([1, 1, 1, 1, 2], sections.Take(5).Select(s => s.GetProperty("wall").GetInt32()));
        JsonElement line = sections[5].GetProperty("lines")[1];
        Assert.Equal(42, line.GetProperty("at").GetDouble());
        Assert.Equal(2, line.GetProperty("counts").GetDouble());
        Assert.StartsWith("3-4   step R forward", Lantern[line.GetProperty("from").GetInt32()..], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pieces_of_every_demo_dance_follow_each_other_from_the_first_count_to_the_last()
    {
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "demo/dances")))
        {
            JsonElement floor = (await studio.Send(HttpMethod.Post, "/api/floor", new { text = File.ReadAllText(file), track = (string?)null, height = (double?)null, ending = true })).Body;
            double at = 0;
            foreach (JsonElement section in floor.GetProperty("sections").EnumerateArray())
            {
                Assert.Equal(at, section.GetProperty("at").GetDouble(), 6);
                at += section.GetProperty("counts").GetDouble();
            }

            Assert.Equal(floor.GetProperty("length").GetDouble(), at, 6);
        }
    }

    [Fact]
    public async Task Easier_options_are_danced_and_called_when_asked_for()
    {
        JsonElement plain = (await studio.Send(HttpMethod.Post, "/api/floor", new { text = Lantern, track = "none", height = (double?)null, ending = false })).Body;
        JsonElement easier = (await studio.Send(HttpMethod.Post, "/api/floor", new { text = Lantern, track = "none", height = (double?)null, ending = false, easier = true })).Body;
        string called = (await studio.Send(HttpMethod.Post, "/api/calls", Calls(false))).Body.GetRawText();
        string calledEasier = (await studio.Send(HttpMethod.Post, "/api/calls", Calls(true))).Body.GetRawText();

        Assert.True(plain.GetProperty("hasEasier").GetBoolean());
        Assert.DoesNotContain("cross", Words(easier, 14), StringComparison.Ordinal);
        Assert.NotEqual(called, calledEasier);
        Assert.Equal(plain.GetProperty("length").GetDouble(), easier.GetProperty("length").GetDouble());

        static object Calls(bool isEasier) => new
        {
            text = Lantern,
            track = "none",
            ending = false,
            countsPerMinute = 110.0,
            table = (double[][]?)null,
            speed = 1.0,
            help = new[] { "every-step" },
            easier = isEasier,
        };

        // what is danced on the counts from a count of the first wall to the next eight
        static string Words(JsonElement floor, double from) => string.Join(' ', floor.GetProperty("steps").EnumerateArray()
            .Where(s => s.GetProperty("at").GetDouble() >= from && s.GetProperty("at").GetDouble() < 16)
            .Select(s => s.GetProperty("words").GetString()));
    }

    [Fact]
    public async Task The_page_for_students_is_kept_and_not_shown()
    {
        using HttpResponseMessage answer = await studio.Client.PostAsync("/api/student", System.Net.Http.Json.JsonContent.Create(new { text = Lantern }), TestContext.Current.CancellationToken);

        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Contains("Tin Lantern", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_floor_has_the_feet_where_the_simulator_has_them()
    {
        JsonElement floor = (await studio.Send(HttpMethod.Post, "/api/floor", new { text = Lantern, track = "none", height = 1.68, ending = false })).Body;
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(Lantern));
        var path = DanceAnalysis.FloorPathOf(analysis.PlainTimeline, Scuff.Analysis.Floor.DancerSize.Default);
        int perCount = floor.GetProperty("perCount").GetInt32();
        double first = floor.GetProperty("first").GetDouble();
        int[] x = [.. floor.GetProperty("right").GetProperty("x").EnumerateArray().Select(v => v.GetInt32())];

        Assert.Equal(128, floor.GetProperty("length").GetDouble());
        Assert.True(floor.GetProperty("goesRound").GetBoolean());
        for (int i = 0; i < x.Length; i += 7)
        {
            Assert.Equal(path.At(Scuff.Stance.Foot.Right, first + ((double)i / perCount)).X * 1000, x[i], 0.51);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\0\0")]
    [InlineData("section 1\n1-8 🦞 the lobster\n")]
    [InlineData("section 1\n1-999999999 step R forward\n")]
    [InlineData("{{{{ <script>alert(1)</script> \u202e ")]
    public async Task Any_text_is_answered(string text)
    {
        Assert.Equal(200, (await studio.Send(HttpMethod.Post, "/api/read", new { text, dance = (string?)null })).Status);
        Assert.Equal(200, (await studio.Send(HttpMethod.Post, "/api/floor", new { text, track = (string?)null, height = (double?)null, ending = true })).Status);
        Assert.Equal(200, (await studio.Send(HttpMethod.Post, "/api/complete", new { text, at = 99 })).Status);
        Assert.Equal(200, (await studio.Send(HttpMethod.Post, "/api/tidy", new { text })).Status);
        Assert.Empty(studio.Troubles);
    }

    [Theory]
    [InlineData("exe", "en")]
    [InlineData("pdf", "xx")]
    [InlineData("pdf", "../en")]
    public async Task A_sheet_that_there_is_not_is_refused_with_what_there_is(string format, string language)
    {
        (int status, JsonElement body) = await studio.Send(
            HttpMethod.Post,
            "/api/sheet",
            new { text = Lantern, format, language, paper = "a4", large = false, card = false, diagrams = true, since = (string?)null });

        Assert.Equal(400, status);
        Assert.Contains("The ", body.GetProperty("sentence").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_save_upon_an_old_text_is_refused_and_loses_nothing()
    {
        JsonElement added = (await studio.Send(HttpMethod.Post, "/api/dances", new { text = "One\n" })).Body;
        string id = added.GetProperty("item").GetProperty("id").GetString()!;
        int revision = added.GetProperty("revision").GetInt32();

        Assert.Equal(200, (await studio.Send(HttpMethod.Put, $"/api/dances/{id}", new { text = "Two\n", revision, hand = "a" })).Status);
        (int status, JsonElement clash) = await studio.Send(HttpMethod.Put, $"/api/dances/{id}", new { text = "Three\n", revision, hand = "b" });

        Assert.Equal(409, status);
        Assert.Equal("Two\n", clash.GetProperty("text").GetString());
        Assert.Equal("Two\n", (await studio.Send(HttpMethod.Get, $"/api/dances/{id}", null)).Body.GetProperty("text").GetString());
        Assert.Equal(200, (await studio.Send(HttpMethod.Put, $"/api/dances/{id}", new { text = "Three\n", revision = clash.GetProperty("revision").GetInt32(), hand = "b" })).Status);
        JsonElement versions = (await studio.Send(HttpMethod.Get, $"/api/dances/{id}/versions", null)).Body.GetProperty("rows");
        Assert.True(versions.GetArrayLength() > 0);
        int number = versions[0].GetProperty("number").GetInt32();
        Assert.Equal("Two\n", (await studio.Send(HttpMethod.Get, $"/api/dances/{id}/versions/{number}", null)).Body.GetProperty("text").GetString());
    }
}
