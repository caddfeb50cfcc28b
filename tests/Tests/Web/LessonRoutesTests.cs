using System.Net.Http.Json;
using System.Text.Json;
using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Prose;
using Tests.House;

namespace Tests.Web;

public sealed class LessonRoutesTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    private static readonly string Lantern = Repository.Read("demo/dances/tin-lantern.dance");

    [Fact]
    public async Task The_page_gets_the_plan_of_the_program()
    {
        JsonElement answer = (await studio.Send(HttpMethod.Post, "/api/lesson", Ask(30))).Body;
        LessonPlan plan = DanceAnalysis.Of(DanceReader.Read(Lantern)).Lesson(new LessonOptions { Minutes = 30 });

        Assert.Equal(plan.Seconds, answer.GetProperty("seconds").GetInt32());
        Assert.Equal(
            plan.Steps.Select(s => (s.Id, s.Start, s.Seconds, s.LeaveOut)),
            answer.GetProperty("steps").EnumerateArray().Select(s => (
                s.GetProperty("id").GetString()!,
                s.GetProperty("start").GetInt32(),
                s.GetProperty("seconds").GetInt32(),
                s.GetProperty("leaveOut").ValueKind == JsonValueKind.Null ? (int?)null : s.GetProperty("leaveOut").GetInt32())));
    }

    [Fact]
    public async Task A_chunk_says_which_counts_it_walks()
    {
        JsonElement answer = (await studio.Send(HttpMethod.Post, "/api/lesson", Ask(null))).Body;
        JsonElement chunk = answer.GetProperty("steps").EnumerateArray().Single(s => s.GetProperty("id").GetString() == "chunk-2");

        Assert.Equal(8, chunk.GetProperty("fromCount").GetDouble());
        Assert.Equal(16, chunk.GetProperty("toCount").GetDouble());
        Assert.Equal("Walk section 2, 4 times", chunk.GetProperty("words").GetString());
        Assert.Equal(2, answer.GetProperty("steps").EnumerateArray().Single(s => s.GetProperty("id").GetString() == "second-wall").GetProperty("wall").GetInt32());
    }

    [Fact]
    public async Task What_the_class_knows_are_dances_of_the_club()
    {
        JsonElement kept = (await studio.Send(HttpMethod.Post, "/api/dances", new { text = Lantern })).Body;
        string id = kept.GetProperty("item").GetProperty("id").GetString()!;

        JsonElement strangers = (await studio.Send(HttpMethod.Post, "/api/lesson", Ask(null, "beginner", knows: []))).Body;
        JsonElement friends = (await studio.Send(HttpMethod.Post, "/api/lesson", Ask(null, "beginner", knows: [id, "gone"]))).Body;

        Assert.Contains(strangers.GetProperty("steps").EnumerateArray(), s => s.GetProperty("kind").GetString() == "figure");
        Assert.DoesNotContain(friends.GetProperty("steps").EnumerateArray(), s => s.GetProperty("kind").GetString() == "figure");
    }

    [Theory]
    [InlineData(0, null, null)]
    [InlineData(601, null, null)]
    [InlineData(30, "expert", null)]
    [InlineData(30, null, "sideways")]
    public async Task What_cannot_be_planned_is_refused_in_a_sentence(int minutes, string? level, string? order)
    {
        (int status, JsonElement body) = await studio.Send(HttpMethod.Post, "/api/lesson", Ask(minutes, level, order));

        Assert.Equal(400, status);
        Assert.EndsWith(".", body.GetProperty("sentence").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_printed_plan_is_drawn_in_any_format()
    {
        foreach (string format in (string[])["html", "pdf", "text"])
        {
            using HttpRequestMessage request = new(HttpMethod.Post, "/api/lesson/sheet")
            {
                Content = JsonContent.Create(new { lesson = Ask(30), format, paper = "a4", large = false }),
            };
            using HttpResponseMessage answer = await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);
            byte[] drawn = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);

            Assert.Equal(200, (int)answer.StatusCode);
            Assert.True(drawn.Length > 1000);
        }

        Assert.Equal(400, (await studio.Send(HttpMethod.Post, "/api/lesson/sheet", new { lesson = Ask(30), format = "parchment", paper = "a4", large = false })).Status);
    }

    private static object Ask(int? minutes, string? level = null, string? order = null, string[]? knows = null) => new
    {
        text = Lantern,
        minutes,
        @class = level,
        knows,
        track = (string?)null,
        practiceTempo = (double?)null,
        order,
        knees = false,
        beginners = false,
        warmUp = true,
    };
}
