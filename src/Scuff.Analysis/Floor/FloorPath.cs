using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Analysis.Floor;

/// <summary>
/// The dancer's way over the floor. Places are exact at the keys and smooth between them: a foot lifts, travels and settles, the
/// foot that carries the weight stays, no leg is longer than it is. Counts are written counts; a swung feel moves them before
/// they are asked for. Finding a moment costs the logarithm of the number of actions.
/// </summary>
public sealed class FloorPath
{
    private readonly Beat[] _beats;

    internal FloorPath(DancerSize size, FloorKey start, ValueList<FloorKey> keys)
    {
        Size = size;
        Start = start;
        Keys = keys;
        _beats = Gather(start, keys);
    }

    /// <summary>The dancer's size.</summary>
    public DancerSize Size { get; }

    /// <summary>The dancer before the first action.</summary>
    public FloorKey Start { get; }

    /// <summary>The dancer after every action, in the order of the timeline's steps and as many.</summary>
    public ValueList<FloorKey> Keys { get; }

    /// <summary>How far the feet get from the start.</summary>
    public FloorExtent Extent
    {
        get
        {
            double left = 0;
            double right = 0;
            double forward = 0;
            double back = 0;
            foreach (Beat beat in _beats)
            {
                foreach (FloorPoint place in (ReadOnlySpan<FloorPoint>)[beat.Key.Left.Place - Start.Body, beat.Key.Right.Place - Start.Body])
                {
                    left = Math.Max(left, -place.X);
                    right = Math.Max(right, place.X);
                    forward = Math.Max(forward, place.Y);
                    back = Math.Max(back, -place.Y);
                }
            }

            return new FloorExtent(left, right, forward, back);
        }
    }

    /// <summary>One foot at a count (counted from zero, like every place of a timeline).</summary>
    public FootPose At(Foot foot, Counts count) => At(foot, count.Value.ToDouble());

    /// <summary>One foot at a count (counted from zero, like every place of a timeline).</summary>
    public FootPose At(Foot foot, double count)
    {
        (FloorKey from, FloorKey to, double way) = Find(count);
        return Between(from, to, foot, way);
    }

    /// <summary>The body at a count (counted from zero, like every place of a timeline).</summary>
    public BodyPose BodyAt(double count)
    {
        (FloorKey from, FloorKey to, double way) = Find(count);
        double share = Ease(way);
        FloorPoint body = BodyPlace(from, to, share);
        double hips = HipsOver(body, Between(from, to, Foot.Left, way), Between(from, to, Foot.Right, way));
        return new BodyPose(
            body.X,
            body.Y,
            hips,
            Mix(from.Facing, to.Facing, share),
            Mix(from.BodyAngle, to.BodyAngle, share));
    }

    // Actions on one count are one movement: what starts it is the first of them, what it leads to the last.
    private static Beat[] Gather(FloorKey start, ValueList<FloorKey> keys)
    {
        double first = keys.Count == 0 ? 0 : keys[0].At - 1;
        List<Beat> beats = [new Beat(first, start with { At = first, Arrives = first })];
        foreach (FloorKey key in keys)
        {
            Beat last = beats[^1];
            if (key.Arrives > last.Key.Arrives)
            {
                // what stretches starts on its count, give or take; a step is under way for at most one count before it lands
                double lead = key.Arrives > key.At ? 0.5 : 1;
                beats.Add(new Beat(Math.Max(last.Key.Arrives, key.At - lead), key));
            }
            else
            {
                beats[^1] = last with
                {
                    Key = key with
                    {
                        LeftMotion = key.LeftMotion == FootMotion.Still ? last.Key.LeftMotion : key.LeftMotion,
                        RightMotion = key.RightMotion == FootMotion.Still ? last.Key.RightMotion : key.RightMotion,
                    },
                };
            }
        }

        return [.. beats];
    }

    private static double Mix(double from, double to, double share) => from + ((to - from) * share);

    // A foot is lifted before it travels and settles after it: rest at both ends, and speed and acceleration start and end at zero.
    private static double Ease(double way)
    {
        double t = Math.Clamp((way - 0.08) / 0.84, 0, 1);
        return t * t * t * ((t * ((t * 6) - 15)) + 10);
    }

    private static double Hump(double way)
    {
        double wave = Math.Sin(Math.PI * way);
        return wave * wave;
    }

    private static FloorPoint PivotOf(FloorKey from, FloorKey to, Foot foot, double share)
        => to.MotionOf(foot.Other()) is FootMotion.Still or FootMotion.OnHeel
            ? from.Of(foot.Other()).Place
            : FloorPoint.Between(from.Body, to.Body, share);

    private static double LongWay(double from, double to, Foot foot, FloorPoint local)
    {
        // round the outside of the acting foot, never through the standing leg
        double way = to - from;
        bool passesStanding = Math.Abs(way) > Math.PI || (foot == Foot.Right ? Crosses(from, way, -Math.PI / 2) : Crosses(from, way, Math.PI / 2));
        return passesStanding && local.Length > 0 ? way - (Math.Sign(way) * 2 * Math.PI) : way;
    }

    private static bool Crosses(double from, double way, double angle)
        => (angle - from) * Math.Sign(way) > 0 && Math.Abs(angle - from) < Math.Abs(way);

