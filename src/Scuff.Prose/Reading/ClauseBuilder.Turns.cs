using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Amounts of turn and words of turning.
internal sealed partial class ClauseBuilder
{
    private void AmountTerm(Term term, int at)
    {
        if (_current.Head?.Verb is ActionKind.RollHips && _current.Amount is null && NextIndex(at + 1) is int round and >= 0
            && _terms[round].Text.Contains("circle", StringComparison.OrdinalIgnoreCase))
        {
            // "roll the hips in a full circle": no turn of the body
            Widen(term);
            return;
        }

        if (_current is { Head.Verb: ActionKind.Sweep or ActionKind.Ronde or ActionKind.RollKnee, Amount: null } && _pending is Link.None && at + 1 < _end
            && _terms[at + 1] is { Kind: TermKind.Turn } shape && shape.Text.EndsWith("circle", StringComparison.OrdinalIgnoreCase))
        {
            // "sweep R foot in a half circle from front to back": no turn of the body
            Widen(term);
            return;
        }

        bool stepLike = _current.HasContent && !_current.IsTurnOnly && !_current.IsFigure && !IsTurnVerb(_current.Head) && !_current.HasTurnWord
            && _current.TurnSide is null
            && _current is not { Head.Verb: ActionKind.Swivel or ActionKind.Twist, Feet.Count: 0, Dir: null }
            && !(_current.Amount is null && _current.Feet.Count > 0 && _current.Dir is null
                && (_pending is Link.None || (_with && _current.IsFeetOnly)));
        if (_current is { Amount: null, Dir: null, Feet.Count: 1, Part: "ball", Head: null, Reference: null } && _pending is Link.None)
        {
            // "on ball of L 1/4 turn right": a turn on that foot
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = _current.Feet[0].Foot;
            _current.SaysBall = true;
            _current.Feet.Clear();
            _current.Part = "";
            _current.Amount = term.Meaning.Value;
            Widen(term);
            return;
        }

        bool leadsOn = !_with && TurnLeadsOn(at);
        if (_pending is Link.Soft && _current.HasContent && (!_current.IsFigure || leadsOn) && (!IsTurnVerb(_current.Head) || leadsOn)
            && !(_with && _current.IsFeetOnly))
        {
            Close(Link.Soft);
        }
        else if (stepLike || (leadsOn && _pending is Link.None && !_current.IsTurnOnly && _current.Feet.Count > 0))
        {
            // "hold 1/2 turn left": nobody holds and turns
            Close(_current.Head?.Verb is ActionKind.Hold ? Link.Hard : Link.None);
        }
        else if (_current.Amount is not null)
        {
            // "1/2 turn 1/4 turn": two turns
            Close(Link.None);
        }

        _pending = Link.None;
        _current.Amount = term.Meaning.Value;
        Widen(term);
    }

    /// <summary>Whether the turn at this place is followed, without a comma, by a foot and where it goes: "1/2 turn left L forward".</summary>
    private bool TurnLeadsOn(int at)
    {
        bool side = false;
        for (int i = at; i < _end; i++)
        {
            switch (_terms[i].Kind)
            {
                case TermKind.Amount or TermKind.Turn or TermKind.Filler:
                    break;
                case TermKind.Side or TermKind.Dir when !side && _terms[i].Meaning.Side is not null:
                    side = true;
                    break;
                case TermKind.Side or TermKind.Foot when side:
                    int next = NextIndex(i + 1);
                    return next >= 0 && (_terms[next].Kind is TermKind.Dir || (_terms[next].Kind is TermKind.Move && !VerbFirst));
                case TermKind.Join when side && i + 1 < _end && _terms[i + 1] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Step }:
                    return true;
                case TermKind.Move when side && _terms[i].Meaning is { Verb: ActionKind.Step, IsIng: true }:
                    int stepping = NextIndex(i + 1);
                    return _current is { IsFigure: true, Feet.Count: > 0 } && stepping >= 0 && _terms[stepping].Meaning.Side is Foot steps
                        && (steps != _current.Feet[0].Foot) == EndsOnFirstFoot(_current.Head!.Figures[0]);
                default:
                    return false;
            }
        }

