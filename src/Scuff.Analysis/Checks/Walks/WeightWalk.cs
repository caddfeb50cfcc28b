using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>
/// Walks through written actions with the weight in mind and notes each trouble once. After a trouble it goes on as if
/// the action had been danced as written (or as it was evidently meant), so that one fault does not cascade; where the
/// weight is unknown it says nothing.
/// </summary>
internal sealed class WeightWalk
{
    private readonly List<WeightFinding> _findings = [];
    private readonly Dictionary<WrittenStep, Weight> _before = new(ReferenceEqualityComparer.Instance);
    private Weight _weight;
    private WalkedStep? _giver;
    private WalkedStep? _previous;
    private WalkedStep? _lastFooted;
    private WalkedStep? _loose;
    private WalkedStep? _pending;
    private bool _told;
    private bool _afterDoubt;
    private bool _skipsEffect;

    private WeightWalk(Weight start) => _weight = start;

    /// <summary>What was found, in order.</summary>
    public IReadOnlyList<WeightFinding> Findings => _findings;

    /// <summary>The weight at the end, as written.</summary>
    public Weight End => _afterDoubt ? Weight.Unknown : _weight;

    /// <summary>Walks over the actions.</summary>
    /// <param name="steps">The actions in order.</param>
    /// <param name="start">Weight before them.</param>
    /// <param name="repeats">Whether the first action follows the last.</param>
    public static WeightWalk Over(IReadOnlyList<WalkedStep> steps, Weight start, bool repeats)
    {
        WeightWalk walk = new(start);
        foreach (WalkedStep step in steps)
        {
            walk.Take(step, again: false);
        }

        if (repeats && steps.Count > 0 && FirstNeed(steps) is { } first && !walk.HasFaultIn(steps[^1].Section))
        {
            walk.TakeAgain(first);
        }

        return walk;
    }

    /// <summary>Weight before a walked action, or unknown.</summary>
    public Weight Before(WrittenStep step) => _before.GetValueOrDefault(step);

    /// <summary>
    /// The first action that needs a free foot, if nothing before it moves the weight or is unknown; else null.
    /// </summary>
    public static WalkedStep? FirstNeed(IEnumerable<WalkedStep> steps)
    {
        foreach (WalkedStep step in steps)
        {
            if (step.IsDoubtful || step.Action.Effect == WeightEffect.Unknown)
            {
                return null;
            }

            if (step.NeedsFreeFoot)
            {
                return step;
            }

            if (step.Action.Effect != WeightEffect.Keeps)
            {
                return null;
            }
        }

        return null;
    }

    private bool HasFaultIn(Section section) => _findings.Any(f => ReferenceEquals(f.Step.Section, section));

    private void Take(WalkedStep step, bool again)
    {
        if (step.IsAfterGap || (_afterDoubt && !step.IsDoubtful))
        {
            Forget();
        }

        _before[step.Written] = _afterDoubt || step.IsDoubtful ? Weight.Unknown : _weight;
        if (step.Action.Effect == WeightEffect.Unknown)
        {
            Forget();
            return;
        }

        if (step.IsDoubtful)
        {
            _afterDoubt = true;
        }
        else
        {
            Judge(step, again);
        }

        if (!_skipsEffect)
        {
            Apply(step);
        }

        _skipsEffect = false;
    }

    /// <summary>The first action of the next repetition: only judged.</summary>
    private void TakeAgain(WalkedStep first)
    {
        if (!_afterDoubt)
        {
            Judge(first, again: true);
        }
    }

    private void Judge(WalkedStep step, bool again)
    {
        if (step.Foot is not { } foot)
        {
            return;
        }

        if (step.Action.Traits.FootRule == FootRule.Standing)
        {
            if (_weight.FreeFoot() == foot)
            {
                Note(WeightTrouble.FootNotStanding, step, foot);

                // a hop by the other foot, or a leap onto this one: what follows fits one of them
                _weight = Weight.Unknown;
                _giver = null;
                _skipsEffect = true;
            }

            return;
        }

        if (!step.NeedsFreeFoot || IsExcused(step))
        {
            return;
        }

        bool newSection = again || (_lastFooted is { } last && !ReferenceEquals(last.Section, step.Section));
        if (_pending is { } pending)
        {
            _pending = null;
            if (newSection || pending.Action.Kind == ActionKind.Unwind)
            {
                Note(WeightTrouble.EndUnstated, pending, foot);
                _weight = foot.Other().ToWeight();
                return;
            }
        }

        if (_weight == Weight.Shared && !step.Written.FootIsNamed)
        {
            Note(WeightTrouble.FootUnnamed, step, foot);
            return;
        }

        if (_weight.StandingFoot() != foot)
        {
            return;
        }

        // what was meant by a doubtful verb is better asked than called an error
        if (_loose is { } loose)
        {
            Note(WeightTrouble.EndUnstated, loose, foot);
            _weight = foot.Other().ToWeight();
        }
        else if (_giver is { Action: { Kind: ActionKind.Stomp, Effect: WeightEffect.Takes }, Written.WeightIsStated: false } stomp
            && ReferenceEquals(stomp, _lastFooted))
        {
            Note(WeightTrouble.StompUnclear, step, foot);
            _weight = foot.Other().ToWeight();
        }
        else if (_giver is { Written.WeightIsStated: false, Action.Kind: ActionKind.Sway or ActionKind.Slide or ActionKind.Drag or ActionKind.Press }
            || IsDoubtfulClose(_previous, foot))
        {
            Note(WeightTrouble.CloseUnclear, step, foot);
            _weight = foot.Other().ToWeight();
        }
        else if (!again && IsReach(step) && _previous is { } before && IsReach(before) && before.Foot == foot.Other())
        {
            NoteGesture(WeightTrouble.SwitchNeedsStep, step, foot);

            // with the missing step the weight is on the other foot, without it here: believe whichever comes next
            _weight = Weight.Unknown;
            _giver = null;
        }
        else if (again)
        {
            Note(WeightTrouble.DoesNotRepeat, step, foot);
        }
        else if (newSection)
        {
            Note(WeightTrouble.HandOver, step, foot);
            _told = step.Action.Effect == WeightEffect.Keeps;
        }
        else if (step.Action.Effect == WeightEffect.Keeps)
        {
            NoteGesture(WeightTrouble.GestureNotFree, step, foot);
        }
        else
        {
            Note(WeightTrouble.FootNotFree, step, foot);
        }
    }

