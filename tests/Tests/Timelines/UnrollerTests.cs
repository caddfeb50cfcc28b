using CsCheck;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;
using static Tests.Timelines.HandMade;

namespace Tests.Timelines;

public sealed class UnrollerTests
{
    [Fact]
    public void Weight_and_facing_are_carried_from_wall_to_wall()
    {
        Dance dance = QuarterDance();

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.Plain(dance));

        Assert.Equal((4, Count(32), 32), (timeline.Walls, timeline.Length, timeline.Steps.Count));
        Assert.Equal(["12:00", "3:00", "6:00", "9:00"], timeline.Stretches.Select(s => s.Facing.ToString()!));
        Assert.Equal((Facing.Front, Weight.Left), (timeline.FacingAfter, timeline.WeightAfter));
        Assert.Equal(["1", "2", "3", "4", "1", "2", "3", "4"], timeline.Steps.Take(8).Select(s => s.CountLabel));
        Assert.Equal(Enumerable.Range(0, 32).Select(Count), timeline.Steps.Select(s => s.At));
        TimedStep eighth = timeline.Steps[7];
        Assert.Equal(
            (Weight.Right, Weight.Left, Facing.Front, Facing.FromEighths(2)),
            (eighth.WeightBefore, eighth.WeightAfter, eighth.FacingBefore, eighth.FacingAfter));
    }

    [Fact]
    public void A_pick_up_is_danced_at_the_end_of_what_comes_before_it()
    {
        Dance dance = WithPickUps();

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, TrackOf(Break(1, null, new InterruptionAct.Wait(Count(2))))));

        Assert.Equal(
            ["-1/2 0& wall 1", "0 1 wall 1", "3/2 0& wall 1", "2 1 wall 1", "11/2 0& wall 2", "6 1 wall 2", "15/2 0& wall 2", "8 1 wall 2"],
            timeline.Steps.Select(s => $"{s.At} {s.CountLabel} wall {s.Wall}"));
    }

    [Fact]
    public void A_cut_leaves_out_the_next_sections_pick_up_but_not_the_dances_own()
    {
        Dance dance = WithPickUps();

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, TrackOf(Break(1, 2, new InterruptionAct.Restart()))));

        Assert.Equal(
            ["-1/2", "0", "3/2", "2", "7/2", "4"],
            timeline.Steps.Take(6).Select(s => s.At.ToString()));
        Assert.Equal([1, 1, 2, 2, 2, 2], timeline.Steps.Take(6).Select(s => s.Wall));
    }

    [Fact]
    public void After_a_bridge_the_sections_pick_up_is_danced_at_the_end_of_the_bridge()
    {
        Dance dance = WithPickUps();

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, TrackOf(Break(1, 2, new InterruptionAct.Wait(Count(4)), new InterruptionAct.GoOn()))));

        Assert.Equal(["-1/2", "0", "11/2", "6"], timeline.Steps.Take(4).Select(s => s.At.ToString()));
    }

    [Fact]
    public void A_quotation_is_taken_at_its_word()
    {
        Dance dance = WithPickUps();

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, TrackOf(Break(1, null, new InterruptionAct.Quote("", 2, Span(0, 1))))));

        TimedStep quoted = Assert.Single(timeline.Steps, s => timeline.Stretches[s.Stretch].Plan.Kind == StretchKind.Quote);
        Assert.Equal((Count(4), "1"), (quoted.At, quoted.CountLabel));
    }

    [Fact]
    public void A_cut_step_keeps_its_whole_span_and_its_part()
    {
        Dance dance = OfSections(Weight.Left, SectionOf(1, 4, On("1", Step(Foot.Right)), On("2", Touch(Foot.Left), Count(3))));

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, TrackOf(Break(1, 2, new InterruptionAct.Restart()))));

        Assert.Equal((Span(1, 4), Span(1, 2)), (timeline.Steps[1].Whole, timeline.Steps[1].Part));
        Assert.Equal((Span(3, 6), Span(3, 6)), (timeline.Steps[3].Whole, timeline.Steps[3].Part));
    }

    [Fact]
    public void Changed_counts_replace_what_is_written_and_keep_their_label()
    {
        Dance dance = QuarterDance();
        Interruption restart = Break(1, 6, new InterruptionAct.Restart()) with
        {
            Changes = [new ChangedCounts(Span(5, 6), [Move(On("2", Touch(Foot.Left)))])],
        };

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, TrackOf(restart)));

        TimedStep changed = timeline.Steps[5];
        Assert.Equal((Count(5), "2", ActionKind.Touch), (changed.At, changed.CountLabel, changed.Action.Kind));
        Assert.Same(dance.Parts[0].Sections[1], changed.Section);
        Assert.Equal((Count(6), "1"), (timeline.Steps[6].At, timeline.Steps[6].CountLabel));
        Assert.Equal(Weight.Right, timeline.Stretches[1].Weight);
    }

    [Fact]
    public void After_unknown_words_the_weight_is_found_again_and_the_facing_never()
    {
        Dance dance = OfSections(
            Weight.Left,
            SectionOf(1, 3, On("1", StepAction.Unknown), On("2", Touch(Foot.Right)), On("3", Step(Foot.Left))));

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.OneWall(dance));

        Assert.Equal([Weight.Unknown, Weight.Unknown, Weight.Left], timeline.Steps.Select(s => s.WeightAfter));
        Assert.All(timeline.Steps, s => Assert.Null(s.FacingAfter));
        Assert.Null(timeline.FacingAfter);
    }

    [Fact]
    public void A_stretch_without_actions_leaves_weight_and_facing_alone()
    {
        Dance dance = QuarterDance();

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, TrackOf(Break(1, null, new InterruptionAct.Wait(Count(2))))));

        TimedStretch wait = timeline.Stretches[1];
        Assert.Equal((Facing.FromEighths(2), Facing.FromEighths(2)), (wait.Facing, wait.FacingAfter));
        Assert.Equal((Weight.Left, Weight.Left), (wait.Weight, wait.WeightAfter));
        Assert.Equal(Span(8, 10), wait.Span);
    }

    [Fact]
    public void The_weight_is_never_nowhere() => AnyDance.Sample(dance =>
    {
        foreach (TimedStep step in Unroller.Unroll(dance, PlanBuilder.Plain(dance)).Steps)
        {
            Assert.NotEqual(Weight.Unknown, step.WeightBefore);
            Assert.NotEqual(Weight.Unknown, step.WeightAfter);
        }
    });

    [Fact]
    public void Turns_add_up_to_the_facing() => AnyDance.Sample(dance =>
    {
        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.Plain(dance));
        Turn sum = Turn.None;
        foreach (TimedStep step in timeline.Steps)
        {
            Assert.Equal(Facing.Front + sum, step.FacingBefore);
            sum += step.Action.Turn;
            Assert.Equal(Facing.Front + sum, step.FacingAfter);
        }

        Assert.Equal(Facing.Front + sum, timeline.FacingAfter ?? Facing.Front);
    });

    [Fact]
    public void An_unrolled_length_is_the_sum_of_its_parts_and_steps_are_in_order() => Gen.Select(AnyDance, Gen.Int[0, 9], Gen.Bool, (dance, after, restarts) =>
    {
        InterruptionAct last = restarts ? new InterruptionAct.Restart() : new InterruptionAct.GoOn();
        return (Dance: dance, Plan: PlanBuilder.ForTrack(dance, TrackOf(Break(1, after, new InterruptionAct.Wait(Count(2)), last))));
    }).Sample(made =>
    {
        Timeline timeline = Unroller.Unroll(made.Dance, made.Plan);
        Counts sum = Counts.Zero;
        foreach (TimedStretch stretch in timeline.Stretches)
        {
            Assert.Equal(sum, stretch.Span.Start);
            sum += stretch.Plan.Counts.Length;
            Assert.Equal(sum, stretch.Span.End);
        }

        Assert.Equal(sum, timeline.Length);
        for (int i = 1; i < timeline.Steps.Count; i++)
        {
            Assert.True(timeline.Steps[i - 1].At <= timeline.Steps[i].At);
        }
    });

    // A section of two counts twice, each with a pick-up before its count 1.
    private static Dance WithPickUps() => OfSections(
        Weight.Left,
        SectionOf(1, 2, On("0&", Step(Foot.Right)), On("1", Step(Foot.Left))),
        SectionOf(2, 2, On("0&", Step(Foot.Right)), On("1", Step(Foot.Left, turn: 4))));
}
