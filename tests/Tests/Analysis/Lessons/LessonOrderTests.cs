using Scuff;
using Scuff.Analysis;
using Scuff.Analysis.Cautions;
using Scuff.Analysis.Lessons;
using Scuff.Dances;
using Scuff.Stance;

namespace Tests.Analysis.Lessons;

/// <summary>The order of a lesson and what belongs into it (trade: teaching, 1).</summary>
public sealed class LessonOrderTests
{
    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void Steps_come_as_dances_are_usually_taught(string name)
    {
        foreach (LessonOrder order in Enum.GetValues<LessonOrder>())
        {
            LessonPlan plan = LessonSamples.Club(name).Lesson(new LessonOptions { Minutes = 90, Order = order, Class = Level.AbsoluteBeginner });
            List<LessonStep> steps = [.. plan.Steps];
            int At(LessonStepKind kind) => steps.FindIndex(s => s.Kind == kind);

            Assert.Equal(steps.Count, steps.Select(s => s.Id).Distinct().Count());
            Assert.Equal(LessonStepKind.WarmUp, steps[0].Kind);
            Assert.Equal(LessonStepKind.CoolDown, steps[^1].Kind);
            Assert.True(At(LessonStepKind.Name) < At(LessonStepKind.Listen));
            Assert.All(steps.Where(s => s.Kind == LessonStepKind.Figure && s.Figure!.Chunk > 0), f
                => Assert.True(steps.IndexOf(f) < steps.FindIndex(s => s.Id == "chunk-" + f.Figure!.Chunk), f.Id));
            Assert.All(steps.Where(s => s.Kind == LessonStepKind.Join), j =>
            {
                // everything in it has been walked before
                for (int chunk = j.From; chunk <= j.To; chunk++)
                {
                    Assert.True(steps.FindIndex(s => s.Id == "chunk-" + chunk) < steps.IndexOf(j), $"{j.Id} joins {chunk} before it is known");
                }

                Assert.True(j.From < j.To);
            });
            Assert.True(steps.FindLastIndex(s => s.Kind == LessonStepKind.Chunk) < At(LessonStepKind.Whole));
            Assert.All(steps.Where(s => s.Kind is LessonStepKind.SecondWall or LessonStepKind.Break or LessonStepKind.Tag), s
                => Assert.InRange(steps.IndexOf(s), At(LessonStepKind.Whole) + 1, At(LessonStepKind.Rung) - 1));
            Assert.Equal(
                [LessonStepKind.EveryStep, LessonStepKind.Headings, LessonStepKind.Warnings, LessonStepKind.Silent],
                steps.Select(s => s.Kind).Where(k => k is >= LessonStepKind.EveryStep and <= LessonStepKind.Silent));
            Assert.True(At(LessonStepKind.Rung) < At(LessonStepKind.EveryStep));
            Assert.All(steps.Where(s => s.Kind == LessonStepKind.Rung), s => Assert.InRange(s.Percent, LessonLimits.SlowestPercent, 90));
        }
    }

    [Fact]
    public void The_second_wall_is_walked_where_there_is_one()
    {
        Assert.All(LessonSamples.AllOfClub, a => Assert.Equal(
            a.Dance.IsPhrased ? a.Lesson().SecondWall is not null : a.Walls > 1,
            a.Lesson().Steps.Any(s => s.Kind == LessonStepKind.SecondWall)));
        Assert.Equal(Facing.FromEighths(6), LessonSamples.Club("tin-lantern").Lesson().SecondWall);
    }