    private void Apply(WalkedStep step)
    {
        Weight after = step.Action.WeightAfter(_weight);
        bool isLoose = !step.IsDoubtful && !step.Written.WeightIsStated;
        if (step.Action.Effect != WeightEffect.Keeps)
        {
            _giver = step;
            _told = false;
            _loose = null;
            _pending = null;
        }

        if (isLoose && IsUnwind(step))
        {
            _pending = step;
        }
        else if (isLoose && after == Weight.Shared && SharesLoosely(step.Action.Kind))
        {
            _pending = step;
        }
        else if (isLoose && step.Foot is null && step.Action.Kind is ActionKind.RollHips or ActionKind.RollBody or ActionKind.Bump or ActionKind.Sway)
        {
            _loose = step;
        }

        _weight = after;
        if (step.Foot is not null)
        {
            _previous = step;
            _lastFooted = step;
        }
        else if (step.Action.Foot == ActingFoot.Both)
        {
            _previous = null;
            _lastFooted = step;
        }
    }

    private void Forget()
    {
        _weight = Weight.Unknown;
        _giver = null;
        _previous = null;
        _loose = null;
        _pending = null;
        _told = false;
        _afterDoubt = false;
    }

    private void Note(WeightTrouble trouble, WalkedStep step, Foot foot)
        => _findings.Add(new WeightFinding(trouble, step, foot, _giver, _previous));

    /// <summary>A gesture moves no weight, so a row of them is one fault.</summary>
    private void NoteGesture(WeightTrouble trouble, WalkedStep step, Foot foot)
    {
        if (!_told)
        {
            Note(trouble, step, foot);
            _told = true;
        }
        else
        {
            _findings[^1].Followers.Add(step);
        }
    }

    /// <summary>
    /// A drop lowers a foot that may carry already, and a recover may come to the foot that never lost the weight (after a
    /// press); a recover onto the foot that has just rocked is a slip.
    /// </summary>
    private bool IsExcused(WalkedStep step) => step.Action.Kind switch
    {
        ActionKind.Drop => true,
        ActionKind.Recover => _giver is null || _giver.Action.Kind != ActionKind.Rock || _giver.Foot != step.Foot,
        ActionKind.Grind => _giver is not null && _giver.Foot == step.Foot && _giver.Action.Contact == Contact.Heel,
        _ => false,
    };

    private static bool IsDoubtfulClose(WalkedStep? previous, Foot foot) => previous is
    {
        Written.WeightIsStated: false,
        Action: { Effect: WeightEffect.Keeps, Kind: ActionKind.Slide or ActionKind.Drag or ActionKind.Press },
    } && previous.Foot == foot.Other();

    /// <summary>An unwind that a named figure does not settle by its own definition.</summary>
    private static bool IsUnwind(WalkedStep step) => step.Action.Kind == ActionKind.Unwind
        && (step.Move.Steps.Count < 2 || ReferenceEquals(step.Move.Steps[0], step.Written));

    private static bool SharesLoosely(ActionKind kind) => kind is ActionKind.Swivel or ActionKind.SwivelHeels or ActionKind.SwivelToes
        or ActionKind.Swivet or ActionKind.Applejack or ActionKind.Twist or ActionKind.SplitHeels or ActionKind.SplitToes;

    /// <summary>A heel, point, kick or toe away from the body: two of them in a row by different feet need a step between.</summary>
    private static bool IsReach(WalkedStep step) => step.Action.Effect == WeightEffect.Keeps && step.Action.Kind switch
    {
        ActionKind.Dig or ActionKind.Point or ActionKind.Kick => true,
        ActionKind.Touch or ActionKind.Tap => step.Action.Direction
            is not (Direction.Together or Direction.InPlace or Direction.Home or Direction.Unstated or Direction.In),
        _ => false,
    };
}
