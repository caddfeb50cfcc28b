using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;
using static Tests.Timelines.HandMade;

namespace Tests.Timelines;

public sealed class PlanBuilderTests
{
    private static readonly Section Lamps = SectionOf(
        1,
        2,
        On("1", Step(Foot.Right, Direction.Side)),
        On("2", Step(Foot.Left, Direction.Together)));

    [Fact]
    public void One_wall_is_the_whole_part_once()
    {
        Plan plan = PlanBuilder.OneWall(QuarterDance());

        PlanStretch wall = Assert.Single(plan.Stretches);
        Assert.Equal((StretchKind.Wall, 1, Span(0, 8), true), (wall.Kind, wall.Wall, wall.Counts, wall.StartsWall));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(4, 2)]
    [InlineData(2, 4)]
    [InlineData(1, 8)]
    [InlineData(-3, 8)]
    public void A_plain_plan_repeats_until_the_floor_is_back_at_the_front(int turn, int walls)
    {
        Dance dance = OfSections(
            Weight.Left,
            SectionOf(1, 2, On("1", Step(Foot.Right, turn: turn)), On("2", Step(Foot.Left))));

        Assert.Equal(walls, PlanBuilder.Plain(dance).Walls);
    }

    [Fact]
    public void A_plain_plan_goes_on_until_the_weight_is_back_too()
    {
        Dance dance = OfSections(Weight.Left, SectionOf(1, 2, On("1", Step(Foot.Right, turn: 4)), On("2", Touch(Foot.Left))));

        // the weight is on the right after every wall, so it never comes back: the front alone decides
        Assert.Equal(2, PlanBuilder.Plain(dance).Walls);
    }

    [Fact]
    public void After_unknown_words_a_plain_plan_is_one_wall()
        => Assert.Equal(1, PlanBuilder.Plain(OfSections(Weight.Left, SectionOf(1, 2, On("1", StepAction.Unknown)))).Walls);

    [Fact]
    public void A_dance_without_parts_has_an_empty_plan()
    {
        Assert.Empty(PlanBuilder.Plain(new Dance()).Stretches);
        Assert.Empty(PlanBuilder.OneWall(new Dance()).Stretches);
        Assert.Empty(PlanBuilder.ForTrack(new Dance(), TrackOf(), withEnding: true).Stretches);
    }

    [Fact]
    public void A_tag_after_a_wall_stands_between_two_walls()
    {
        Dance dance = QuarterDance() with { Tags = [TagOf("Lamps", Lamps)] };

        Plan plan = PlanBuilder.ForTrack(dance, TrackOf(Break(2, null, new InterruptionAct.PlayTag("lamps"))));

        Assert.Equal("W1 0-8; W2 0-8; T2 0-2; W3 0-8; W4 0-8", Told(plan));
    }

    [Fact]
    public void A_bridge_inside_a_wall_is_followed_by_the_rest_of_the_wall()
    {
        Dance dance = QuarterDance() with { Tags = [TagOf("Lamps", Lamps)] };

        Plan plan = PlanBuilder.ForTrack(dance, TrackOf(Break(1, 4, new InterruptionAct.PlayTag("", 2), new InterruptionAct.GoOn())));

        Assert.StartsWith("W1 0-4; T1 0-2; T1 0-2; W1 4-8; W2 0-8", Told(plan), StringComparison.Ordinal);
        Assert.Equal([true, false, false, false, true], plan.Stretches.Take(5).Select(s => s.StartsWall));
        Assert.False(plan.Stretches[0].IsCutByRestart);
    }

    [Fact]
    public void A_restart_cuts_the_wall_and_what_is_done_before_it_comes_first()
    {
        Dance dance = QuarterDance() with { Tags = [TagOf("Lamps", Lamps)] };
        Interruption interruption = Break(
            1,
            4,
            new InterruptionAct.PlayTag("Lamps"),
            new InterruptionAct.Quote("", 2, Span(1, 3)),
            new InterruptionAct.Wait(Count(3)),
            new InterruptionAct.Dance(Lamps),
            new InterruptionAct.Restart(),
            new InterruptionAct.Wait(Count(9)));

        Plan plan = PlanBuilder.ForTrack(dance with { Interruptions = [interruption] }, null);

        Assert.StartsWith("W1 0-4; T1 0-2; Q1 1-3; P1 0-3; T1 0-2; W2 0-8", Told(plan), StringComparison.Ordinal);
        Assert.True(plan.Stretches[0].IsCutByRestart);
        Assert.All(plan.Stretches.Take(5), s => Assert.Same(interruption, s.Cause));
        Assert.Null(plan.Stretches[5].Cause);
    }

