using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Analysis.Floor;

/// <summary>
/// The dancer's feet between two actions, and what each primitive does to them. Places are set relative to the other foot and to
/// the body after the turn, so the same actions from the same stance always make the same way, whichever wall they face.
/// </summary>
internal sealed class Dancer
{
    // A long step leads exactly as far as a leg reaches: without some room for the rounding of sines and cosines the same steps
    // would go home on one wall and not on the next.
    private const double Rounding = 1e-9;

    private readonly DancerSize _size;
    private readonly FootPose[] _feet = new FootPose[2];
    private readonly FootPose[] _homes = new FootPose[2];
    private readonly FootMotion[] _motions = new FootMotion[2];

    // Whether the foot is only stretched out (a kick, a heel, a point) and will be drawn back under the body.
    private readonly bool[] _isGesture = new bool[2];

    // The feet that have acted at the present count.
    private readonly bool[] _hasActed = new bool[2];
    private Weight _weight;
    private double _facing;
    private bool _isCertain = true;
    private Opening _opening;

    /// <summary>A dancer who stands at the origin, feet together, facing 12:00.</summary>
    public Dancer(DancerSize size, Weight weight)
    {
        _size = size;
        _weight = weight;
        double half = Proportions.Stance / 2 * size.Height;
        foreach (Foot foot in Both)
        {
            _feet[(int)foot] = new FootPose(Sign(foot) * half, 0, Rest(foot), Contact.Flat, 0);
        }

        StandAtOrigin();
        RememberHome();
    }

    private Dancer(Dancer other)
    {
        _size = other._size;
        other._feet.CopyTo(_feet, 0);
        other._homes.CopyTo(_homes, 0);
        other._motions.CopyTo(_motions, 0);
        other._isGesture.CopyTo(_isGesture, 0);
        other._hasActed.CopyTo(_hasActed, 0);
        _weight = other._weight;
        _facing = other._facing;
        _isCertain = other._isCertain;
        _opening = other._opening;
    }

    private static ReadOnlySpan<Foot> Both => [Foot.Left, Foot.Right];

    /// <summary>The same dancer once more, to try something else from here.</summary>
    public Dancer Copy() => new(this);

    /// <summary>The dancer as a key.</summary>
    public FloorKey ToKey(double at, double arrives, Turn bodyAngle) => new(
        at,
        arrives,
        _feet[0],
        _feet[1],
        Body(),
        _facing,
        Degrees(bodyAngle),
        _weight,
        _motions[0],
        _motions[1],
        _isCertain);

    /// <summary>Takes the feet's places as those to which a step home returns.</summary>
    public void RememberHome()
    {
        foreach (Foot foot in Both)
        {
            bool isFree = _weight.FreeFoot() == foot;
            _homes[(int)foot] = isFree ? _feet[(int)foot].At(Beside(foot)) : _feet[(int)foot];
        }
    }

    /// <summary>Moves floor and clock so that the hips are over the origin and the dance faces 12:00; a foot in the air is set down.</summary>
    public void StandAtOrigin()
    {
        FloorPoint body = Body();
        foreach (Foot foot in Both)
        {
            FootPose pose = _feet[(int)foot];
            _feet[(int)foot] = Moved(pose, body) with
            {
                Height = 0,
                Contact = pose.Contact == Contact.Air ? Contact.Toe : pose.Contact,
            };
            _homes[(int)foot] = Moved(_homes[(int)foot], body);
            _motions[(int)foot] = FootMotion.Still;
        }

        _facing = 0;
    }

    /// <summary>Dances one action.</summary>
    /// <param name="action">The action.</param>
    /// <param name="isOffBeat">Whether it stands between two counts: its steps are smaller.</param>
    /// <param name="weightAfter">Where the weight is afterwards.</param>
    /// <param name="opening">Whether it opens the feet together with its neighbour.</param>
    /// <param name="isWithLast">Whether it is danced at the same count as the action before it.</param>
    public void Dance(StepAction action, bool isOffBeat, Weight weightAfter, Opening opening, bool isWithLast)
    {
        Array.Clear(_motions);
        if (!isWithLast)
        {
            Array.Clear(_hasActed);
        }

        _opening = opening;
        if (action.Kind == ActionKind.Unknown)
        {
            _isCertain = false;
        }
        else
        {
            Move(action, isOffBeat);
            Settle(action, weightAfter);
        }

        _weight = weightAfter;
        foreach (Foot foot in Both)
        {
            if (weightAfter == Weight.Shared || weightAfter.StandingFoot() == foot)
            {
                _isGesture[(int)foot] = false;
                SetDown(foot);
            }
        }

        if (IsTogether())
        {
            _feet.CopyTo(_homes, 0);
        }
    }

