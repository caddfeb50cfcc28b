using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Words on where a foot goes.
internal sealed partial class ClauseBuilder
{
    private void DirTerm(Term term, int at)
    {
        Meaning dir = term.Meaning;
        if (dir.Special == "shoulder")
        {
            if (_current.TurnSide is null)
            {
                _current.TurnSide = dir.Side;
            }

            Widen(term);
            return;
        }

        if (_pending is Link.None && dir.Direction is Direction.In or Direction.Out && _current is { Dir: null, Amount: null, Head.Verb: null }
            && ((IsFan(_current.Head) && _current.Head!.Figures[0].Rows.Count > 1)
                || _current.Head is { Figures: [{ Rows: [{ Action: { Kind: ActionKind.PopKnee, Direction: Direction.In or Direction.Out } }] }, ..] }))
        {
            // "R toe fan out in out in", "R knee in out in out": the name has the first of them, and each of the others is danced
            Close(Link.None);
        }

        if (_pending is Link.None && dir.Direction is Direction.CrossFront or Direction.CrossBehind
            && _current is { IsFigure: true, FootFirst: false, Dir: null, DirSide: null, Amount: null, Feet: [{ } goes, { } crosses] }
            && crosses.Foot == goes.Foot.Other() && NextIndex(at + 1) is int by && (by < 0 || _terms[by].Meaning.Side == goes.Foot)
            && _current.Head!.Figures.Any(f => FigureVariants.CrossesFirst(f, dir.Direction)))
        {
            // "weave left R over L": the way, and the foot that begins
            _current.DirSide = goes.Foot;
            _current.Feet.RemoveAt(0);
        }

        bool onThe = term.Text.StartsWith("on the ", StringComparison.OrdinalIgnoreCase)
            || (at > 0 && _terms[at - 1] is { Kind: TermKind.Filler } on && on.Text.ToLowerInvariant() is "on the" or "the" or "on");
        if (onThe && at + 1 < _end && _terms[at + 1].Text.Equals("step", StringComparison.OrdinalIgnoreCase) && NextIndex(at + 2) < 0
            && _current is { IsFigure: true, Amount: not null, Detail.Count: 0 } && _current.Head!.Figures[0].Rows.Count > 2)
        {
            // "jazz box turning 1/4 left on the back step"
            _current.OnWay = dir.Direction;
            Widen(_terms[at + 1]);
            _skipsStep = true;
            return;
        }

        if (at > 0 && PreviousPart(at) is "body" or "shoulder" or "shoulders" && (_current.Head is not null || _current.Feet.Count > 0))
        {
            // "opening the body to the left corner"
            _current.HasStyle = true;
            Widen(term);
            return;
        }

        if (dir is { Direction: Direction.Side, Side: Foot round } && at > 0 && _terms[at - 1] is { Kind: TermKind.Filler } way
            && way.Text.ToLowerInvariant() is "around" or "round" && _current is { Feet.Count: > 0, Dir: null, Amount: null }
            && _pending is Link.None)
        {
            // "walk R, L, R, L around to the right": the way round, how far comes after
            Close(Link.None);
            _current.HasTurnWord = true;
            _current.SaysCircle = true;
            _current.TurnSide = round;
            Widen(term);
            return;
        }

        if (dir.Direction is Direction.CrossFront && term.Text.Equals("over", StringComparison.OrdinalIgnoreCase) && _pending is Link.None
            && _current is { Head: null, HasTurnWord: true, Amount: not null, TurnSide: null, Feet.Count: 0, Dir: null }
            && NextIndex(at + 1) is int shoulder and >= 0 && _terms[shoulder].Meaning.Side is Foot about && NextIndex(shoulder + 1) < 0)
        {
            // "1/2 turn over left": the shoulder
            _current.TurnSide = about;
            _skipsFoot = true;
            Widen(term);
            return;
        }

        bool onward = _pending is Link.Soft && !_with && dir.Direction is Direction.CrossFront or Direction.CrossBehind
            && !term.Text.StartsWith("cross", StringComparison.OrdinalIgnoreCase)
            && _current is
            {
                Feet.Count: 1, Dir.Direction: Direction.Forward or Direction.Back, Reference: null, Amount: null,
                Head: null or { Verb: ActionKind.Step or ActionKind.Touch or ActionKind.Point or ActionKind.Kick }
            }
            && NextIndex(at + 1) is int over
                && (over < 0 || (_terms[over].Meaning.Side is Foot stood && stood != _current.Feet[0].Foot && NextIndex(over + 1) < 0));
        if (onward)
        {
            // "R forward and across L": one place, told in two words
            _pending = Link.None;
            _current.Dir = dir;
            _current.DirText = term.Text;
            Widen(term);
            return;
        }

        if (_pending is Link.Soft && !_with && dir.Direction is Direction.Side or Direction.Out && NextIndex(at + 1) < 0
            && _current is
            {
                Feet.Count: 1, Dir.Direction: Direction.Forward or Direction.Back, Reference: null, Amount: null, DirSide: null, Diagonal: false,
                Head: null or { Verb: ActionKind.Step }
            }
            && (dir.Side is null || dir.Side == _current.Feet[0].Foot))
        {
            // "step R forward and to the right", "step R forward and out": between the two
            _pending = Link.None;
            _current.Diagonal = true;
            Widen(term);
            return;
        }

        bool ofArms = at > 0 && IsArm(_terms[at - 1]);
        bool ofNumber = term.Text.Equals("over", StringComparison.OrdinalIgnoreCase) && at + 1 < _end && _terms[at + 1].Kind == TermKind.Number;
        if (ofArms || ofNumber)
        {
            Widen(term);
            return;
        }

        if (_current.Head?.Verb is ActionKind.Sweep or ActionKind.Ronde && _current.Dir is not null && dir.Side is null && _pending is Link.None)
        {
            // "sweep from behind round to the front": one way, told at both ends
            Widen(term);
            return;
        }

        int previous = PreviousIndex(at - 1);
        bool ofTurn = dir.Direction == Direction.Side && dir.Side is not null && _current.TurnSide is null && previous >= 0
            && (_terms[previous].Kind is TermKind.Amount or TermKind.Turn
                || (_terms[previous].Kind == TermKind.Move && IsTurnVerb(_terms[previous].Meaning)
                && _terms[previous].Meaning.Verb is ActionKind.Pivot or ActionKind.Unwind))
            && _pending is not Link.Amp;
        if (ofTurn)
        {
            _current.TurnSide = dir.Side;
            Widen(term);
            return;
        }

        if (dir.Direction is Direction.Clockwise or Direction.Anticlockwise && (_current.Amount is not null || _current.HasTurnWord
            || _current.Head is { Verb: ActionKind.Pivot or ActionKind.Unwind } or { NamesAmount: true }))
        {
            // "pivot a half turn clockwise": the way round
            _current.TurnSide = dir.Direction == Direction.Clockwise ? Foot.Right : Foot.Left;
            Widen(term);
            return;
        }

        bool letter = dir.Side is Foot beside && term.Text.Length == 4 && term.Text.StartsWith("to ", StringComparison.OrdinalIgnoreCase)
            && _current.Feet.Count > 0 && _current.Feet[^1].Foot != beside && _current.Dir is null && _pending is Link.None
            && _current.Head?.Verb is null or ActionKind.Step or ActionKind.Touch or ActionKind.Drag or ActionKind.Slide or ActionKind.Tap;
        bool gestureTo = dir is { Direction: Direction.Side, Side: Foot at0 }
            && (term.Text.StartsWith("to ", StringComparison.OrdinalIgnoreCase) || term.Text.StartsWith("at ", StringComparison.OrdinalIgnoreCase))
            && !term.Text.Contains("side", StringComparison.OrdinalIgnoreCase) && _current is { Feet.Count: 1, Dir: null, Reference: null }
            && _pending is Link.None
            && _current.Feet[0].Foot != at0 && (_current.Head?.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Drag or ActionKind.Slide
                    or ActionKind.Dig
                || (_current.Head is { Verb: ActionKind.Step } && _current.HeadText.StartsWith("join", StringComparison.OrdinalIgnoreCase))
                || (_current.Head is { Verb: ActionKind.Step }
                && term.Text.Equals("to the " + (at0 == Foot.Right ? "right" : "left") + " foot", StringComparison.OrdinalIgnoreCase)))
            && NextIndex(at + 1) is int foot0 && (foot0 < 0 || _terms[foot0].Kind is TermKind.Part);
        gestureTo |= dir is { Direction: Direction.Side, Side: Foot at1 } && _current is { Feet.Count: 1, Dir: null, Reference: null }
            && _current.Feet[0].Foot != at1 && at + 1 < _end && _terms[at + 1].Text.Equals("foot", StringComparison.OrdinalIgnoreCase)
            && _pending is Link.None;
        gestureTo |= dir is { Direction: Direction.Side, Side: Foot at2 } && !term.Text.Contains("side", StringComparison.OrdinalIgnoreCase)
            && _current is
            {
                Feet.Count: 1, Dir.Direction: Direction.Back or Direction.In or Direction.Up, Reference: null,
                Head.Verb: ActionKind.Drag or ActionKind.Slide
            }
            && _current.Feet[0].Foot != at2 && _pending is Link.None && NextIndex(at + 1) < 0;
        if (gestureTo)
        {
            // "touch left to right": no foot touches out past the other
            _current.Reference = dir.Side;
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Together };
            Widen(term);
            return;
        }

