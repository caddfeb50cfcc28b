using Scuff.Analysis.Planning;
using Scuff.App.Programmes;

namespace Tests.App;

public sealed class EveningPlanTests
{
    private static readonly DateTimeOffset Half = new(2026, 12, 5, 19, 30, 0, TimeSpan.Zero);

    [Fact]
    public void What_was_written_is_read_again()
    {
        EveningPlan plan = EveningPlan.Empty with
        {
            Groups = [new EveningGroup { ClassId = "c1", Name = "Tuesday", Level = "improver", People = 16 }],
            Stops = [new EveningStop { AtMinute = 75, Minutes = 15 }, new EveningStop { AtMinute = 20, IsLesson = true, DanceId = "d1" }],
            Pins = [new EveningPin { Kind = EveningPinKind.Song, DanceId = "d1", SongKey = "tide" }],
            Rules = new Dictionary<string, int> { ["SecondsBetween"] = 30 },
            Programme = Line.Programme(Line.Of("d1", 0)) with { Common = [new ProgrammeReason(ProgrammeReasonKind.EmptyTime, -3, 40)] },
            Night = new EveningNight { BegunAt = Half, Done = [new EveningDone { Item = Line.Of("d2", 0), At = Half, IsSkipped = true }] },
        };

        Assert.Equal(plan.Text(), EveningPlan.Read(plan.Text()).Text());
        Assert.Contains("\"kind\":\"Song\"", plan.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_document_leaves_out_is_as_usual()
    {
        EveningPlan plan = EveningPlan.Read("""{"requests":[{"danceId":"d1"}],"stops":[{"atMinute":5}]}""");

        Assert.Equal(1, plan.Requests[0].People);
        Assert.Equal(15, plan.Stops[0].Minutes);
        Assert.Empty(plan.Groups);
        Assert.True(plan.MaySplit);
        Assert.Equal(EveningCurve.All[0].Id, plan.Curve);
        Assert.Equal(EveningPlan.Empty.Text(), EveningPlan.Read("").Text());
    }

    [Fact]
    public void What_a_newer_program_has_added_stays_in_it()
        => Assert.Contains("\"lanterns\":[1,2]", EveningPlan.Read("""{"lanterns":[1,2],"curve":"calm"}""").Text(), StringComparison.Ordinal);

    [Theory]
    [InlineData("""{"version":99}""")]
    [InlineData("""{"groups":7}""")]
    [InlineData("no document")]
    public void What_cannot_be_read_is_said_and_not_guessed(string text)
        => Assert.EndsWith(".", Assert.Throws<FormatException>(() => EveningPlan.Read(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void Every_decision_of_the_document_is_one_of_the_planner()
    {
        foreach (EveningPinKind kind in Enum.GetValues<EveningPinKind>())
        {
            Assert.Equal(kind.ToString(), new EveningPin { Kind = kind, DanceId = "d1", OtherId = "d2", SongKey = "s" }.ToPin().GetType().Name);
        }
    }

    [Fact]
    public void A_course_of_effort_goes_straight_from_point_to_point()
    {
        EveningCurve arch = EveningCurve.All[0];

        Assert.Equal(arch.Points[0].EffortPercent, arch.At(0));
        Assert.Equal((arch.Points[0].EffortPercent + arch.Points[1].EffortPercent) / 2, arch.At(arch.Points[1].AtPercent / 2.0));
        Assert.Equal(arch.Points[^1].EffortPercent, arch.At(100));
        Assert.Same(arch, EveningCurve.Find("a shape of next year"));
    }
}