    private static double Degrees(Turn turn) => turn.Eighths.ToDouble() * 45;

    private static int Sign(Foot foot) => foot == Foot.Left ? -1 : 1;

    // Without a written direction each action has its own usual one.
    private static Direction Usual(StepAction action) => action.Direction != Direction.Unstated ? action.Direction : action.Kind switch
    {
        ActionKind.Point or ActionKind.Lunge => Direction.Side,
        ActionKind.Dig or ActionKind.Kick or ActionKind.Scuff or ActionKind.Brush or ActionKind.Sweep or ActionKind.Grind => Direction.Forward,
        ActionKind.Rock or ActionKind.Press => Direction.Forward,
        ActionKind.Flick or ActionKind.Ronde => Direction.Back,
        ActionKind.Hook => Direction.Across,
        ActionKind.Hitch => Direction.Up,
        ActionKind.Touch or ActionKind.Tap or ActionKind.Stomp or ActionKind.Drag or ActionKind.Slide => Direction.Together,
        _ => Direction.InPlace,
    };

    private static bool IsTwist(ActionKind kind) => kind is ActionKind.FanToe or ActionKind.FanHeel or ActionKind.SplitHeels
        or ActionKind.SplitToes or ActionKind.Swivel or ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.SwivelHeel
        or ActionKind.SwivelToe or ActionKind.Swivet or ActionKind.Applejack or ActionKind.Twist;

    private static bool IsInward(Direction direction) => direction is Direction.In or Direction.Centre or Direction.Home
        or Direction.Together or Direction.InPlace;

    private void Move(StepAction action, bool isOffBeat)
    {
        double turn = Degrees(action.Turn);
        _facing += turn;
        if (action.Foot.ToFoot() is { } foot)
        {
            MoveOne(action, foot, turn, isOffBeat);
        }
        else if (action.Foot == ActingFoot.Both)
        {
            MoveBoth(action, turn);
        }
        else if (_weight.StandingFoot() is { } standing)
        {
            TurnOn(standing, turn);
        }
        else
        {
            TurnOnBoth(turn);
        }
    }

    private void MoveOne(StepAction action, Foot foot, double turn, bool isOffBeat)
    {
        bool stands = _weight.StandingFoot() == foot;
        if (IsTwist(action.Kind))
        {
            TurnOnBoth(turn);
            Twist(action.Kind, action.Direction, foot);
            Meet(foot, action.Contact);
        }
        else if (stands && action.Kind is ActionKind.Hop or ActionKind.Scoot)
        {
            Hop(action, foot, turn);
        }
        else if (stands && action.Kind == ActionKind.Pivot)
        {
            TurnOn(foot, turn);
        }
        else if (action.Kind == ActionKind.Unwind)
        {
            Unwind(foot, turn);
        }
        else if (action.Kind == ActionKind.Sway && Usual(action) == Direction.Side && Distance() < Proportions.Apart * 0.7 * _size.Height)
        {
            // the first of several sways opens the feet; the others find them open
            Place(action, foot, turn, isOffBeat);
        }
        else if (!action.Traits.MovesFoot)
        {
            // both feet stay where they are and turn: a recover, a step turn's second half, hips
            TurnOnBoth(turn);
            Meet(foot, action.Contact);
        }
        else
        {
            Place(action, foot, turn, isOffBeat);
        }
    }

    private void MoveBoth(StepAction action, double turn)
    {
        if (IsTwist(action.Kind))
        {
            TurnOnBoth(turn);
            Twist(action.Kind, action.Direction, null);
            Meet(Foot.Left, action.Contact);
            Meet(Foot.Right, action.Contact);
        }
        else if (action.Kind == ActionKind.Unwind)
        {
            Unwind(Foot.Right, turn);
        }
        else if (action.Traits.MovesFoot)
        {
            JumpBoth(action, turn);
        }
        else
        {
            TurnOnBoth(turn);
        }
    }