        if (letter)
        {
            // "R to L": beside it
            _current.Reference = dir.Side;
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Together };
            Widen(term);
            return;
        }

        bool endsFigure = _current is { IsFigure: true, Feet.Count: 2 } && dir.Direction == Direction.Together && _pending is Link.None
            && _current.HeadText.Contains("touch", StringComparison.OrdinalIgnoreCase)
            && NextIndex(at + 1) is int endFoot and >= 0 && _terms[endFoot].Meaning.Side == _current.Feet[0].Foot;
        if (endsFigure)
        {
            // "vine left and touch right beside left": where the touch of the figure is made
            _skipsFoot = true;
            Widen(term);
            return;
        }

        if (dir.Direction is Direction.Back && _current.Dir?.Direction is Direction.Back && _pending is Link.None && at + 1 < _end
            && _terms[at + 1] is { Kind: TermKind.Dir, Meaning.Special: "diag" })
        {
            // "right back to the back right corner"
            Widen(term);
            return;
        }

        StartIfPending(TermKind.Dir, at);

        // after "beside it" a foot begins the next move
        bool footFollows = NextIndex(at + 1) is int afterDir and >= 0 && _terms[afterDir].Kind is TermKind.Side or TermKind.Foot
            && !term.Text.EndsWith(" it", StringComparison.OrdinalIgnoreCase);
        if (_placesStart && _pending is Link.None && footFollows && _current is { Head: not null, Feet.Count: > 0, Dir: null } && !_current.IsFigure
            && dir.Side is null && dir.Direction is Direction.Back or Direction.Forward or Direction.Side or Direction.LockBehind
            or Direction.CrossBehind
            && !(dir.Direction is Direction.LockBehind or Direction.CrossBehind && _terms[NextIndex(at + 1)].Meaning.Side != _current.Feet[^1].Foot))
        {
            Close(Link.None);
        }

        bool afterRecover = _current is { Head.Verb: ActionKind.Recover, Feet.Count: 1, Dir: null } && footFollows
            && dir.Direction is Direction.CrossFront or Direction.CrossBehind && _pending is Link.None;
        if (afterRecover && _current.HeadText.StartsWith("rock", StringComparison.OrdinalIgnoreCase) && NextIndex(NextIndex(at + 1) + 1) < 0
            && !term.Text.StartsWith("cross", StringComparison.OrdinalIgnoreCase) && _terms[NextIndex(at + 1)].Meaning.Side != _current.Feet[0].Foot)
        {
            // "rock onto left behind right": where it rocks to
            afterRecover = false;
        }

        bool closing = (SaysClosing(term.Text) || dir.Special == "lock")
            && !term.Text.Contains(' ', StringComparison.Ordinal) && _current is { Feet.Count: 1 }
            && (_current.Dir is { Direction: Direction.Back } || _current is { Dir: null, Head.Verb: ActionKind.Step }) && footFollows
            && _pending is Link.None && _terms[NextIndex(at + 1)].Meaning.Side != _current.Feet[0].Foot;
        if (_current is { Head.Verb: ActionKind.Hold or ActionKind.Clap or ActionKind.Snap, Feet.Count: 0, Dir: null } && footFollows
            && _pending is Link.None && dir.Side is null)
        {
            // "clap cross left over right"
            Close(Link.None);
        }

        bool turned = _current is { TurnSide: not null, Feet.Count: 0, Dir: null, Head: { Verb: ActionKind.Pivot } or { Verb: null } }
            && IsTurnVerb(_current.Head) && (_current.HasVerb || VariantParts.IsStepAndPivot(_current.Head!.Figures[0]));
        if (turned && footFollows && dir.Side is null && dir.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together
            && _pending is Link.None)
        {
            // "pivot quarter left cross right over left"
            Close(Link.None);
        }

        if (footFollows && _pending is Link.None && dir.Side is null && dir.Direction is Direction.CrossFront or Direction.CrossBehind
            && _current is { IsTurnOnly: true, Amount: not null, TurnSide: not null }
            && _clauses is [.., { Head.Verb: ActionKind.Step, Feet: [{ } stepped], Dir.Direction: Direction.Forward, Amount: null, WeightNote: null }]
            && _terms[NextIndex(at + 1)].Meaning.Side == stepped.Foot)
        {
            // "step right forward 1/4 turn left cross right over left": the turn brings the weight to the other foot
            Close(Link.Hard);
        }

        bool recoverClose = _current is { Head.Verb: ActionKind.Recover, Feet.Count: 1, Dir: null } && footFollows
            && dir.Direction is Direction.Together && term.Text.StartsWith("clos", StringComparison.OrdinalIgnoreCase) && _pending is Link.None
            && _terms[NextIndex(at + 1)].Meaning.Side != _current.Feet[0].Foot;
        bool crossAfter = VerbFirst && term.Text.Equals("cross", StringComparison.OrdinalIgnoreCase) && footFollows && _pending is Link.None
            && _current is
            {
                Head.Verb: ActionKind.Stomp or ActionKind.Scuff or ActionKind.Hitch or ActionKind.Brush or ActionKind.Flick,
                Feet.Count: 1, Dir: null
            };
        if (recoverClose || crossAfter)
        {
            Close(Link.None);
        }

        bool sameAgain = _current is { HasVerb: true, IsFigure: false, Feet.Count: 1, Dir: null, Head.Verb: not ActionKind.Step }
            && dir.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together && dir.Side is null && _pending is Link.None
            && footFollows && _terms[NextIndex(at + 1)].Meaning.Side == _current.Feet[0].Foot;
        if (afterRecover || closing || sameAgain)
        {
            // "recover L cross R over", "step L back close R": the second is a step of its own
            Close(Link.None);
        }

        if (_current is { IsFigure: true, Feet.Count: > 0 } && _pending is Link.None && footFollows && dir.Side is null
            && dir.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together or Direction.LockBehind or Direction.LockFront
            && (_current.Feet.Count >= 2 || _terms[NextIndex(at + 1)].Meaning.Side == _current.Feet[^1].Foot
                || (VerbFirst && _current.Head!.Figures.All(f => f.Rows.Count > 2 && f.Rows[0].Action.Direction != dir.Direction)
                && !_current.HeadText.Contains("cross", StringComparison.OrdinalIgnoreCase)
                && !_current.HeadText.Contains("box", StringComparison.OrdinalIgnoreCase)
                && !_current.HeadText.Contains("touch", StringComparison.OrdinalIgnoreCase) && dir.Direction is not Direction.LockBehind)))
        {
            // "rock R to side recover L cross R over": the cross is a step of its own
            Close(Link.None);
        }

        if (dir.Special == "diag" && dir.Side is Foot bare && term.Text.Length > 0 && char.ToLowerInvariant(term.Text[0]) is 'r' or 'l'
            && _current.Feet.Count == 0 && dir.Side is not null)
        {
            // "R diag forward": the foot, and the diagonal on its side
            _current.Feet.Add(new FootWord(bare, false, false));
            _current.Diagonal = true;
            Widen(term);
            return;
        }

        if (dir.Special == "diag")
        {
            if (_current.Dir is not null && _current.Dir.Direction is not (Direction.Forward or Direction.Back or Direction.Side)
                && _current.Diagonal)
            {
                Close(Link.None);
            }

            _current.Diagonal = true;
            _current.DirSide ??= dir.Side;
            Widen(term);
            return;
        }

        if (_current.Dir is null)
        {
            // a turn word with an amount, then a direction: "turn 1/4 left forward": the direction starts a step
            _current.Dir = dir;
            _current.DirText = term.Text;
            _current.DirSide ??= dir.Side;
            _current.DirFirst = _current.Head is null && _current.Feet.Count == 0;
            Widen(term);
            return;
        }

        if (_current is { Dir.Direction: Direction.Down or Direction.Up, IsFigure: false } && _pending is Link.None
            && dir.Direction is Direction.Side or Direction.Forward or Direction.Back
            && (NextIndex(at + 1) is int after && (after < 0 || _terms[after].Kind is TermKind.WeightTakes or TermKind.WeightOn)))
        {
            // "place the right foot down to the right side": down is how, the side is where
            _current.Dir = dir;
            _current.DirText = term.Text;
            _current.DirSide ??= dir.Side;
            Widen(term);
            return;
        }

        Direction present = _current.Dir.Direction;
        Direction coming = dir.Direction;
        bool feetAfter = NextIndex(at + 1) is int n and >= 0 && _terms[n].Kind is TermKind.Side or TermKind.Foot;
        if ((present, coming) is (Direction.CrossBehind, Direction.CrossFront) && term.Text.StartsWith("cross", StringComparison.OrdinalIgnoreCase)
            && _current.Reference is not null && NextIndex(at + 1) < 0 && _pending is Link.None)
        {
            // "RF behind LF cross": the verb comes last
            Widen(term);
            return;
        }

        if ((present, coming) is (Direction.Forward, Direction.CrossFront) && _current is { Feet.Count: 1, Reference: null }
            && _current.DirText.Contains("front", StringComparison.OrdinalIgnoreCase) && _pending is Link.None
            && NextIndex(at + 1) is int crossed and >= 0 && _terms[crossed].Meaning.Side is Foot under && under != _current.Feet[0].Foot
            && NextIndex(crossed + 1) < 0)
        {
            // "touch in front crossed over LF": one place, told in two words
            _current.Dir = dir;
            _current.DirText = term.Text;
            Widen(term);
            return;
        }

        if ((present, coming) is (Direction.Together, Direction.In) && _pending is Link.None && !feetAfter)
        {
            // "close it in"
            Widen(term);
            return;
        }

        if ((present, coming) is (Direction.CrossFront, Direction.CrossBehind))
        {
            _current.Dir = dir;
            Widen(term);
            return;
        }

        bool placing = coming is Direction.CrossFront or Direction.CrossBehind or Direction.Together or Direction.LockFront or Direction.LockBehind;
        bool aside = coming == Direction.Side && dir.Side is not null;
        int following = NextIndex(at + 1);
        bool referenceAfter = placing && following >= 0 && _terms[following].Kind is TermKind.Side or TermKind.Foot && _current.Feet.Count > 0
            && _terms[following].Meaning.Side != _current.Feet[^1].Foot;
        bool said = !string.Equals(term.Text, _current.DirText, StringComparison.OrdinalIgnoreCase);
        if (present == Direction.Together && aside && _current.Feet.Count > 0 && _current.Feet[^1].Foot != dir.Side && _pending is Link.None)
        {
            // "close left to right"
            _current.Reference = dir.Side;
            Widen(term);
            return;
        }

        if (present == Direction.Together && coming == Direction.CrossBehind && referenceAfter && _pending is Link.None)
        {
            // "close R slightly behind L": beside it, and a little behind; without the little it is behind
            _current.Dir = _current.Size < 0 || !_current.DirText.StartsWith("clos", StringComparison.OrdinalIgnoreCase) ? _current.Dir : dir;
            Widen(term);
            return;
        }

        if ((present, coming) is (Direction.Back, Direction.CrossBehind) && following < 0 && at == _end - 1 && _pending is Link.None
            && _current is { Reference: null, Head.Verb: ActionKind.Step } && IsPutting(_current.HeadText))
        {
            // "right foot put back behind": behind nothing, and so back
            Widen(term);
            return;
        }

        bool verbAfter = following >= 0 && present == coming && _current.Reference is null
            && _terms[following] is { Kind: TermKind.Move, Meaning.Verb: not null };
        if (_pending is Link.None && placing && said && (referenceAfter || _current.Feet.Count == 0 || following < 0 || verbAfter)
            && (present == coming || (present, coming) is (Direction.LockBehind, Direction.CrossBehind)
            or (Direction.LockBehind, Direction.CrossFront) or (Direction.Back, Direction.CrossBehind) or (Direction.Back, Direction.CrossFront)
            or (Direction.Forward, Direction.CrossFront) or (Direction.CrossFront, Direction.CrossBehind) or (Direction.Back, Direction.Together)
            or (Direction.In, Direction.Together) or (Direction.Up, Direction.Together) or (Direction.Up, Direction.CrossFront)
            or (Direction.Up, Direction.CrossBehind) or (Direction.InPlace, Direction.Together) or (Direction.Home, Direction.Together)))
        {
            // "cross R over L", "lock L behind R", "close L beside R", "rock L back behind R"
            if (present is not (Direction.LockBehind or Direction.LockFront))
            {
                _current.Dir = dir;
            }
            else if (coming == Direction.CrossFront)
            {
                _current.Dir = _current.Dir with { Direction = Direction.LockFront, Special = "" };
            }
            else if (coming == Direction.CrossBehind)
            {
                // "lock R behind L" says where; a bare "lock" goes by the step before
                _current.Dir = _current.Dir with { Direction = Direction.LockBehind, Special = "" };
            }

            Widen(term);
            return;
        }

        if (placing && _pending is Link.None && feetAfter && dir.Side is null && _current is { HasVerb: true, IsFigure: false, Feet.Count: 1, Reference: null }
            && _terms[following].Meaning.Side == _current.Feet[0].Foot && present is Direction.Forward or Direction.Back or Direction.Side
            && _current.Head!.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig or ActionKind.Kick)
        {
            // "touch left toe back close left": the foot comes from there, in a step of its own
            Close(Link.None);
            _current.Dir = dir;
            _current.DirText = term.Text;
            _current.DirFirst = true;
            Widen(term);
            return;
        }

        bool sameKind = present == coming || (present, coming) is (Direction.CrossFront, Direction.Forward) or (Direction.CrossFront, Direction.Side)
            or (Direction.Side, Direction.Out) or (Direction.Out, Direction.Side) or (Direction.Back, Direction.Together)
                or (Direction.Home, Direction.Together)
            or (Direction.Together, Direction.InPlace) or (Direction.InPlace, Direction.Together) or (Direction.Back, Direction.InPlace)
                or (Direction.LockBehind, Direction.CrossBehind) or (Direction.LockBehind, Direction.CrossFront)
            or (Direction.Forward, Direction.Out) or (Direction.Back, Direction.Out) or (Direction.Out, Direction.Forward)
                or (Direction.Out, Direction.Back)
            or (Direction.Back, Direction.Home) or (Direction.Back, Direction.In) or (Direction.In, Direction.Together)
                or (Direction.Together, Direction.Home)
            or (Direction.CrossBehind, Direction.Side) or (Direction.Side, Direction.Forward) or (Direction.Down, Direction.InPlace)
                or (Direction.Up, Direction.Forward) or (Direction.Forward, Direction.Up)
            or (Direction.Down, Direction.Together) or (Direction.Home, Direction.InPlace) or (Direction.CrossFront, Direction.In);
        bool soleMove = _current.HasVerb && !_current.IsFigure
            && (coming is not (Direction.Together or Direction.CrossFront or Direction.CrossBehind) || dir.Side is not null);
        if (_pending is Link.None && sameKind && !(present == coming && _current.Head is null && dir.Side is null)
            && (soleMove || coming is Direction.Together or Direction.InPlace or Direction.CrossFront or Direction.CrossBehind or Direction.Home)
            && !(_current.Head is null && feetAfter && _current.Feet.Count > 0))
        {
            if ((present, coming) is (Direction.LockBehind, Direction.CrossFront))
            {
                _current.Dir = dir with { Direction = Direction.LockFront };
            }
            else if (coming is Direction.Together && present is Direction.Back or Direction.In or Direction.Down)
            {
                _current.Dir = dir;
            }
            else if ((present, coming) is (Direction.Out, Direction.Forward or Direction.Back)
                or (Direction.Forward or Direction.Back, Direction.Out))
            {
                _current.Dir = present == Direction.Out ? dir : _current.Dir;
                _current.Diagonal = true;
            }

            _current.DirSide ??= dir.Side;
            Widen(term);
            return;
        }

        if (_current.IsFigure)
        {
            // a figure takes its direction once; another one begins a step
            _current.DirSide ??= dir.Side;
            if (dir.Side is not null || coming is Direction.Forward or Direction.Back or Direction.Side or Direction.InPlace)
            {
                Widen(term);
                return;
            }
        }

        Close(Link.None);
        _current.Dir = dir;
        _current.DirText = term.Text;
        _current.DirSide = dir.Side;
        _current.DirFirst = true;
        Widen(term);
    }
}
