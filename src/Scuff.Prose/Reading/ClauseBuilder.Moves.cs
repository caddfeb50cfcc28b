using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Verbs and names of figures.
internal sealed partial class ClauseBuilder
{
    private void MoveTerm(Term term, int at)
    {
        Meaning move = term.Meaning;
        if (_skipsStep)
        {
            _skipsStep = false;
            return;
        }

        if (at > 0 && _terms[at - 1] is { Kind: TermKind.Filler } on && on.Text.ToLowerInvariant() is "on the" or "the" or "on" && NextIndex(at + 1) < 0
            && move is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Step } one] }, ..] }
            && term.Text.EndsWith(" step", StringComparison.OrdinalIgnoreCase)
            && _current is { IsFigure: true, Amount: not null, Detail.Count: 0 } && _current.Head!.Figures[0].Rows.Count > 2 && _pending is Link.None)
        {
            // "jazz box turning 1/4 right on the side step"
            _current.OnWay = one.Action.Direction;
            Widen(term);
            return;
        }

        if (_pending is Link.None && move is { Verb: ActionKind.Step, IsIng: false } && _current is { IsTurnOnly: true, Amount: not null, TurnSide: not null }
            && _clauses is [.., { Head.Verb: ActionKind.Step, Feet: [{ } stepped], Dir.Direction: Direction.Forward, Amount: null, WeightNote: null }]
            && NextIndex(at + 1) is int again and >= 0 && _terms[again].Kind is TermKind.Side or TermKind.Foot
            && _terms[again].Meaning.Side == stepped.Foot)
        {
            // "step R forward turn half left step R forward": the turn brings the weight to the other foot, and the same foot steps again
            Close(Link.Hard);
        }

        if (_current is { IsRepeat: true, Head: null } && _pending is Link.None
            && (_current.Feet.Count > 0 || _current.DirSide is not null || _current.IsMirrored || _current.RepeatCounts is not null)
            && move is
            {
                Verb: ActionKind.Scuff or ActionKind.Brush or ActionKind.Hitch or ActionKind.Hook or ActionKind.Flick
                or ActionKind.Clap, Figures.Count: < 2
            })
        {
            // "repeat to the left but scuff R": how it ends this time
            Close(Link.Soft);
            _pending = Link.None;
        }

        if (AmountOfTurn(term.Text) is int amount && _current is { Amount: null } && (_current.HasTurnWord || IsTurnVerb(_current.Head)))
        {
            // "unwind full turn left"
            _current.Amount = amount;
            _current.HasTurnWord = true;
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (at > 0 && _terms[at - 1].Kind is TermKind.Move && _pending is Link.None && move.Verb is ActionKind.Point
            && _current is { Feet.Count: 0, Dir: null, Amount: null, Head.Verb: ActionKind.Touch } && at + 1 < _end
            && _terms[at + 1].Kind is TermKind.Side or TermKind.Foot)
        {
            // "touch point R at side": two words for one move, of which the second says more
            _current.Head = move;
            Widen(term);
            return;
        }

        if (at > 0 && _terms[at - 1] is { Kind: TermKind.Dash, Text: "/" }
            && _current is { Feet.Count: 0, Dir: null, Amount: null, Head.Verb: ActionKind first }
            && move.Verb is ActionKind second && (first, second) is (ActionKind.Step, ActionKind.Rock) or (ActionKind.Rock, ActionKind.Step)
            or (ActionKind.Touch, ActionKind.Tap) or (ActionKind.Tap, ActionKind.Touch) or (ActionKind.Touch, ActionKind.Point)
            or (ActionKind.Point, ActionKind.Touch) or (ActionKind.Drag, ActionKind.Slide) or (ActionKind.Slide, ActionKind.Drag))
        {
            // "step/rock R forward", "touch/tap": two words for one move, of which the one that says more stands
            _current.Head = first is ActionKind.Step ? move : _current.Head;
            _current.HeadText = first is ActionKind.Step ? term.Text : _current.HeadText;
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Hold && term.Text.StartsWith("rest", StringComparison.OrdinalIgnoreCase) && _pending is Link.None
            && _current is { Head: null, Part: "heel" or "toe", Feet.Count: 1, Amount: null })
        {
            // "let the right heel rest on the floor in front of you"
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Shift && term.Text.StartsWith("tak", StringComparison.OrdinalIgnoreCase) && _pending is Link.None
            && _current is { Head: null, Feet.Count: 0, Dir.Direction: Direction.Out or Direction.In or Direction.Home or Direction.Centre, WeightNote: null }
            && _clauses.Count > 0 && NextIndex(at + 1) is int taker and >= 0 && _terms[taker].Meaning.Side is Foot taking)
        {
            // "fan R toes out, in, out taking weight on R": the last of the ways, and the weight with it
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = taking;
            _skipsFoot = true;
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Recover && _current is { Head.Verb: ActionKind.Recover, Feet.Count: 0, Dir: null, Amount: null } && _pending is Link.None
            && _current.HeadText.Contains("weight", StringComparison.OrdinalIgnoreCase))
        {
            // "let your weight come back onto the left": the weight, and what it does
            _current.Head = move;
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Bump && term.Text.ToLowerInvariant() is "hip" or "hips" && _pending is not Link.Amp
            && (_pending is not Link.Soft || _with) && _current.Head?.Verb is ActionKind.Sway or ActionKind.RollHips)
        {
            // "sway those hips to the right": what is swayed
            _pending = Link.None;
            _with = false;
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Bump && _current is { Head.Verb: ActionKind.Bump, Feet.Count: 0, Dir: null } && _pending is Link.None && at > 0
            && _terms[at - 1].Kind is TermKind.Filler)
        {
            // "bump of hips to the left"
            Widen(term);
            return;
        }

        if (move is { Verb: ActionKind.Step, IsIng: true } && _current is { IsFigure: true, Dir: null } && NextIndex(at + 1) < 0
            && term.Text.ToLowerInvariant() is "advancing" or "progressing" or "going")
        {
            // "triple step R, L, R while advancing"
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Forward };
            _current.DirText = term.Text;
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (_current is { Head.Verb: ActionKind.Grind, Dir: null } && _pending is Link.None
            && move is { Verb: null, Figures: [{ Rows: [{ Action: { Kind: ActionKind.Dig } dug }] }, ..] })
        {
            // "grind L heel forward": the heel that is ground, and where
            _current.Dir = new Meaning(TermKind.Dir) { Direction = dug.Direction };
            _current.DirText = term.Text;
            Widen(term);
            return;
        }

        if (at > 0 && PreviousIndex(at - 1) is int arms and >= 0 && IsArm(_terms[arms]) && move.Verb is ActionKind.Bump or ActionKind.Sway)
        {
            // "hands on hips"
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Drag or ActionKind.Slide && NextIndex(at + 1) is int drawn and >= 0 && IsArm(_terms[drawn])
            && _current.HasContent)
        {
            // "recover L pulling arms in"
            _current.HasStyle = true;
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Hold && at + 1 < _end && _terms[at + 1].Kind == TermKind.Style && IsArm(_terms[at + 1]))
        {
            // "hold hat brim"
            _current.HasStyle = true;
            Widen(term);
            return;
        }

        if (move is { IsIng: true, Verb: not null } && _pending is Link.None && _current.HasContent)
        {
            if (_current is { Head.Verb: ActionKind.Pivot, Amount: not null } && move.Verb is ActionKind.Step or ActionKind.Touch or ActionKind.Point)
            {
                // "pivot 1/4 left on L stepping R to side": the turn goes with the step
                _current.Head = move;
                _current.HeadText = term.Text;
                _current.HasTurnWord = true;
                _current.Feet.Clear();
                Widen(term);
                return;
            }

            if (move.Verb is ActionKind.Step && FeetOnlyFollow(at + 1) && (_current is { IsTurnOnly: true, SaysCircle: true }
                || (_current is { IsFigure: true, Feet.Count: < 2 } && _current.Head!.Figures[0].Id == "walk_around")))
            {
                // "walk a half circle left stepping R, L, R, L"
                Widen(term);
                Close(Link.Hard);
                return;
            }

            if (move.Verb is ActionKind.Step && _current is { IsTurnOnly: true, Amount: 4 or 6, TurnSide: not null, TurnTo: null } && FeetOnlyFollow(at + 1))
            {
                // "3/4 turn R stepping R, L, R": the steps share the turn
                _current.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Step, Special = "walk" };
                _current.HeadText = term.Text;
                _current.SaysCircle = true;
                Widen(term);
                Close(Link.Hard);
                return;
            }

            if (move.Verb is ActionKind.Step && _current is { IsTurnOnly: true, Amount: 8, TurnSide: not null } && FeetOnlyFollow(at + 1))
            {
                // "full turn left stepping R, L"
                Widen(term);
                return;
            }

            if (move.Verb is ActionKind.Step && _current is { IsFigure: true, Feet.Count: < 2 } && _current.Head!.Figures[0].Rows.Count > 1
                && FeetOnlyFollow(at + 1)
                && (_current.Feet.Count == 0 || NextIndex(at + (at + 1 < _end && _terms[at + 1].Kind is TermKind.Separator ? 2 : 1)) is int begins and >= 0
                && _terms[begins].Meaning.Side == _current.Feet[0].Foot))
            {
                _current.Feet.Clear();

                // "shuffle forward stepping R, L, R"
                Widen(term);
                return;
            }

            if (_current.IsFigure && _current.Head!.Figures.All(f => f.Rows.Count == 1 && f.Rows[0].Action.Kind == move.Verb))
            {
                // "hinge 1/2 right stepping R to side"
                Widen(term);
                return;
            }
        }

        if (move is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.SplitToes or ActionKind.FanToe }, ..] }, ..] }
            && term.Text.EndsWith(" out", StringComparison.OrdinalIgnoreCase)
            && _current is { Head.Verb: ActionKind.Touch or ActionKind.Tap or ActionKind.Point, Feet.Count: 1, Dir: null } && _pending is Link.None)
        {
            // "touch your left toes out to the side"
            _current.Part = "toe";
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Out };
            _current.DirText = "out";
            Widen(term);
            return;
        }

        bool laid = move.Verb is ActionKind.Drop
            || move is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Dig or ActionKind.Touch or ActionKind.Point }] }, ..] };
        if (laid && _current is { Head.Verb: ActionKind.Step, Feet.Count: 1, Dir: null, Part.Length: 0 } && IsPutting(_current.HeadText)
            && _pending is Link.None)
        {
            // "put your right heel down", "put R heel forward"
            _current.Head = move;
            _current.HeadText = term.Text;
            Widen(term);
            return;
        }

        bool settled = _current is { Head.Verb: ActionKind.Step, Feet.Count: 1, Dir.Direction: Direction.Side or Direction.Out }
            && move.Verb is ActionKind.Sway or ActionKind.Bump or ActionKind.RollHips;
        settled |= _current is { Head: null or { Verb: ActionKind.Step or ActionKind.Rock or ActionKind.Recover }, Feet.Count: 1, Dir: not null }
            && move.Verb is ActionKind.Dip or ActionKind.Shimmy or ActionKind.RollBody;

        // "R forward pushing hips forward", "R to side bumping hips right, right": the foot goes there, whether "step" is written or not
        settled |= _current is { Head: null, FootFirst: true, Part.Length: 0, Feet.Count: 1, Amount: null, HasTurnWord: false }
            && (_current.Diagonal || _current.Dir?.Direction is Direction.Side or Direction.Out or Direction.Forward or Direction.Back or Direction.InPlace)
            && move.Verb is ActionKind.Sway or ActionKind.Bump or ActionKind.RollHips;
        settled |= _current is { Head.Verb: ActionKind.Step, Feet.Count: 1 }
            && (_current.Diagonal || _current.Dir?.Direction is Direction.Forward or Direction.Back)
            && move.Verb is ActionKind.Bump && term.Text.Contains("ing", StringComparison.OrdinalIgnoreCase);
        if (term.Text.Contains("ing", StringComparison.OrdinalIgnoreCase) && settled && _pending is Link.None && move.Verb is ActionKind.Sway or ActionKind.Bump
            && FeetOnlyFollow(at + 1) && NextIndex(at + 1) is int begun and >= 0 && _terms[begun].Meaning.Side == _current.Feet[0].Foot)
        {
            // "step R to side swaying hips R, L, R, L": the first goes with the step, the others follow it
            Close(Link.None);
            _current.Head = move;
            _current.HeadText = term.Text;
            _pending = Link.None;
            _current.FirstWithBefore = true;
            Widen(term);
            return;
        }

        if (term.Text.Contains("ing", StringComparison.OrdinalIgnoreCase) && settled && _pending is Link.None)
        {
            // "step R to side swaying right": how the step is made
            _current.HasStyle = true;
            int way = NextIndex(at + 1);
            _skipsFoot = way >= 0 && _terms[way].Kind is TermKind.Foot or TermKind.Side;
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Step && _current is { Head.Verb: ActionKind.Step, Feet.Count: 0, Dir: null, Amount: null }
            && _pending is Link.None && _current.HeadText.StartsWith("step", StringComparison.OrdinalIgnoreCase) && at > 1
            && _terms[at - 1].Kind is TermKind.Size or TermKind.Filler or TermKind.Move)
        {
            // "step a big step to the side"
            Widen(term);
            return;
        }

        bool scuffs = move is { Verb: ActionKind.Scuff or ActionKind.Brush }
            or { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Scuff or ActionKind.Brush }] }, ..] };
        if (_soThat && scuffs && _current is { Feet.Count: 1, Head: null or { Verb: ActionKind.Step } } && _pending is Link.None)
        {
            // "swing the left foot forward so that the heel scuffs"
            _current.Head = move;
            _current.HeadText = term.Text;
            _current.Part = "";
            Widen(term);
            return;
        }

        bool nameGoesOn = move.Verb is ActionKind.Step && term.Text.ToLowerInvariant() is "step" or "steps" && _current.IsFigure
            && _pending is Link.None && (NextIndex(at + 1) < 0
            || (_terms[NextIndex(at + 1)].Kind == TermKind.Foot && NextIndex(NextIndex(at + 1) + 1) < 0))
            && !_current.HeadText.Contains("step", StringComparison.OrdinalIgnoreCase)
                && _current.Head!.Figures.Any(f => f.Name.EndsWith("step", StringComparison.Ordinal));
        if (nameGoesOn)
        {
            // "L sailor 1/4 L step"
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Hitch or ActionKind.Hook && move.Verb == _current.Head?.Verb && _pending is Link.None && at > 0
            && _terms[at - 1].Text.ToLowerInvariant() is "into a" or "into" or "in a")
        {
            // "lift the left knee into a hitch"
            Widen(term);
            return;
        }

        if (IsArm(term) && _current is { Head: null, Feet.Count: > 0, Part.Length: 0, Amount: null } && _pending is not Link.Amp)
        {
            // "walk R, L swinging the arms": the foot walks, it does nothing with the arms
            Close(_pending is Link.Soft ? Link.Soft : Link.None);
            _pending = Link.None;
        }

        // "turn 1/4 left stepping R forward": the turn goes with the step
        if (move.Verb is ActionKind.Hold or ActionKind.Clap or ActionKind.Snap && move.Figures.Count == 0 && _current.HasContent)
        {
            // "L out hold": a hold is a move of its own
            Close(_pending is Link.Soft or Link.Amp ? _pending : Link.None);
            _pending = Link.None;
        }

        bool closes = move.Verb is ActionKind.Step && _current is { Head: null, Feet.Count: 1, Dir: not null } && _pending is Link.None
            && NextIndex(at + 1) < 0;
        if (closes)
        {
            // "RF beside LF put": the verb comes last
            _current.Head = move;
            _current.HeadText = term.Text;
            Widen(term);
            return;
        }

        if (_current.HasContent)
        {
            // "heel R fwd hook R over L", "cross L unwind 1/2 R": all is told of the foot before the verb
            bool told = _current is { Head: null, Feet.Count: 1, Dir: not null, Amount: null }
                && (move.Verb is ActionKind.Unwind || (_current.Part is "heel" or "toe" && move.Verb is ActionKind.Hook or ActionKind.Hitch or ActionKind.Flick
                or ActionKind.Kick or ActionKind.Stomp)
                || (_current.Part is "heel" or "toe" && move.Verb is ActionKind.Step && NextIndex(at + 1) is int place and >= 0
                && _terms[place] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Together or Direction.Home }));
            // "touch right out in out step right together": the last of a list of ways
            told |= _current is { Head: null, Feet.Count: 0, Dir.Direction: Direction.Out or Direction.In, Amount: null, Part.Length: 0 }
                && move.Verb is ActionKind.Step && _pending is Link.None && _clauses is [.., { Dir.Direction: Direction.Out or Direction.In }];
            bool turnGoesOn = _current.IsTurnOnly && _current.Amount is not null && _pending is Link.None && _current.WeightNote is null;
            bool modifier = turnGoesOn || (_current.Head is null && !_current.IsTurnOnly && _current.Reference is null
                && _pending is Link.None or Link.Hard && !HasOwnFootAfter(at))
                && !(_current.HasTurnWord && _current.Feet.Count > 0 && _current.Dir is not null);
            if (_current.Head is null && _pending is Link.None or Link.Hard && _current.Feet.Count == 0 && !_current.IsTurnOnly)
            {
                // only a direction or a part so far: it belongs to the verb ("cross rock", "side touch", "heel grind")
                modifier = true;
            }

            if (!modifier || told || _pending is Link.Soft or Link.Amp)
            {
                Close(_pending is Link.Soft or Link.Amp ? _pending : Link.None);
            }
        }

        _pending = Link.None;
        _current.SaysIt |= term.Text.EndsWith(" it", StringComparison.OrdinalIgnoreCase) && move.Verb is ActionKind.Step;
        _current.BothFeet |= move.Verb is ActionKind.PopKnee && term.Text.Contains("both", StringComparison.OrdinalIgnoreCase);
        _current.TurnFirst = (_current.IsTurnOnly && _current.Amount is not null) || _current.TurnsInto;
        _current.Head = move;
        _current.HeadText = term.Text;
        Widen(term);
    }

    /// <summary>Whether nothing but feet, two at least, stands up to the end or to another move.</summary>
    private bool FeetOnlyFollow(int from)
    {
        int feet = 0;
        for (int i = from; i < _end; i++)
        {
            switch (_terms[i].Kind)
            {
                case TermKind.Foot or TermKind.Side:
                    feet++;
                    break;
                case TermKind.Filler or TermKind.Join or TermKind.Dash or TermKind.Amp:
                    break;
                case TermKind.Separator when feet < 2 && NextIndex(i + 1) is int next and >= 0 && _terms[next].Kind is TermKind.Foot or TermKind.Side:
                    break;
                default:
                    return feet >= 2;
            }
        }

        return feet >= 2;
    }

    internal static int? AmountOfTurn(string text) => text.ToLowerInvariant() switch
    {
        "full turn" => 8,
        "half turn" => 4,
        "quarter turn" => 2,
        "three quarter turn" => 6,
        _ => null,
    };

    private bool HasOwnFootAfter(int at)
    {
        // "R side touch L": the touch has its own foot, so "R side" is a step
        int next = NextIndex(at + 1);
        bool footNext = next >= 0 && _terms[next].Kind is TermKind.Side or TermKind.Foot;
        return footNext && _current.Feet.Count > 0 && _terms[next].Meaning.Side != _current.Feet[^1].Foot && _current.Dir is not null;
    }

    private static bool IsPutting(string verb) => verb.Length > 2 && verb[..3].ToLowerInvariant() is "put" or "pla" or "set" or "pos";
}