    private FootPose Between(FloorKey from, FloorKey to, Foot foot, double way)
    {
        FootPose a = from.Of(foot);
        FootPose b = to.Of(foot);
        FootMotion motion = to.MotionOf(foot);
        if (way <= 0 || way >= 1)
        {
            return way <= 0 ? a : b;
        }

        double share = Ease(way);
        double angle = Mix(a.Angle, b.Angle, share);
        if (motion == FootMotion.Still)
        {
            Contact rests = a.Angle != b.Angle && a.Contact == Contact.Flat ? Contact.Ball : a.Contact;
            return a with { Angle = angle, Contact = rests, Height = Mix(a.Height, b.Height, share) };
        }

        if (motion == FootMotion.OnHeel)
        {
            return (a with { Angle = angle, Contact = Contact.Heel }).At(BallOnHeel(a, b, share));
        }

        double height = Mix(a.Height, b.Height, share) + (LiftOf(motion, a, b) * Hump(way));
        Contact contact = motion switch
        {
            FootMotion.Travel or FootMotion.Jump => Contact.Air,
            _ when height > 0 => Contact.Air,
            _ => b.Contact == Contact.Air ? a.Contact : b.Contact,
        };
        FloorPoint body = BodyPlace(from, to, share);
        return new FootPose(0, 0, angle, contact, height).At(Within(body, PlaceOf(from, to, foot, share)));
    }

    // The heel stays, unless the body turns at the same time and takes the foot round on its ball.
    private FloorPoint BallOnHeel(FootPose from, FootPose to, double share)
        => FloorPoint.Between(from.Heel(Size), to.Heel(Size), share)
            + new FloorPoint(0, Size.HeelToBall).Turned(Mix(from.Angle, to.Angle, share));

    // Straight from key to key, where both legs reach; a ball that swings round its heel may draw the hips a little along.
    private FloorPoint BodyPlace(FloorKey from, FloorKey to, double share)
    {
        FloorPoint body = FloorPoint.Between(from.Body, to.Body, share);
        foreach (Foot foot in (ReadOnlySpan<Foot>)[Foot.Left, Foot.Right])
        {
            if (to.MotionOf(foot) == FootMotion.OnHeel)
            {
                FloorPoint away = BallOnHeel(from.Of(foot), to.Of(foot), share) - body;
                body += away * Math.Max(0, 1 - (Size.Reach / Math.Max(away.Length, Size.Reach)));
            }
        }

        return body;
    }

    // The way is drawn relative to the turning body, so that a foot that is carried round keeps its distance from the standing one.
    private FloorPoint PlaceOf(FloorKey from, FloorKey to, Foot foot, double share)
    {
        FloorPoint before = (from.Of(foot).Place - PivotOf(from, to, foot, 0)).Turned(-from.Facing);
        FloorPoint after = (to.Of(foot).Place - PivotOf(from, to, foot, 1)).Turned(-to.Facing);
        FloorPoint local = FloorPoint.Between(before, after, share);
        if (to.MotionOf(foot) == FootMotion.Swing && before.Length > 0 && after.Length > 0)
        {
            double start = Math.Atan2(before.X, before.Y);
            double angle = start + (LongWay(start, Math.Atan2(after.X, after.Y), foot, before) * share);
            double radius = Mix(before.Length, after.Length, share);
            local = new FloorPoint(radius * Math.Sin(angle), radius * Math.Cos(angle));
        }

        return PivotOf(from, to, foot, share) + local.Turned(Mix(from.Facing, to.Facing, share));
    }

    private FloorPoint Within(FloorPoint body, FloorPoint place)
    {
        FloorPoint away = place - body;
        double distance = away.Length;
        return distance <= Size.Reach ? place : body + (away * (Size.Reach / distance));
    }

    private double LiftOf(FootMotion motion, FootPose from, FootPose to) => motion switch
    {
        FootMotion.Jump => Proportions.JumpLift * Size.Height,

        // a foot that stays near the floor needs less lift, one that is in the air already needs none
        FootMotion.Travel when from.Height == 0 || to.Height == 0 => Proportions.Lift * Size.Height,
        _ => 0,
    };

    private double HipsOver(FloorPoint body, FootPose left, FootPose right)
        => Math.Min(HipsOver(body, left), HipsOver(body, right));

    private double HipsOver(FloorPoint body, FootPose foot)
    {
        double away = Math.Min((foot.Place - body).Length, Size.LegLength);
        double straight = Math.Sqrt((Size.LegLength * Size.LegLength) - (away * away));
        return foot.Height > 0 ? Math.Min(Size.LegLength, straight + foot.Height) : straight;
    }

    private (FloorKey From, FloorKey To, double Way) Find(double count)
    {
        int low = 0;
        int high = _beats.Length - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            if (_beats[middle].Key.Arrives <= count)
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        FloorKey from = _beats[low].Key;
        if (low == _beats.Length - 1 || count < from.Arrives)
        {
            return (from, from, 0);
        }

        Beat next = _beats[low + 1];
        double length = next.Key.Arrives - next.Leaves;
        return (from, next.Key, length > 0 ? Math.Clamp((count - next.Leaves) / length, 0, 1) : 0);
    }

    private readonly record struct Beat(double Leaves, FloorKey Key);
}