    // The standing foot stays and turns on its ball, the other is carried round it.
    private void TurnOn(Foot standing, double turn)
    {
        if (turn == 0)
        {
            return;
        }

        Foot free = standing.Other();
        Rotate(standing, turn);
        FootPose pose = _feet[(int)free];
        FloorPoint pivot = _feet[(int)standing].Place;
        _feet[(int)free] = (pose with { Angle = pose.Angle + turn }).At(pivot + (pose.Place - pivot).Turned(turn));
        _motions[(int)free] = pose.Height > 0 ? FootMotion.Swing : FootMotion.Slide;
    }

    private void TurnOnBoth(double turn)
    {
        Rotate(Foot.Left, turn);
        Rotate(Foot.Right, turn);
    }

    private void Rotate(Foot foot, double turn)
        => _feet[(int)foot] = _feet[(int)foot] with { Angle = _feet[(int)foot].Angle + turn };

    private void Place(StepAction action, Foot foot, double turn, bool isOffBeat)
    {
        Foot standing = foot.Other();
        Rotate(standing, turn);
        FootPose before = _feet[(int)foot];
        FloorPoint target = Target(action, foot, turn, isOffBeat);
        double height = HeightOf(action);
        Contact contact = height > 0 ? Contact.Air : action.Contact == Contact.Air ? Contact.Flat : action.Contact;
        _feet[(int)foot] = new FootPose(0, 0, _facing + Rest(foot), contact, height).At(target);
        _isGesture[(int)foot] = action.Effect == WeightEffect.Keeps && action.Kind != ActionKind.Stomp;
        _motions[(int)foot] = action.Kind switch
        {
            ActionKind.Drag or ActionKind.Slide or ActionKind.Scoot => before.Height > 0 ? FootMotion.Travel : FootMotion.Slide,
            ActionKind.Sweep or ActionKind.Ronde => FootMotion.Swing,
            ActionKind.Leap or ActionKind.Jump or ActionKind.Hop => FootMotion.Jump,
            _ => FootMotion.Travel,
        };
    }

    private double HeightOf(StepAction action)
    {
        if (action.Contact != Contact.Air || action.Effect != WeightEffect.Keeps)
        {
            return 0;
        }

        return _size.Height * action.Kind switch
        {
            ActionKind.Kick => Proportions.KickHeight,
            ActionKind.Flick or ActionKind.Hook => Proportions.HookHeight,
            ActionKind.Hitch => Proportions.HitchHeight,
            _ => Proportions.LowHeight,
        };
    }

    private FloorPoint Target(StepAction action, Foot foot, double turn, bool isOffBeat)
    {
        FloorPoint standing = _feet[(int)foot.Other()].Place;
        Direction direction = Usual(action);
        FloorPoint before = _feet[(int)foot].Place;
        if (direction == Direction.InPlace && !(_isGesture[(int)foot] && action.Effect != WeightEffect.Keeps))
        {
            return standing + (before - standing).Turned(turn);
        }

        if (direction is Direction.Home or Direction.InPlace && turn == 0)
        {
            FloorPoint home = _homes[(int)foot].Place;
            double away = (home - standing).Length / _size.Height;
            return away is >= (Proportions.Stance / 2) - Rounding and <= Proportions.Long + Rounding ? home : Beside(foot);
        }

        (double side, double ahead) = Offset(action, direction, isOffBeat, foot);
        return standing + new FloorPoint(Sign(foot) * side * _size.Height, ahead * _size.Height).Turned(_facing);
    }