    [Fact]
    public void A_plan_goes_through_the_last_interrupted_wall_and_one_more_and_on_to_the_front()
    {
        Plan plan = PlanBuilder.ForTrack(QuarterDance(), TrackOf(Break(3, 4, new InterruptionAct.Restart())));

        // walls 1, 2 and 4 turn a quarter each; wall 3 is cut before its turn
        Assert.Equal(5, plan.Walls);
        Assert.Equal(Facing.Front, Unroller.Unroll(QuarterDance(), plan).FacingAfter);
    }

    [Fact]
    public void Interruptions_of_dance_and_track_both_happen_in_the_order_of_their_counts()
    {
        Dance dance = QuarterDance() with { Interruptions = [Break(1, 6, new InterruptionAct.Wait(Count(1)))] };

        Plan plan = PlanBuilder.ForTrack(dance, TrackOf(Break(1, 2, new InterruptionAct.Wait(Count(2)))));

        Assert.StartsWith("W1 0-2; P1 0-2; W1 2-6; P1 0-1; W1 6-8", Told(plan), StringComparison.Ordinal);
    }

    [Fact]
    public void A_phrased_dance_follows_its_sequence_and_the_tracks_own_sequence_wins()
    {
        Dance dance = Phrased();
        Track track = TrackOf() with { Sequence = [Item("B"), Item("A", upto: 1)] };

        Assert.Equal("W1A 0-2; W2B 0-4; T2 0-2; W3A 0-2", Told(PlanBuilder.Plain(dance)));
        Assert.Equal("W1B 0-4; W2A 0-1", Told(PlanBuilder.ForTrack(dance, track)));
    }

    [Fact]
    public void In_a_phrased_dance_a_wall_of_a_named_part_is_its_nth_time()
    {
        Interruption second = Break(2, 1, new InterruptionAct.Restart()) with { PartName = "a" };

        Plan plan = PlanBuilder.ForTrack(Phrased() with { Interruptions = [second] }, null);

        Assert.Equal("W1A 0-2; W2B 0-4; T2 0-2; W3A 0-1", Told(plan));
    }

    [Fact]
    public void A_track_of_known_length_takes_as_many_walls_as_fit()
    {
        // 120 beats a minute for 20 s are 40 counts; 7 of intro leave 33: four walls of eight and one count
        Track track = TrackOf() with { Tempo = new Tempo(120), LengthSeconds = 20, Intro = Count(7) };

        Assert.Equal(4, PlanBuilder.ForTrack(QuarterDance(), track).Walls);
        Assert.Equal(2, PlanBuilder.ForTrack(QuarterDance() with { BeatsPerCount = 2, Interruptions = [] }, track with { Intro = Count(0) }).Walls);
        Assert.Equal(3, PlanBuilder.ForTrack(QuarterDance(), track with { Intro = null, IntroSeconds = 8 }).Walls);
    }

    [Fact]
    public void The_ending_takes_a_wall_of_its_own_when_it_fits_and_the_last_one_when_not()
    {
        Dance dance = QuarterDance() with { Ending = EndingOf(Lamps, after: 4) };
        Track fits = TrackOf() with { Tempo = new Tempo(120), LengthSeconds = 11, Intro = Counts.Zero };
        Track doesNot = fits with { LengthSeconds = 10 };

        Assert.Equal("W1 0-8; W2 0-8; W3 0-4; E3 0-2", Told(PlanBuilder.ForTrack(dance, fits, withEnding: true)));
        Assert.Equal("W1 0-8; W2 0-4; E2 0-2", Told(PlanBuilder.ForTrack(dance, doesNot, withEnding: true)));
        Assert.Equal("W1 0-8; W2 0-8", Told(PlanBuilder.ForTrack(dance, doesNot)));
    }

