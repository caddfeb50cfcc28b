using Scuff.Analysis.Floor;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using static Tests.Timelines.HandMade;

namespace Tests.Analysis.Floor;

public sealed class FloorSimulatorTests
{
    private static readonly DancerSize Size = DancerSize.Default;

    public static TheoryData<Direction, double, double> Targets => new()
    {
        // for the right foot, from the left one, in parts of the height: to the right, forward
        { Direction.Forward, 0.08, 0.275 },
        { Direction.Back, 0.08, -0.275 },
        { Direction.Side, 0.225, 0 },
        { Direction.Right, 0.225, 0 },
        { Direction.Together, 0.08, 0 },
        { Direction.CrossFront, -0.07, 0.13 },
        { Direction.CrossBehind, -0.07, -0.13 },
        { Direction.LockFront, -0.06, 0.08 },
        { Direction.LockBehind, -0.06, -0.08 },
        { Direction.Out, 0.1525, 0 },
        { Direction.InPlace, 0.08, 0 },
    };

    [Theory]
    [MemberData(nameof(Targets))]
    public void A_step_lands_where_its_direction_says(Direction direction, double right, double forward)
    {
        FloorPoint way = Danced(Weight.Left, Step(Foot.Right, direction)).WayBetweenFeet();

        Assert.Equal(right * Size.Height, way.X, 9);
        Assert.Equal(forward * Size.Height, way.Y, 9);
    }

    [Theory]
    [MemberData(nameof(Targets))]
    public void After_a_turn_the_direction_is_that_of_the_new_facing(Direction direction, double right, double forward)
    {
        FloorPoint way = Danced(Weight.Left, Step(Foot.Right, direction, turn: 2)).WayBetweenFeet();

        // forward is now 3:00, the dancer's right is 6:00
        Assert.Equal(forward * Size.Height, way.X, 9);
        Assert.Equal(-right * Size.Height, way.Y, 9);
    }

    [Theory]
    [InlineData(Direction.CrossFront, 1)]
    [InlineData(Direction.CrossBehind, -1)]
    public void A_jump_lands_crossed_with_the_foot_in_front_that_it_says(Direction direction, int sign)
    {
        StepAction jump = new(ActionKind.Jump, ActingFoot.Both, direction, Contact.Ball, WeightEffect.Shares);
        FloorPoint way = Danced(Weight.Shared, jump).WayBetweenFeet();
        FloorPoint mirrored = Danced(Weight.Shared, jump.Mirrored()).WayBetweenFeet();

        Assert.Equal(-0.07 * Size.Height, way.X, 9);
        Assert.Equal(sign * 0.13 * Size.Height, way.Y, 9);
        Assert.Equal(way.X, mirrored.X, 9);
        Assert.Equal(-way.Y, mirrored.Y, 9);
    }

    [Theory]
    [InlineData(StepSize.Small, 0.165)]
    [InlineData(StepSize.Usual, 0.275)]
    [InlineData(StepSize.Large, 0.375)]
    public void Small_and_large_steps_go_less_and_more_far(StepSize size, double length)
        => Assert.Equal(length * Size.Height, Danced(Weight.Left, Step(Foot.Right) with { Size = size }).WayBetweenFeet().Y, 9);

    [Fact]
    public void A_step_between_two_counts_is_small()
    {
        FloorPath path = Simulated(OfSections(Weight.Left, SectionOf(1, 2, On("1&", Step(Foot.Right)), On("2", Touch(Foot.Left)))), walls: 1);

        Assert.Equal(0.125 * Size.Height, path.Keys[0].Right.Y - path.Keys[0].Left.Y, 9);
    }

    [Fact]
    public void A_taller_dancer_goes_further_in_proportion()
    {
        Timeline timeline = Timeline(OfSections(Weight.Left, SectionOf(1, 1, On("1", Step(Foot.Right)))));

        double small = FloorSimulator.Simulate(timeline, new DancerSize(1.5)).Keys[0].Right.Y;
        double tall = FloorSimulator.Simulate(timeline, new DancerSize(1.8)).Keys[0].Right.Y;

        Assert.Equal(1.2, tall / small, 9);
    }

