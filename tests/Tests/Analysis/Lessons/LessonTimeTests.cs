using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Dances;

namespace Tests.Analysis.Lessons;

/// <summary>
/// How long teaching takes against common practice: a 32-count beginner dance 10 to 20 minutes with two runs, a 64-count intermediate one 20 to 40
/// (trade: teaching, 1, from memory).
/// </summary>
public sealed class LessonTimeTests
{
    [Fact]
    public void A_beginner_dance_of_32_counts_takes_10_to_20_minutes()
    {
        DanceAnalysis[] dances =
        [
            .. LessonSamples.AllOfClub.Where(a => a.Dance.ClaimedLevel == Level.Beginner && a.Dance.Length.Value == 32),
            .. LessonSamples.Beginner(),
        ];

        Assert.True(dances.Length >= 20, $"Only {dances.Length} dances.");
        Assert.All(dances, a => Assert.InRange(a.Lesson().UsualSeconds, 10 * 60, 20 * 60));
    }

    [Fact]
    public void An_intermediate_dance_of_64_counts_takes_20_to_40_minutes()
    {
        DanceAnalysis[] dances =
        [
            .. LessonSamples.AllOfClub.Where(a => a.Dance.ClaimedLevel == Level.Intermediate && a.Dance.Length.Value == 64),
            .. LessonSamples.Intermediate(),
        ];

        Assert.True(dances.Length >= 20, $"Only {dances.Length} dances.");
        Assert.All(dances, a => Assert.InRange(a.Lesson().UsualSeconds, 20 * 60, 40 * 60));
    }

    [Fact]
    public void The_written_dances_are_read_whole()
        => Assert.All(LessonSamples.Beginner().Concat(LessonSamples.Intermediate()), a => Assert.DoesNotContain(
            a.Draft.Report.Complaints,
            c => c.Severity >= Scuff.Diagnostics.Severity.Question));

    [Fact]
    public void The_usual_lesson_has_two_runs_to_the_music()
        => Assert.All(LessonSamples.AllOfClub, a => Assert.Equal(
            [LessonStepKind.EveryStep, LessonStepKind.Headings],
            a.Lesson().Steps.Select(s => s.Kind).Where(k => k is LessonStepKind.EveryStep or LessonStepKind.Headings or LessonStepKind.Warnings or LessonStepKind.Silent)));

    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void The_steps_add_up_to_the_lesson_exactly(string name)
    {
        DanceAnalysis analysis = LessonSamples.Club(name);
        foreach (int? minutes in (int?[])[null, 1, 2, 3, 5, 8, 10, 12, 15, 20, 25, 30, 45, 60, 90, 600])
        {
            LessonPlan plan = analysis.Lesson(new LessonOptions { Minutes = minutes });
            int at = 0;
            foreach (LessonStep step in plan.Steps)
            {
                Assert.Equal(at, step.Start);
                Assert.True(step.Seconds > 0, $"{step.Id} takes no time.");
                at += step.Seconds;
            }

            Assert.Equal(plan.Seconds, at);
            Assert.True(minutes is null || plan.Seconds == minutes * 60, $"{minutes} minutes became {plan.Seconds / 60.0}.");
        }
    }

    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void More_time_never_teaches_less_and_never_repeats_less_in_all(string name)
    {
        DanceAnalysis analysis = LessonSamples.Club(name);
        int taught = 0;
        bool isWhole = false;
        for (int minutes = 1; minutes <= 60; minutes++)
        {
            LessonPlan plan = analysis.Lesson(new LessonOptions { Minutes = minutes, HasWarmUp = false });

            Assert.True(plan.Taught >= taught, $"{minutes} minutes teach {plan.Taught} chunks, a minute less {taught}.");
            Assert.True(plan.IsWhole || !isWhole, $"{minutes} minutes are no longer enough.");
            (taught, isWhole) = (plan.Taught, plan.IsWhole);
        }

        Assert.True(isWhole);
    }

    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void What_is_never_left_out_is_there_whenever_the_whole_dance_is_taught(string name)
    {
        DanceAnalysis analysis = LessonSamples.Club(name);
        HashSet<string> needed = [.. analysis.Lesson().Steps.Where(s => s.IsNeeded).Select(s => s.Id)];
        for (int minutes = 1; minutes <= 40; minutes++)
        {
            LessonPlan plan = analysis.Lesson(new LessonOptions { Minutes = minutes });
            bool fits = minutes * 60 >= plan.LeastSeconds;

            Assert.Equal(fits, plan.IsWhole);
            Assert.Equal(!fits, plan.Notes.Any(n => n.Kind == LessonNoteKind.TooShort));
            if (fits)
            {
                Assert.Subset(new HashSet<string>(plan.Steps.Select(s => s.Id), StringComparer.Ordinal), needed);
            }
        }
    }

    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void What_there_is_no_time_for_is_named(string name)
    {
        DanceAnalysis analysis = LessonSamples.Club(name);
        string[] usual = [.. analysis.Lesson(new LessonOptions { Order = LessonOrder.Forward }).Steps.Select(s => s.Id)];
        foreach (int minutes in (int[])[1, 3, 6, 9, 12, 18, 24])
        {
            LessonPlan plan = analysis.Lesson(new LessonOptions { Minutes = minutes, Order = LessonOrder.Forward });

            Assert.Equal(
                usual.Order(StringComparer.Ordinal),
                plan.Steps.Where(s => s.Usual > 0).Concat(plan.LeftOut).Select(s => s.Id).Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Ten_hours_are_filled_and_what_is_left_over_is_said()
    {
        LessonPlan plan = LessonSamples.Club("tin-lantern").Lesson(new LessonOptions { Minutes = 600 });

        Assert.Contains(plan.Notes, n => n.Kind == LessonNoteKind.LeftOver && n.Number > 500);
        Assert.Equal(LessonStepKind.Spare, plan.Steps.Single(s => s.LeaveOut == 1).Kind);
        Assert.Contains(plan.Steps, s => s.Kind == LessonStepKind.Silent);
    }

    [Fact]
    public void One_minute_names_the_dance_and_no_more()
    {
        LessonPlan plan = LessonSamples.Club("lighthouse-keeper").Lesson(new LessonOptions { Minutes = 1 });

        Assert.Equal(0, plan.Taught);
        Assert.Contains(plan.Steps, s => s.Kind == LessonStepKind.Name);
        Assert.Equal(60, plan.Steps.Sum(s => s.Seconds));
    }
}
