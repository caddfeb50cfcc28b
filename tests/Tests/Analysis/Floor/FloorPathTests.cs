using CsCheck;
using Scuff.Analysis.Floor;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;
using static Tests.Timelines.HandMade;

namespace Tests.Analysis.Floor;

public sealed class FloorPathTests
{
    private const double Tick = 1.0 / 32;

    private static readonly DancerSize Size = DancerSize.Default;

    // Danceable walls: the free foot acts, and the first action sets it down beside the other.
    private static readonly Gen<Dance> Danceable = Gen.Select(
        Gen.Select(Gen.Int[0, 9], Gen.Int[-2, 2], Gen.Enum<Direction>()).Array[2, 12],
        Gen.Int[1, 7],
        (moves, lastTurn) => ToDance(moves, lastTurn));

    public static TheoryData<string> StepIds => [.. StepCatalogue.Default.Definitions.Select(d => d.Id)];

    [Fact]
    public void After_all_walls_the_dancer_is_back_on_the_spot_when_a_wall_turns() => Danceable.Sample(dance =>
    {
        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.Plain(dance));
        FloorPath path = FloorSimulator.Simulate(timeline, Size);
        FloorKey end = path.End();

        Assert.True(timeline.Walls > 1);
        Assert.Equal(0, end.Body.X, 6);
        Assert.Equal(0, end.Body.Y, 6);
        Assert.Equal(path.Start.Left.X, end.Left.X, 6);
        Assert.Equal(path.Start.Right.Y, end.Right.Y, 6);
        Assert.Equal(0, Math.IEEERemainder(end.Left.Angle - path.Start.Left.Angle, 360), 6);
    });

    [Fact]
    public void At_a_key_the_feet_are_where_the_key_says() => Danceable.Sample(dance =>
    {
        FloorPath path = Simulate(dance);
        foreach (FloorKey key in path.Keys)
        {
            Assert.Equal(key.Left, path.At(Foot.Left, key.Arrives));
            Assert.Equal(key.Right, path.At(Foot.Right, key.Arrives));
        }
    });

    [Fact]
    public void Between_keys_the_body_keeps_the_laws() => Danceable.Sample(
        dance => AssertLawful(FloorSimulator.Simulate(Unroller.Unroll(dance, PlanBuilder.OneWall(dance)), Size)),
        iter: 60);

    [Fact]
    public void The_mirrored_dance_goes_the_mirrored_way() => Danceable.Sample(dance =>
    {
        FloorPath here = Simulate(dance);
        FloorPath there = Simulate(DanceMirror.Mirror(dance));
        for (int i = 0; i < here.Keys.Count; i++)
        {
            Assert.Equal(-here.Keys[i].Left.X, there.Keys[i].Right.X, 9);
            Assert.Equal(here.Keys[i].Left.Y, there.Keys[i].Right.Y, 9);
            Assert.Equal(-here.Keys[i].Right.Angle, there.Keys[i].Left.Angle, 9);
            Assert.Equal(here.Keys[i].Right.Height, there.Keys[i].Left.Height, 9);
        }
    });

    [Theory]
    [MemberData(nameof(StepIds))]
    public void Every_move_of_the_catalogue_keeps_the_laws(string id)
    {
        StepDefinition definition = StepCatalogue.Default.Find(id)!;
        foreach (Foot named in Enum.GetValues<Foot>())
        {
            Dance dance = ToDance(definition, named);
            AssertLawful(FloorSimulator.Simulate(Unroller.Unroll(dance, PlanBuilder.OneWall(dance)), Size));
        }
    }

    [Fact]
    public void A_step_lifts_the_foot_and_sets_it_down_gently()
    {
        FloorPath path = Simulate(OfSections(Weight.Left, SectionOf(1, 4, On("2", Step(Foot.Right)), On("4", Step(Foot.Left)))));

        FootPose half = path.At(Foot.Right, Counts.Half);
        Assert.Equal(Contact.Air, half.Contact);
        Assert.InRange(half.Height, 0.02, 0.06);
        Assert.InRange(half.Y, path.Start.Right.Y, path.Keys[0].Right.Y);
        Assert.True((path.At(Foot.Right, 0.99).Place - path.Keys[0].Right.Place).Length < 0.001);
        Assert.Equal(path.Start.Right.Place, path.At(Foot.Right, 0).Place);
        Assert.Equal(path.Keys[0].Right, path.At(Foot.Right, 1.5));
    }

    [Fact]
    public void A_drag_over_two_counts_arrives_with_the_second_and_never_leaves_the_floor()
    {
        StepAction drag = new(ActionKind.Drag, ActingFoot.Left, Direction.Together, Contact.Toe, WeightEffect.Keeps);
        FloorPath path = Simulate(OfSections(
            Weight.Left,
            SectionOf(1, 4, On("1", Step(Foot.Right, Direction.Side) with { Size = StepSize.Large }), On("3", drag, Count(2)))));

        Assert.Equal((2.0, 3.0), (path.Keys[1].At, path.Keys[1].Arrives));
        double before = path.At(Foot.Left, 2).X;
        double middle = path.At(Foot.Left, 2.5).X;
        Assert.InRange(middle, before + 0.01, path.Keys[1].Left.X - 0.01);
        Assert.Equal(0, path.At(Foot.Left, 2.5).Height);
    }

    [Fact]
    public void A_sweep_goes_round_the_outside_of_the_standing_foot()
    {
        StepAction sweep = new(ActionKind.Sweep, ActingFoot.Right, Direction.Forward, Contact.Toe, WeightEffect.Keeps);
        FloorPath path = Simulate(OfSections(
            Weight.Left,
            SectionOf(1, 3, On("1", Touch(Foot.Right, Direction.Back)), On("2", sweep))));

        // half way it is beside the standing foot, further out than at either end
        FootPose half = path.At(Foot.Right, 0.5);
        Assert.True(half.X > path.Keys[0].Right.X + 0.05);
        Assert.True(half.X > path.Keys[1].Right.X + 0.05);
    }

    [Fact]
    public void A_foot_carried_round_keeps_its_distance()
    {
        StepAction turn = StepAction.Hold with { Kind = ActionKind.Turn, Turn = Turn.FromEighths(8) };
        FloorPath path = Simulate(OfSections(Weight.Left, SectionOf(1, 3, On("1", Touch(Foot.Right)), On("2", turn))));

        for (double count = 0; count <= 1; count += Tick)
        {
            Assert.Equal(0.08 * Size.Height, (path.At(Foot.Right, count).Place - path.At(Foot.Left, count).Place).Length, 9);
        }

        Assert.Equal(180, path.BodyAt(0.5).Facing, 6);
    }

    private static FloorPath Simulate(Dance dance) => FloorSimulator.Simulate(Unroller.Unroll(dance, PlanBuilder.Plain(dance)), Size);

    private static void AssertLawful(FloorPath path)
    {
        if (path.Keys.Count == 0)
        {
            return;
        }

        double end = path.End().Arrives;
        Dictionary<Foot, FootPose> before = [];
        for (double count = path.Keys[0].At - 1; count <= end; count += Tick)
        {
            BodyPose body = path.BodyAt(count);
            FloorKey from = path.Start;
            FloorKey to = path.Start;
            for (int i = 0; i < path.Keys.Count && from == to; i++)
            {
                (from, to) = path.Keys[i].Arrives <= count ? (path.Keys[i], path.Keys[i]) : (from, path.Keys[i]);
            }

            foreach (Foot foot in Enum.GetValues<Foot>())
            {
                FootPose pose = path.At(foot, count);
                Assert.True(pose.Height >= 0, "a foot is below the floor");
                Assert.True(pose.Height == 0 || pose.Contact == Contact.Air, "a foot off the floor does not meet it");
                AssertLeg(body, pose, count);
                bool stands = from.Weight.StandingFoot() == foot;
                FootMotion motion = to.MotionOf(foot);
                if (stands && motion is not (FootMotion.Jump or FootMotion.Slide))
                {
                    Assert.Equal(0, pose.Height);
                    FloorPoint kept = motion == FootMotion.OnHeel ? pose.Heel(Size) - from.Of(foot).Heel(Size) : pose.Place - from.Of(foot).Place;
                    Assert.True(kept.Length < 1e-9, $"the standing foot slides at {count}");
                }

                if (before.TryGetValue(foot, out FootPose last))
                {
                    Assert.True((pose.Place - last.Place).Length < 0.25, $"a foot jumps from place to place at {count}");
                    Assert.True(Math.Abs(pose.Height - last.Height) < 0.15, $"a foot jumps up or down at {count}");
                }

                before[foot] = pose;
            }
        }
    }

    private static void AssertLeg(BodyPose body, FootPose foot, double count)
    {
        double away = (foot.Place - new FloorPoint(body.X, body.Y)).Length;
        Assert.True(away <= Size.Reach + 1e-9, $"a foot is out of reach at {count}");
        double rise = body.HipHeight - foot.Height;
        Assert.True(Math.Sqrt((away * away) + (rise * rise)) <= Size.LegLength + 1e-9, "a leg is too long");
        Assert.True(body.HipHeight > 0.4 * Size.Height, "the dancer sits");
    }

    private static Dance ToDance((int Kind, int Turn, Direction Direction)[] moves, int lastTurn)
    {
        Weight weight = Weight.Left;
        List<StepAction> actions = [Step(Foot.Right, Direction.Together)];
        weight = Weight.Right;
        int sum = 0;
        foreach ((int kind, int turn, Direction direction) in moves)
        {
            StepAction action = Action(kind, weight.FreeFoot()!.Value, direction, turn);
            sum += turn;
            actions.Add(action);
            weight = action.WeightAfter(weight);
        }

        // the wall ends on the left foot with a net turn that is not a whole one
        int left = ((lastTurn - sum) % 8) + 8;
        if (weight == Weight.Left)
        {
            actions.Add(Step(Foot.Right, Direction.Side));
        }

        actions.Add(Step(Foot.Left, Direction.Together, left % 8));
        WrittenStep[] steps = [.. actions.Select((a, i) => On((i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), a))];
        return OfSections(Weight.Left, SectionOf(1, steps.Length, steps));
    }

    private static StepAction Action(int kind, Foot free, Direction direction, int turn)
    {
        StepAction step = Step(free, direction, turn);
        StepAction gesture = step with { Effect = WeightEffect.Keeps };
        return kind switch
        {
            0 => gesture with { Kind = ActionKind.Kick, Contact = Contact.Air },
            1 => gesture with { Kind = ActionKind.Point, Contact = Contact.Toe },
            2 => gesture with { Kind = ActionKind.Sweep, Contact = Contact.Toe },
            3 => StepAction.Hold with { Kind = ActionKind.Turn, Turn = Turn.FromEighths(turn) },
            4 => step with { Kind = ActionKind.Rock },
            5 => step with { Kind = ActionKind.Recover },
            6 => gesture with { Kind = ActionKind.FanToe, Contact = Contact.Heel },
            _ => step,
        };
    }

    // The entry's rows once, from the weight it begins with.
    private static Dance ToDance(StepDefinition definition, Foot named)
    {
        Weight start = definition.From switch
        {
            RelativeWeight.Same => named.ToWeight(),
            RelativeWeight.Both => Weight.Shared,
            _ => named.Other().ToWeight(),
        };
        List<WrittenStep> steps = [];
        for (int i = 0; i < definition.Rows.Count; i++)
        {
            PatternRow row = definition.Rows[i];
            Counts end = i + 1 < definition.Rows.Count ? definition.Rows[i + 1].At : definition.Length;
            steps.Add(new WrittenStep(new WrittenCount(row.Label, row.At), Counts.Max(end - row.At, Counts.Zero), row.For(named), Nowhere, 1));
        }

        return OfSections(start, SectionOf(1, definition.Length.Value.Floor, [.. steps]));
    }
}
