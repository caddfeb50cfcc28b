using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Floor;

/// <summary>Dances a timeline on a floor.</summary>
public static class FloorSimulator
{
    // A wall leaves the feet where it leaves them wherever they began, save for feet that it never sets down: two rounds settle those.
    private const int SettlingRounds = 3;

    /// <summary>
    /// The dancer's way. The dance begins with the feet as its first full wall leaves them, so that every wall is danced alike and
    /// the last leads smoothly into the first; the origin is the point below the hips at the start. An empty timeline gives a dancer who stands.
    /// </summary>
    public static FloorPath Simulate(Timeline timeline, DancerSize size)
    {
        Weight weight = timeline.Stretches.Count == 0 ? Weight.Left : timeline.Stretches[0].Weight;
        Dancer dancer = Settled(timeline, size, weight);
        FloorKey start = dancer.ToKey(0, 0, Turn.None);
        FloorKey[] keys = new FloorKey[timeline.Steps.Count];
        for (int i = 0; i < keys.Length; i++)
        {
            TimedStep step = timeline.Steps[i];
            if (BeginsWall(timeline, i))
            {
                dancer.RememberHome();
            }

            Dance(dancer, timeline, i);
            keys[i] = dancer.ToKey(step.At.Value.ToDouble(), Arrival(timeline, i), step.Written.BodyAngle);
        }

        return new FloorPath(size, start, keys.ToValueList());
    }

    /// <summary>The dancer as <see cref="Simulate"/> has her just before an action.</summary>
    internal static Dancer Before(Timeline timeline, DancerSize size, int index)
    {
        Dancer dancer = Settled(timeline, size, timeline.Stretches.Count == 0 ? Weight.Left : timeline.Stretches[0].Weight);
        for (int i = 0; i <= index && i < timeline.Steps.Count; i++)
        {
            if (BeginsWall(timeline, i))
            {
                dancer.RememberHome();
            }

            if (i < index)
            {
                Dance(dancer, timeline, i);
            }
        }

        return dancer;
    }

    private static bool BeginsWall(Timeline timeline, int index)
    {
        int stretch = timeline.Steps[index].Stretch;
        return timeline.Stretches[stretch].Plan.StartsWall && (index == 0 || timeline.Steps[index - 1].Stretch != stretch);
    }

    internal static void Dance(Dancer dancer, Timeline timeline, int index)
    {
        TimedStep step = timeline.Steps[index];
        Opening opening = Opens(timeline, index)
            ? Opening.First
            : Opens(timeline, index - 1) ? Opening.Second : Opening.None;
        bool isWithLast = index > 0 && timeline.Steps[index - 1].At == step.At;
        dancer.Dance(step.Action, !step.Written.Count.Place.IsWhole, step.WeightAfter, opening, isWithLast);
    }

    // Two diagonal steps by different feet open the feet if they come at once, or if the first foot then goes home again.
    private static bool Opens(Timeline timeline, int index)
    {
        if (index < 0 || index + 1 >= timeline.Steps.Count)
        {
            return false;
        }

        TimedStep first = timeline.Steps[index];
        TimedStep second = timeline.Steps[index + 1];
        return first.Stretch == second.Stretch
            && first.Action.Direction is Direction.DiagonalForward or Direction.DiagonalBack
            && second.Action.Direction == first.Action.Direction
            && first.Action.Effect == WeightEffect.Takes
            && second.Action.Effect == WeightEffect.Takes
            && first.Action.Foot != second.Action.Foot
            && (JumpsApart(timeline, index) || GoesHome(timeline, index));
    }

    private static bool JumpsApart(Timeline timeline, int index)
    {
        TimedStep first = timeline.Steps[index];

        // after a lock the & leads on, as in a running lock
        bool leadsOn = index > 0 && timeline.Steps[index - 1].Action.Direction is (Direction.LockBehind or Direction.LockFront);
        return !leadsOn && !first.Written.Count.Place.IsWhole && timeline.Steps[index + 1].At - first.At <= Counts.Half;
    }

    private static bool GoesHome(Timeline timeline, int index)
    {
        if (index + 2 >= timeline.Steps.Count)
        {
            return false;
        }

        TimedStep first = timeline.Steps[index];
        TimedStep third = timeline.Steps[index + 2];
        return third.Stretch == first.Stretch && third.Action.Direction == Direction.Home && third.Action.Foot == first.Action.Foot;
    }

    // What lasts several counts arrives with the last of them, but not after the next action begins.
    private static double Arrival(Timeline timeline, int index)
    {
        TimedStep step = timeline.Steps[index];
        Counts at = step.At;
        if (step.Action.Traits.Stretches && step.Part.Length > Counts.One)
        {
            at += step.Part.Length - Counts.One;
            if (index + 1 < timeline.Steps.Count)
            {
                at = Counts.Min(at, timeline.Steps[index + 1].At);
            }
        }

        return at.Value.ToDouble();
    }

    private static Dancer Settled(Timeline timeline, DancerSize size, Weight weight)
    {
        Dancer dancer = new(size, weight);
        int wall = FirstFullWall(timeline);
        if (wall < 0 || timeline.Stretches[wall].WeightAfter != timeline.Stretches[wall].Weight || !IsUnderstood(timeline, wall))
        {
            return dancer;
        }

        for (int round = 0; round < SettlingRounds; round++)
        {
            dancer.RememberHome();
            for (int i = 0; i < timeline.Steps.Count && timeline.Steps[i].Stretch <= wall + 1; i++)
            {
                if (timeline.Steps[i].Stretch == wall)
                {
                    Dance(dancer, timeline, i);
                }
            }

            dancer.StandAtOrigin();
        }

        return dancer;
    }

    // Nobody knows where words that could not be read leave the feet.
    private static bool IsUnderstood(Timeline timeline, int stretch)
    {
        foreach (TimedStep step in timeline.Steps)
        {
            if (step.Stretch == stretch && step.Action.Kind == ActionKind.Unknown)
            {
                return false;
            }
        }

        return true;
    }

    private static int FirstFullWall(Timeline timeline)
    {
        for (int i = 0; i < timeline.Stretches.Count; i++)
        {
            PlanStretch plan = timeline.Stretches[i].Plan;
            if (plan.Kind == StretchKind.Wall && plan.StartsWall)
            {
                Counts length = Counts.Zero;
                foreach (Section section in plan.Sections)
                {
                    length += section.Length;
                }

                // only the first wall decides: the dancer has no foreknowledge of what a later one changes
                return plan.Counts.Start == Counts.Zero && plan.Counts.End == length && plan.Changes.Count == 0 ? i : -1;
            }
        }

        return -1;
    }
}