    [Fact]
    public void The_standing_foot_turns_on_its_ball_and_the_free_one_is_carried_round()
    {
        FloorKey before = Danced(Weight.Left, Step(Foot.Right, Direction.Side), Touch(Foot.Left, Direction.Side)).End();
        FloorKey after = Danced(
            Weight.Left,
            Step(Foot.Right, Direction.Side),
            Touch(Foot.Left, Direction.Side),
            StepAction.Hold with { Kind = ActionKind.Turn, Turn = Turn.FromEighths(4) }).End();

        AssertSame(before.Right.Place, after.Right.Place);
        Assert.Equal(before.Right.Angle + 180, after.Right.Angle, 9);
        AssertSame(before.Right.Place - (before.Left.Place - before.Right.Place), after.Left.Place);
        Assert.Equal(before.Left.Angle + 180, after.Left.Angle, 9);
    }

    [Fact]
    public void In_a_step_turn_both_feet_stay_and_the_weight_goes_to_the_one_that_is_now_in_front()
    {
        StepAction pivot = new(ActionKind.Recover, ActingFoot.Left, Direction.InPlace, Contact.Ball, WeightEffect.Takes, Turn.FromEighths(-4));
        FloorPath path = Danced(Weight.Left, Step(Foot.Right), pivot);

        AssertSame(path.Keys[0].Left.Place, path.Keys[1].Left.Place);
        AssertSame(path.Keys[0].Right.Place, path.Keys[1].Right.Place);
        Assert.Equal((-180.0, Weight.Left), (path.Keys[1].Facing, path.Keys[1].Weight));
    }

    [Fact]
    public void A_step_home_undoes_a_heel_and_a_v_step()
    {
        StepAction heel = new(ActionKind.Dig, ActingFoot.Right, Direction.Forward, Contact.Heel, WeightEffect.Keeps);
        FloorPath heels = Danced(Weight.Left, heel, Step(Foot.Right, Direction.Home));
        FloorPath open = Danced(
            Weight.Left,
            Step(Foot.Right, Direction.DiagonalForward),
            Step(Foot.Left, Direction.DiagonalForward),
            Step(Foot.Right, Direction.Home),
            Step(Foot.Left, Direction.Together));

        AssertSame(heels.Start.Right.Place, heels.Keys[1].Right.Place);
        Assert.Equal(open.Keys[1].Left.Y, open.Keys[1].Right.Y, 9);
        Assert.Equal(0.225 * Size.Height, open.Keys[1].Right.X - open.Keys[1].Left.X, 9);
        AssertSame(open.Start.Right.Place, open.Keys[3].Right.Place);
        AssertSame(open.Start.Left.Place, open.Keys[3].Left.Place);
    }

    [Fact]
    public void Skating_goes_on_where_a_v_step_comes_level()
    {
        FloorPath skate = Danced(Weight.Left, Step(Foot.Right, Direction.DiagonalForward), Step(Foot.Left, Direction.DiagonalForward));

        Assert.True(skate.Keys[1].Left.Y > skate.Keys[1].Right.Y + 0.2);
    }

    [Fact]
    public void Heels_then_toes_travel_and_a_toe_fan_comes_back()
    {
        StepAction heels = new(ActionKind.SwivelHeels, ActingFoot.Both, Direction.Right, Contact.Ball, WeightEffect.Shares);
        StepAction toes = heels with { Kind = ActionKind.SwivelToes, Contact = Contact.Heel };
        FloorPath swivels = Danced(Weight.Left, heels, toes, heels, toes with { Direction = Direction.Centre });
        StepAction fan = new(ActionKind.FanToe, ActingFoot.Right, Direction.Out, Contact.Heel, WeightEffect.Keeps);
        FloorPath fans = Danced(Weight.Left, fan, fan with { Direction = Direction.In });

        Assert.Equal(swivels.Start.Left.Angle - 30, swivels.Keys[0].Left.Angle, 9);
        Assert.Equal(swivels.Start.Left.Angle + 30, swivels.Keys[1].Left.Angle, 9);
        Assert.True(swivels.Keys[3].Left.X > swivels.Start.Left.X + 0.05);
        AssertSame(fans.Start.Right.Heel(Size), fans.Keys[0].Right.Heel(Size));
        Assert.Equal(fans.Start.Right.Angle + 30, fans.Keys[0].Right.Angle, 9);
        AssertSame(fans.Start.Right.Place, fans.Keys[1].Right.Place);
    }