    // From the standing foot, in parts of the height: how far to the acting foot's own side, and how far ahead.
    private (double Side, double Ahead) Offset(StepAction action, Direction direction, bool isOffBeat, Foot foot)
    {
        const double stance = Proportions.Stance;
        const double diagonal = 0.7071;
        double length = LengthOf(action, direction, isOffBeat);
        double open = Distance() / _size.Height;
        bool isRight = foot == Foot.Right;
        double opened = (stance + Proportions.Apart) / 2;
        return direction switch
        {
            Direction.DiagonalForward or Direction.DiagonalBack when _opening == Opening.Second => (Proportions.Apart, 0),
            Direction.DiagonalForward when _opening == Opening.First => (opened, Proportions.Side * diagonal),
            Direction.DiagonalBack when _opening == Opening.First => (opened, -Proportions.Side * diagonal),
            Direction.Forward => (stance, length),
            Direction.Back => (stance, -length),
            Direction.Side => (Math.Max(length, stance), 0),
            Direction.DiagonalForward => (stance + (length * diagonal), length * diagonal),
            Direction.DiagonalBack => (stance + (length * diagonal), -length * diagonal),
            Direction.DiagonalForwardAcross => (stance - (length * diagonal), length * diagonal),
            Direction.DiagonalBackAcross => (stance - (length * diagonal), -length * diagonal),
            Direction.CrossFront or Direction.Across => (-Proportions.CrossPast, Proportions.CrossAlong),
            Direction.CrossBehind or Direction.Behind => (-Proportions.CrossPast, -Proportions.CrossAlong),
            Direction.LockFront => (-Proportions.LockPast, Proportions.LockAlong),
            Direction.LockBehind => (-Proportions.LockPast, -Proportions.LockAlong),

            // the first foot out, or in, goes half the way: the other half is left for the second
            Direction.Out => (open < Proportions.Apart * 0.7 ? opened : Proportions.Apart, 0),
            Direction.In => (open > Proportions.Apart * 0.85 ? opened : stance, 0),
            Direction.Left or Direction.Right => isRight == (direction == Direction.Right)
                ? (Math.Max(length, stance), 0)
                : (-Proportions.CrossPast, Proportions.CrossAlong),

            // a foot that goes round ends in front or behind: clockwise takes the right foot back and the left one forward
            Direction.Clockwise or Direction.Anticlockwise => (stance, isRight == (direction == Direction.Clockwise) ? -length : length),
            _ => (stance, 0),
        };
    }

    private double LengthOf(StepAction action, Direction direction, bool isOffBeat)
    {
        double usual = action.Kind switch
        {
            ActionKind.Rock or ActionKind.Press => Proportions.Rock,
            ActionKind.Lunge => Proportions.Long,
            ActionKind.Touch or ActionKind.Tap or ActionKind.Dig or ActionKind.Scuff or ActionKind.Brush or ActionKind.Flick
                or ActionKind.Grind => Proportions.Touch,
            ActionKind.Point or ActionKind.Kick or ActionKind.Sweep or ActionKind.Ronde => Proportions.Stretched,
            _ when isOffBeat => Proportions.OffBeat,
            _ when direction is Direction.Side or Direction.Left or Direction.Right => Proportions.Side,
            _ when direction is Direction.Forward or Direction.Back => Proportions.Walk,
            _ => Proportions.Side,
        };
        return action.Size switch
        {
            StepSize.Small => usual * Proportions.SmallFactor,
            StepSize.Large => Math.Min(Proportions.Long, Math.Max(usual, Proportions.Walk) * Proportions.LargeFactor),
            _ => usual,
        };
    }

    private void Hop(StepAction action, Foot foot, double turn)
    {
        double length = (action.Kind == ActionKind.Scoot ? Proportions.Scoot : Proportions.Hop) * _size.Height;
        FloorPoint way = new FloorPoint(0, length).Turned(_facing + Bearing(action.Direction, foot));
        way = IsStill(action.Direction) ? default : way;
        TurnOn(foot, turn);
        foreach (Foot each in Both)
        {
            FootPose pose = _feet[(int)each];
            _feet[(int)each] = pose.At(pose.Place + way);
            _motions[(int)each] = pose.Height > 0 ? FootMotion.Swing : action.Kind == ActionKind.Scoot ? FootMotion.Slide : FootMotion.Jump;
        }

        Meet(foot, action.Contact);
    }

    private static bool IsStill(Direction direction) => direction is Direction.Unstated or Direction.InPlace or Direction.Up
        or Direction.Down or Direction.Home or Direction.Together or Direction.Centre or Direction.In or Direction.Out;