    [Fact]
    public void Tags_and_restarts_are_walked_on_their_own_wall()
    {
        LessonPlan plan = LessonSamples.Club("tin-lantern").Lesson();

        Assert.Equal(
            [(LessonBreakKind.Tag, 2, 32), (LessonBreakKind.Restart, 4, 16), (LessonBreakKind.Bridge, 5, 8), (LessonBreakKind.Tag, 7, 24)],
            plan.Breaks.Select(b => (b.Kind, b.Walls[0], b.After.Value.Floor)));

        // each wall starts a quarter to the left of the last, the third again from the second
        Assert.Equal(Facing.FromEighths(6), plan.Breaks[0].Facing);
        Assert.All(plan.Breaks, b => Assert.Contains(plan.Steps, s => s.Kind == LessonStepKind.Break && s.Break == b));
        Assert.Single(plan.Steps, s => s.Kind == LessonStepKind.Tag);
        Assert.True(plan.Breaks[1].IsChanged);
    }

    [Fact]
    public void One_break_on_several_walls_is_walked_once_and_names_them()
    {
        LessonPlan plan = LessonSamples.Club("lantern-twist").Lesson();

        Assert.Equal([1, 2, 4], plan.Breaks.Single(b => b.Walls.Count > 1).Walls);
        Assert.Equal(plan.Breaks.Count, plan.Steps.Count(s => s.Kind == LessonStepKind.Break));
    }

    [Fact]
    public void Another_track_has_its_own_breaks()
    {
        DanceAnalysis dance = LessonSamples.Club("lighthouse-keeper");

        Assert.Equal([LessonBreakKind.Tag, LessonBreakKind.Bridge], dance.Lesson(new LessonOptions { Track = "every nine seconds" }).Breaks.Select(b => b.Kind));
        Assert.Empty(dance.Lesson(new LessonOptions { Track = "Salt on the Glass" }).Breaks);
        Assert.Contains(dance.Lesson(new LessonOptions { Track = "No Such Song" }).Notes, n => n.Kind == LessonNoteKind.OtherTrack);
    }

    [Fact]
    public void A_hard_ending_is_learned_first_and_why_is_said()
    {
        const string Ending = """
            Late Gale

            level: improver
            counts: 32
            start: weight on L

            section 1
            1-4   vine right, touch L
            5-8   vine left, touch R

            section 2
            1-4   rocking chair R
            5-8   jazz box R

            section 3
            1-4   vine right, touch L
            5-8   vine left, touch R

            section 4
            1&2   shuffle R turning 1/2 left
            3&4   shuffle L turning 1/2 left
            5&6   shuffle R turning 1/2 left
            7&8   shuffle L turning 1/2 left

            track: "Gale" by The Makers, 116 bpm, intro 16
            """;
        LessonPlan plan = LessonSamples.Read(Ending).Lesson();

        Assert.Equal(LessonOrder.Backward, plan.Order);
        Assert.True(plan.EndingPoints * 10 >= plan.OtherPoints * LessonLimits.HardEndingTenths);
        Assert.Equal(plan.Chunks.Select(c => c.Number).Reverse(), plan.Steps.Where(s => s.Kind == LessonStepKind.Chunk).Select(s => s.Chunk!.Number));
        Assert.All(plan.Steps.Where(s => s.Kind == LessonStepKind.Join), j => Assert.Equal(plan.Chunks.Count, j.To));
        Assert.Equal(LessonOrder.Forward, LessonSamples.Read(Ending).Lesson(new LessonOptions { Order = LessonOrder.Forward }).Order);
    }

    [Fact]
    public void What_the_class_knows_is_not_new()
    {
        DanceAnalysis dance = LessonSamples.Club("lighthouse-keeper");
        LessonPlan strangers = dance.Lesson(new LessonOptions { Class = Level.Beginner });
        LessonPlan friends = dance.Lesson(new LessonOptions { Class = Level.Beginner, Known = LessonOptions.FiguresOf([dance]) });

        Assert.NotEmpty(strangers.NewFigures);
        Assert.Empty(friends.NewFigures);
        Assert.True(friends.UsualSeconds < strangers.UsualSeconds);
        Assert.Contains(strangers.Notes, n => n.Kind == LessonNoteKind.ManyNew);
        Assert.Contains(strangers.Notes, n => n.Kind == LessonNoteKind.AboveClass);
    }