    [Fact]
    public void Without_a_length_the_ending_stands_in_its_stated_wall_or_in_the_last()
    {
        Dance dance = QuarterDance();

        Assert.EndsWith("W2 0-8; W3 0-4; E3 0-2", Told(PlanBuilder.ForTrack(dance with { Ending = EndingOf(Lamps, 4, wall: 3) }, null, true)), StringComparison.Ordinal);
        Assert.EndsWith("W4 0-8; E4 0-2", Told(PlanBuilder.ForTrack(dance with { Ending = EndingOf(Lamps) }, TrackOf(Break(1, null)), true)), StringComparison.Ordinal);
    }

    [Fact]
    public void An_ending_whose_wall_faces_a_stated_wall_waits_for_it()
    {
        Ending ending = EndingOf(Lamps, 4) with { WallFacing = Facing.FromEighths(4) };

        Plan plan = PlanBuilder.ForTrack(QuarterDance() with { Ending = ending }, TrackOf(Break(1, null)), true);

        // walls begin at 12:00, 3:00, 6:00, 9:00, 12:00, 3:00, 6:00
        Assert.Equal(7, plan.Walls);

        // no wall ever begins at 1:30: the plan stays as long as it was
        Ending never = ending with { WallFacing = Facing.FromEighths(1) };
        Assert.Equal(4, PlanBuilder.ForTrack(QuarterDance() with { Ending = never }, TrackOf(Break(1, null)), true).Walls);
    }

    [Fact]
    public void Slips_of_the_pen_make_no_endless_plan()
    {
        Dance dance = QuarterDance() with { Tags = [TagOf("Lamps", Lamps)] };
        Track track = TrackOf(
            Break(2_000_000_000, null, new InterruptionAct.Restart()),
            Break(1, 2_000_000_000, new InterruptionAct.PlayTag("Lamps", int.MaxValue), new InterruptionAct.Wait(Count(int.MaxValue))),
            Break(2, 0, new InterruptionAct.Restart()),
            Break(3, -5, new InterruptionAct.PlayTag("nowhere"), new InterruptionAct.Quote("", 7, Span(0, 4))));

        Plan plan = PlanBuilder.ForTrack(dance, track);

        Assert.InRange(plan.Walls, 4, 401);
        Assert.InRange(plan.Stretches.Count, 4, 1000);
    }

    [Fact]
    public void A_very_long_text_stays_affordable()
    {
        WrittenStep[] steps = [.. Enumerable.Range(1, 8).Select(i => On(i.ToString(System.Globalization.CultureInfo.InvariantCulture), Step((Foot)(i % 2), turn: i == 8 ? 1 : 0)))];
        Section section = SectionOf(1, 8, steps);
        Dance dance = OfSections(Weight.Left, [.. Enumerable.Repeat(section, 10_001)]);

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, TrackOf(Break(300, 4, new InterruptionAct.Restart()))));

        // 80008 actions a wall: the plan stops growing when it holds more than anyone could dance
        Assert.Equal(5, timeline.Walls);
        Assert.Equal(5 * 80_008, timeline.Steps.Count);
    }

    private static Dance Phrased() => new()
    {
        Start = Weight.Left,
        Parts =
        [
            new Part("A", [SectionOf(1, 2, On("1", Step(Foot.Right)), On("2", Step(Foot.Left)))], Nowhere),
            new Part("B", [SectionOf(1, 4, On("1", Step(Foot.Right)), On("2", Step(Foot.Left)))], Nowhere),
        ],
        Tags = [TagOf("Lamps", Lamps)],
        Sequence = [Item("A"), Item("b"), new SequenceItem("Lamps", true, null, Nowhere), Item("A")],
    };

    private static SequenceItem Item(string name, int? upto = null) => new(name, false, upto is { } counts ? Count(counts) : null, Nowhere);

    // "W2 0-4" is counts 0 to 4 danced in wall 2; T tag, Q quotation, P wait, E ending.
    private static string Told(Plan plan) => string.Join("; ", plan.Stretches.Select(s =>
    {
        char letter = s.Kind switch
        {
            StretchKind.Wall => 'W',
            StretchKind.Tag => 'T',
            StretchKind.Quote => 'Q',
            StretchKind.Wait => 'P',
            _ => 'E',
        };
        string name = s.Kind == StretchKind.Wall ? s.Name : "";
        return $"{letter}{s.Wall}{name} {s.Counts.Start}-{s.Counts.End}";
    }));
}