    // Degrees clockwise from straight ahead.
    private static double Bearing(Direction direction, Foot foot) => direction switch
    {
        Direction.Back => 180,
        Direction.Side => Sign(foot) * 90,
        Direction.DiagonalForward => Sign(foot) * 45,
        Direction.DiagonalBack => Sign(foot) * 135,
        Direction.DiagonalForwardAcross => Sign(foot) * -45,
        Direction.DiagonalBackAcross => Sign(foot) * -135,
        Direction.Left => -90,
        Direction.Right => 90,
        _ => 0,
    };

    private void JumpBoth(StepAction action, double turn)
    {
        FloorPoint middle = FloorPoint.Between(_feet[0].Place, _feet[1].Place, 0.5);
        FloorPoint half = ((_feet[1].Place - _feet[0].Place) * 0.5).Turned(turn);
        double height = _size.Height;
        switch (action.Direction)
        {
            case Direction.Out:
                half = new FloorPoint(Proportions.Apart / 2 * height, 0).Turned(_facing);
                break;
            case Direction.CrossFront or Direction.Across:
                half = new FloorPoint(-Proportions.CrossPast / 2 * height, Proportions.CrossAlong / 2 * height).Turned(_facing);
                break;
            case Direction.CrossBehind:
                half = new FloorPoint(-Proportions.CrossPast / 2 * height, -Proportions.CrossAlong / 2 * height).Turned(_facing);
                break;
            case Direction.Unstated or Direction.InPlace or Direction.Up or Direction.Down:
                break;
            default:
                half = new FloorPoint(Proportions.Stance / 2 * height, 0).Turned(_facing);
                break;
        }

        if (!IsStill(action.Direction) && action.Direction is not (Direction.CrossFront or Direction.CrossBehind or Direction.Across))
        {
            middle += new FloorPoint(0, Proportions.Hop * height).Turned(_facing + Bearing(action.Direction, Foot.Right));
        }

        foreach (Foot foot in Both)
        {
            FootPose pose = _feet[(int)foot];
            _feet[(int)foot] = new FootPose(0, 0, _facing + Rest(foot), action.Contact == Contact.Air ? Contact.Flat : action.Contact, 0)
                .At(middle + (half * Sign(foot)));
            _motions[(int)foot] = action.Kind == ActionKind.Slide && pose.Height == 0 ? FootMotion.Slide : FootMotion.Jump;
            _isGesture[(int)foot] = false;
        }
    }

    // Up to a half turn both balls stay and the legs uncross by themselves; a longer way round one foot has to be set anew.
    private void Unwind(Foot foot, double turn)
    {
        TurnOnBoth(turn);
        if (Math.Abs(turn) <= 225)
        {
            return;
        }

        Foot moved = _weight.FreeFoot() ?? foot;
        _feet[(int)moved] = _feet[(int)moved].At(Beside(moved));
        _motions[(int)moved] = FootMotion.Travel;
    }

    private void Twist(ActionKind kind, Direction direction, Foot? only)
    {
        foreach (Foot foot in Both)
        {
            if (only is null || only == foot)
            {
                (double angle, bool onHeel) = TwistOf(kind, direction, foot);
                TwistTo(foot, _facing + Rest(foot) + (angle * Proportions.SwivelDegrees), onHeel);
            }
        }
    }

    // Where the toe of a foot points, from -1 (left) to 1 (right), and whether the foot gets there on its heel.
    private (double Toe, bool OnHeel) TwistOf(ActionKind kind, Direction direction, Foot foot)
    {
        bool toRight = direction == Direction.Right || (direction is not Direction.Left && foot == Foot.Right);
        int way = toRight ? 1 : -1;
        bool leads = (foot == Foot.Right) == (direction != Direction.Left);
        bool returns = IsInward(direction);
        return kind switch
        {
            ActionKind.FanToe or ActionKind.SplitToes => (returns ? 0 : way, true),
            ActionKind.SwivelToes or ActionKind.SwivelToe => (returns ? 0 : way, true),
            ActionKind.FanHeel or ActionKind.SplitHeels => (returns ? 0 : -way, false),
            ActionKind.SwivelHeels or ActionKind.SwivelHeel or ActionKind.Twist => (returns ? 0 : -way, false),

            // the leading foot turns out on its heel, the other one on its ball: swivets to the same side, applejacks to a V
            ActionKind.Swivet => (returns ? 0 : way, leads),
            ActionKind.Applejack => (returns ? 0 : leads ? way : -way, leads),
            _ => (returns || direction == Direction.Unstated ? 0 : way, false),
        };
    }