        return false;
    }

    /// <summary>Whether heels or toes are said to go out, in or back to the middle here, and nothing else before the next separator or "and".</summary>
    private bool PlaceOfPart(int at)
    {
        int place = NextIndex(at);
        return place >= 0 && _terms[place] is
        {
            Kind: TermKind.Dir, Meaning.Direction: Direction.Out or Direction.In or Direction.Together or Direction.Centre or Direction.Home
        }
            && NextIndex(place + 1) < 0;
    }

    private static bool EndsOnFirstFoot(StepDefinition figure)
    {
        PatternRow? last = figure.Rows.LastOrDefault(r => r.Action.Effect == WeightEffect.Takes);
        return last is null || last.Foot != RelativeFoot.Other;
    }

    private void TurnTerm(Term term, int at)
    {
        if (term.Text.StartsWith("mak", StringComparison.OrdinalIgnoreCase) && NextIndex(at + 1) is int made and >= 0
            && _terms[made] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures.Count: > 0 } figure } && !IsTurnVerb(figure)
            && _current is { Head: null, Amount: null, HasTurnWord: false })
        {
            // "starting with the right, make a grapevine": no turn
            Widen(term);
            return;
        }

        if (_current is { Head: null, Part: "heels" or "toes" or "heel" or "toe", Amount: null, HasTurnWord: false, Dir: null } && _pending is Link.None
            && PlaceOfPart(at + 1))
        {
            // "both heels turn outwards": parts of the feet turn, the body does not
            Widen(term);
            return;
        }

        if (_current.Head?.Verb is ActionKind.RollHips or ActionKind.RollKnee or ActionKind.Sweep or ActionKind.Ronde && _current.Amount is null
            && term.Text.Contains("circle", StringComparison.OrdinalIgnoreCase))
        {
            // "roll your hips in a circle to the left": no turn of the body
            Widen(term);
            return;
        }

        bool onTurn = _current is { Head.Verb: ActionKind.Hitch or ActionKind.Kick or ActionKind.Hook or ActionKind.Flick or ActionKind.Touch, Amount: null }
            && _pending is Link.None && NextIndex(at + 1) < 0 && at > 1 && _terms[at - 1].Kind is TermKind.Filler && _terms[at - 2].Kind is TermKind.Filler
            && _terms[at - 1].Text.ToLowerInvariant() is "the" && _terms[at - 2].Text.ToLowerInvariant() is "on" or "in" or "during";
        if (onTurn && term.Text.Equals("turn", StringComparison.OrdinalIgnoreCase))
        {
            // "hitching the right on the turn"
            _current.OnTurn = true;
            Widen(term);
            return;
        }

        if (_current is { Head: null or { Special: "walk" or "run" } }
            && (term.Text.StartsWith("circl", StringComparison.OrdinalIgnoreCase) || term.Text.EndsWith("circle", StringComparison.OrdinalIgnoreCase)
            || term.Text.Equals("arc", StringComparison.OrdinalIgnoreCase)))
        {
            _current.SaysCircle = true;
        }

        if (_current.Amount is not null && (!_current.HasTurnWord || _current.TurnSide is null) && _pending is Link.None)
        {
            _current.HasTurnWord = true;
            Widen(term);
            return;
        }

        if (_current is { IsFigure: true, Feet.Count: > 0, Amount: null } && _pending is not Link.Amp && !_with && TurnLeadsOn(at))
        {
            // "chasse R turn 1/4 R stepping L forward"
            _current.TurnSide = null;
            Close(_pending is Link.Soft ? Link.Soft : Link.None);
            _pending = Link.None;
        }

        if (_current.IsFigure || IsTurnVerb(_current.Head))
        {
            if (_pending is not Link.Amp)
            {
                _pending = Link.None;
                _current.HasTurnWord = true;
                Widen(term);
                return;
            }
        }

        if (_current is { Amount: null, Dir: null, Feet.Count: 1, Part: "ball", Head: null } && _pending is Link.None)
        {
            // "on ball of R make a 1/2 turn": a turn on that foot
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = _current.Feet[0].Foot;
            _current.SaysBall = true;
            _current.Feet.Clear();
            _current.Part = "";
            _current.HasTurnWord = true;
            Widen(term);
            return;
        }

        if (_current is { Amount: null, Dir: null, Feet.Count: > 0 } && _pending is Link.None)
        {
            _current.HasTurnWord = true;
            Widen(term);
            return;
        }

        if (_current.HasContent)
        {
            bool sideOnly = _current.TurnSide is not null && _current.Head is null && _current.Feet.Count == 0 && _current.Dir is null;
            if (!sideOnly && !(_current.IsTurnOnly && _current.Amount is null))
            {
                Close(_pending is Link.Soft ? Link.Soft : Link.None);
            }
        }

        _pending = Link.None;
        _current.HasTurnWord = true;
        Widen(term);
    }
}