    [Theory]
    [InlineData(ActionKind.Kick, 0.12)]
    [InlineData(ActionKind.Hook, 0.18)]
    [InlineData(ActionKind.Hitch, 0.24)]
    public void A_foot_in_the_air_has_its_height_and_a_step_sets_it_down(ActionKind kind, double height)
    {
        StepAction lifted = new(kind, ActingFoot.Right, Direction.Unstated, Contact.Air, WeightEffect.Keeps);
        FloorPath path = Danced(Weight.Left, lifted, Step(Foot.Right, Direction.Together));

        Assert.Equal((Contact.Air, height * Size.Height), (path.Keys[0].Right.Contact, path.Keys[0].Right.Height));
        Assert.Equal((Contact.Flat, 0.0), (path.Keys[1].Right.Contact, path.Keys[1].Right.Height));
    }

    [Fact]
    public void After_unknown_words_nothing_moves_and_the_place_is_only_a_guess()
    {
        FloorPath path = Danced(Weight.Left, Step(Foot.Right), StepAction.Unknown, Step(Foot.Left));

        Assert.Equal([true, false, false], path.Keys.Select(k => k.IsCertain));
        Assert.Equal(path.Keys[0].Right, path.Keys[1].Right);
    }

    [Fact]
    public void Every_wall_is_danced_from_the_stance_in_which_the_one_before_ends()
    {
        Dance dance = OfSections(Weight.Left, SectionOf(1, 2, On("1", Step(Foot.Right)), On("2", Step(Foot.Left, turn: 2))));
        FloorPath path = FloorSimulator.Simulate(Unroller.Unroll(dance, PlanBuilder.Plain(dance)), Size);

        Assert.Equal(8, path.Keys.Count);
        AssertSame(path.Start.WayBetweenFeet().Turned(90), path.Keys[1].WayBetweenFeet());
        AssertSame(default, path.Start.Body);
    }

    [Fact]
    public void Who_turned_the_toes_on_the_heels_stands_flat_when_the_other_foot_acts()
    {
        StepAction toes = new(ActionKind.SwivelToes, ActingFoot.Both, Direction.Right, Contact.Heel, WeightEffect.ToLeft);
        FloorPath path = Danced(Weight.Left, toes, StepAction.Hold, Touch(Foot.Right));

        Assert.Equal([Contact.Heel, Contact.Heel, Contact.Flat], path.Keys.Select(k => k.Left.Contact));
    }

    [Fact]
    public void The_extent_is_measured_from_the_start()
    {
        FloorPath path = Danced(
            Weight.Left,
            Step(Foot.Right, Direction.Side),
            Step(Foot.Left, Direction.Together),
            Step(Foot.Right, Direction.Side),
            Step(Foot.Left, Direction.Together));

        // the hips start nearer the standing left foot; the left foot follows to 0.08 from the right one
        FloorExtent extent = path.Extent;
        Assert.Equal(path.Keys[3].Right.X, extent.Right, 9);
        Assert.Equal(-path.Start.Left.X, extent.Left, 9);
        Assert.Equal((0.0, 0.0), (Math.Round(extent.Forward, 9), Math.Round(extent.Back, 9)));
        Assert.Equal(((0.225 - 0.08 + 0.225) * Size.Height) - extent.Left, extent.Right, 9);
    }

    [Fact]
    public void An_empty_timeline_is_a_dancer_who_stands()
    {
        FloorPath path = FloorSimulator.Simulate(Unroller.Unroll(new Dance(), PlanBuilder.Plain(new Dance())), Size);

        Assert.Empty(path.Keys);
        Assert.Equal(0.08 * Size.Height, path.At(Foot.Right, 3.5).X - path.At(Foot.Left, 3.5).X, 9);
    }

    private static Timeline Timeline(Dance dance) => Unroller.Unroll(dance, PlanBuilder.OneWall(dance));

    private static FloorPath Simulated(Dance dance, int walls)
    {
        Assert.Equal(1, walls);
        return FloorSimulator.Simulate(Timeline(dance), Size);
    }

    // A wall whose weight does not come back is not settled: the feet start together.
    private static FloorPath Danced(Weight start, params StepAction[] actions)
    {
        WrittenStep[] steps = [.. actions.Select((a, i) => On((i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), a))];
        Dance dance = OfSections(start, SectionOf(1, actions.Length + 1, steps));
        Timeline timeline = Timeline(dance);
        Plan cut = new(
            [timeline.Stretches[0].Plan with { Counts = Span(0, actions.Length) }],
            1,
            "");
        return FloorSimulator.Simulate(Unroller.Unroll(dance, cut), Size);
    }

    private static void AssertSame(FloorPoint expected, FloorPoint actual)
    {
        Assert.Equal(expected.X, actual.X, 9);
        Assert.Equal(expected.Y, actual.Y, 9);
    }
}