    private void TwistTo(Foot foot, double angle, bool onHeel)
    {
        FootPose pose = _feet[(int)foot];
        if (!onHeel)
        {
            _feet[(int)foot] = pose with { Angle = angle };
            return;
        }

        FloorPoint ball = pose.Heel(_size) + new FloorPoint(0, _size.HeelToBall).Turned(angle);
        if ((ball - _feet[(int)foot.Other()].Place).Length > Proportions.Long * _size.Height)
        {
            // feet that walk apart toe by heel stop where the legs end
            return;
        }

        _feet[(int)foot] = (pose with { Angle = angle }).At(ball);
        _motions[(int)foot] = FootMotion.OnHeel;
    }

    // The part of the foot that an action names meets the floor, also when the foot was in the air before.
    private void Meet(Foot foot, Contact contact)
    {
        if (contact == Contact.Air)
        {
            return;
        }

        FootPose pose = _feet[(int)foot];
        _motions[(int)foot] = pose.Height > 0 ? FootMotion.Travel : _motions[(int)foot];
        _feet[(int)foot] = pose with { Contact = contact, Height = 0 };
    }

    private void SetDown(Foot foot)
    {
        FootPose pose = _feet[(int)foot];
        if (pose.Height > 0 || pose.Contact == Contact.Air)
        {
            _feet[(int)foot] = pose with { Height = 0, Contact = Contact.Flat };
            if (_motions[(int)foot] == FootMotion.Still)
            {
                _motions[(int)foot] = FootMotion.Travel;
            }
        }
    }

    // Who turned toes or heels, or rose, stands flat again as soon as the other foot acts alone; a turn stays on the ball.
    private void Settle(StepAction action, Weight weightAfter)
    {
        if (action.Foot.ToFoot() is not { } acting)
        {
            _hasActed.AsSpan().Fill(action.Foot == ActingFoot.Both);
            return;
        }

        _hasActed[(int)acting] = true;
        Foot standing = acting.Other();
        if (!_hasActed[(int)standing] && action.Turn.Sign == 0 && _weight.StandingFoot() == standing && weightAfter.StandingFoot() == standing)
        {
            FootPose pose = _feet[(int)standing];
            _feet[(int)standing] = pose.Height > 0 ? pose : pose with { Contact = Contact.Flat };
        }
    }

    private FloorPoint Beside(Foot foot)
        => _feet[(int)foot.Other()].Place + new FloorPoint(Sign(foot) * Proportions.Stance * _size.Height, 0).Turned(_facing);

    private bool IsTogether()
    {
        FloorPoint apart = (_feet[1].Place - _feet[0].Place).Turned(-_facing) * (1 / _size.Height);
        return Math.Abs(apart.X - Proportions.Stance) < 0.5 * Proportions.Stance && Math.Abs(apart.Y) < 0.5 * Proportions.Stance;
    }

    private double Distance() => (_feet[1].Place - _feet[0].Place).Length;

    // The hips are over the standing foot, as near as the other leg lets them be.
    private FloorPoint Body()
    {
        FloorPoint left = _feet[0].Place;
        FloorPoint right = _feet[1].Place;
        if (_weight.StandingFoot() is not { } standing)
        {
            return FloorPoint.Between(left, right, 0.5);
        }

        double distance = Distance();
        double share = Math.Max(Proportions.FreeShare, distance > 0 ? 1 - (_size.Reach / distance) : 0);
        return standing == Foot.Left ? FloorPoint.Between(left, right, share) : FloorPoint.Between(right, left, share);
    }

    private static double Rest(Foot foot) => Sign(foot) * Proportions.ToeOutDegrees;

    private FootPose Moved(FootPose pose, FloorPoint body)
        => (pose with { Angle = pose.Angle - _facing }).At((pose.Place - body).Turned(-_facing));
}