    [Fact]
    public void Who_has_danced_one_dance_only_knows_its_figures_and_those_of_the_levels_below()
    {
        DanceAnalysis dance = LessonSamples.Club("tin-lantern");
        DanceAnalysis other = LessonSamples.Club("customs-house");
        LessonPlan plan = dance.Lesson(new LessonOptions { Class = Level.Beginner, Known = LessonOptions.FiguresOf([other]) });
        ValueList<string> known = LessonOptions.FiguresOf([other]);

        Assert.NotEmpty(plan.NewFigures);
        Assert.All(plan.NewFigures, f => Assert.DoesNotContain(f.Definition.Id, known));
    }

    [Theory]
    [InlineData(100, 89, null)]
    [InlineData(80, 71, LessonNoteKind.TooSlow)]
    [InlineData(115, 0, LessonNoteKind.NotSlower)]
    public void Practice_music_is_a_rung_of_its_own(int tempo, int percent, LessonNoteKind? note)
    {
        LessonPlan plan = LessonSamples.Club("tin-lantern").Lesson(new LessonOptions { PracticeTempo = tempo });
        LessonStep? rung = plan.Steps.FirstOrDefault(s => s.IsOtherMusic);

        Assert.Equal(percent, rung?.Percent ?? 0);
        Assert.Equal(note, plan.Notes.Select(n => (LessonNoteKind?)n.Kind).FirstOrDefault(k => k is LessonNoteKind.TooSlow or LessonNoteKind.NotSlower));
    }

    [Fact]
    public void Knees_and_beginners_are_offered_what_the_dance_has_first()
    {
        LessonPlan plan = LessonSamples.Club("capstan-stomp").Lesson(new LessonOptions { ForKnees = true });

        Assert.Contains(plan.Offers, o => o is { Kind: LessonOfferKind.Own, ForKnees: true, Option.Name: "no jump" });
        Assert.Contains(plan.Offers, o => o.Kind is LessonOfferKind.SmallSwivel or LessonOfferKind.StepForJump or LessonOfferKind.SoftStomp);
        Assert.Empty(LessonSamples.Club("capstan-stomp").Lesson().Offers);
        Assert.Contains(
            LessonSamples.Club("lighthouse-keeper").Lesson(new LessonOptions { ForBeginners = true }).Offers,
            o => o.Option?.Name == "no turn");
        Assert.Contains(plan.Cautions, c => c.Kind == CautionKind.Jumps);
    }

    [Fact]
    public void Every_reason_is_itemised_and_they_add_up()
        => Assert.All(LessonSamples.AllOfClub.SelectMany(a => a.Lesson().Chunks), c =>
        {
            Assert.Equal(c.Points, c.Reasons.Sum(r => r.Points));
            Assert.Equal(c.Reasons.Count, c.Reasons.Select(r => r.Kind).Distinct().Count());
            Assert.All(c.Reasons, r => Assert.True(r.Number.Sign > 0));
        });

    [Fact]
    public void A_harder_chunk_is_repeated_at_least_as_often()
        => Assert.All(LessonSamples.AllOfClub, a =>
        {
            LessonStep[] chunks = [.. a.Lesson().Steps.Where(s => s.Kind == LessonStepKind.Chunk).OrderBy(s => s.Chunk!.Points)];
            Assert.Equal(chunks.Select(s => s.Usual).Order(), chunks.Select(s => s.Usual));
        });

    [Fact]
    public void When_late_everything_but_what_is_needed_has_its_turn()
        => Assert.All(LessonSamples.AllOfClub, a =>
        {
            LessonPlan plan = a.Lesson(new LessonOptions { Minutes = 120 });
            int[] turns = [.. plan.Steps.Select(s => s.LeaveOut).OfType<int>().Order()];
            Assert.Equal(turns.Length, turns.Distinct().Count());
            Assert.All(plan.Steps, s => Assert.Equal(s.IsNeeded, s.LeaveOut is null));
        });
}
