using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// "Right" and "left": a foot, a way to go, or the way round of a turn.
internal sealed partial class ClauseBuilder
{
    private void SideTerm(Term term, int at)
    {
        Foot side = term.Meaning.Side!.Value;
        int next = NextIndex(at + 1);
        int previous = PreviousIndex(at - 1);
        bool ofBody = previous >= 0 && _terms[previous] is { Kind: TermKind.Part, Meaning.Part: "body" or "shoulder" or "shoulders" }
            && NextIndex(at + 1) < 0;
        if (ofBody || (at + 1 < _end && IsSidedArm(_terms[at + 1])) || (at > 0 && IsArm(_terms[at - 1])))
        {
            // "right arm", "look left": not a foot
            _current.HasStyle = true;
            Widen(term);
            return;
        }

        // right foot, right heel, right toe, right knee, right hip
        if (next >= 0 && _terms[next].Kind == TermKind.Part && _terms[next].Meaning.Part is "heel" or "toe" or "ball" or "heels" or "toes"
            && next == at + 1 && !_terms[next].Text.StartsWith("on", StringComparison.OrdinalIgnoreCase))
        {
            FootTerm(term, at, true);
            return;
        }

        if (_current is { Feet: [{ IsCertain: true } acting], FootFirst: true, Head: null, Dir: null, Amount: null } && acting.Foot == side && at + 1 < _end
            && _terms[at + 1] is { Kind: TermKind.Move, Meaning: { Verb: ActionKind.Step, IsIng: false } } && _pending is Link.None)
        {
            // "RF right step", "RF small right step": the way it goes
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = side };
            _current.DirText = term.Text;
            _current.DirSide = side;
            Widen(term);
            return;
        }

        if (_current is { Part: "ball", Head: null, Feet.Count: 0, Dir: null })
        {
            // "on ball of R"
            FootTerm(term, at, true);
            return;
        }

        if (_current is { IsFigure: true, Feet.Count: 0, TurnSide: null } && _pending is Link.None && next < 0
            && _current.HeadText.EndsWith("turning", StringComparison.OrdinalIgnoreCase))
        {
            // "shuffle turning right": the way round
            _current.TurnSide = side;
            Widen(term);
            return;
        }

        if (_current.IsTurnOnly && _pending is Link.None && SaysOnto(at - 1))
        {
            // "turn onto left": the foot it ends on
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = side;
            Widen(term);
            return;
        }

        if (previous >= 0 && _terms[previous].Kind is TermKind.Move && WholeTurn(_terms[previous].Text) is int whole && _current.Feet.Count == 0
            && _current.IsFigure && TwoFeetFollow(at + 1))
        {
            // "full turn left travelling forward R, L": the steps are named, so the side is the way round
            _current.Head = null;
            _current.HeadText = "";
            _current.Amount = whole;
            _current.HasTurnWord = true;
            _current.TurnSide = side;
            Widen(term);
            return;
        }

        if (previous >= 0 && _terms[previous].Kind is TermKind.Move && WholeTurn(_terms[previous].Text) is not null && _pending is Link.None
            && _current is { Head.Verb: ActionKind.Unwind or ActionKind.Pivot, Amount: not null, TurnSide: null })
        {
            // "unwind full turn left"
            _current.TurnSide = side;
            Widen(term);
            return;
        }

        bool turnedFigure = _current is { Amount: not null, IsFigure: true } && previous >= 0
            && _terms[previous] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ NamedBy: NamedBy.FirstFoot, Rows.Count: > 2 }, ..] } }
            && _current.Feet.Count == 0;
        turnedFigure |= previous >= 0 && _terms[previous]
            is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ NamedBy: NamedBy.Turn, Rows.Count: > 1 }, ..] } }
            && _current.Feet.Count == 0;
        if ((turnedFigure || TurnsByName(previous))
            && ((_current.Feet.Count == 1 && _current.Feet[0].Foot != side && next < 0)
            || (_current.Feet.Count == 0 && next >= 0 && _terms[next] is { Kind: TermKind.Move, Meaning: { Verb: ActionKind.Step, IsIng: true } }
            && FeetOnlyFollow(next + 1))) && _current.TurnSide is null && _pending is Link.None)
        {
            // "left half turn shuffle right", "half turn shuffle right stepping L, R, L"
            _current.TurnSide = side;
            Widen(term);
            return;
        }

        if (previous == at - 1 && previous >= 0 && (next < 0 || _terms[next].Kind is TermKind.Times) && _pending is Link.None
            && _current is { Feet.Count: 0, TurnSide: null, Amount: null }
            && _terms[previous] is { Kind: TermKind.Move, Meaning: { Verb: null, NamesAmount: true, Figures.Count: > 0 } paddle }
            && paddle.Figures.All(f => f.NamedBy == NamedBy.ActingFoot && f.TotalTurn.Sign != 0))
        {
            // "paddle quarter turn left": the way round
            _current.TurnSide = side;
            Widen(term);
            return;
        }

        if (_current is { IsFigure: true, Feet.Count: 0, Dir: null, DirSide: null } && _pending is Link.None && next < 0 && at > 0
            && _terms[at - 1] is { Kind: TermKind.Filler } goes && IsGoing(goes.Text))
        {
            // "voltas travelling left": where they go, and no foot
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = side };
            _current.DirText = term.Text;
            _current.DirSide = side;
            Widen(term);
            return;
        }

        bool turnBefore = previous >= 0
            && (_terms[previous].Kind is TermKind.Amount
            || (_terms[previous].Kind is TermKind.Turn && (_current.Amount is not null || !IsStepAfter(at)))
            || (_terms[previous].Kind is TermKind.Move && IsTurnVerb(_terms[previous].Meaning)
            && _terms[previous].Meaning.Verb is ActionKind.Pivot or ActionKind.Unwind));
        turnBefore |= previous >= 0 && _terms[previous].Kind is TermKind.Move && _terms[previous].Meaning is { Verb: null, Figures.Count: > 0 } named
            && named.Figures.Any(VariantParts.IsStepAndPivot) && _current.Feet.Count == 0
            && !(next >= 0 && (_terms[next].Kind is TermKind.Amount
            || (_terms[next].Kind is TermKind.Move && AmountOfTurn(_terms[next].Text) is not null)));
        turnBefore |= previous >= 0 && _terms[previous].Kind is TermKind.Move && _current.Feet.Count == 0
            && _terms[previous].Text.Contains("turn", StringComparison.OrdinalIgnoreCase)
            && _terms[previous].Meaning is { Verb: null, Figures.Count: > 0 } spin
                && spin.Figures.Any(f => f.Rows[f.Rows.Count - 1]
                is { Action: { Kind: ActionKind.Pivot, Turn.Sign: not 0 }, Foot: RelativeFoot.Same });
        turnBefore |= previous >= 0 && _terms[previous].Kind is TermKind.Move && _current.Feet.Count == 0 && _clauses.Count > 0
            && _terms[previous].Text.EndsWith("spiral", StringComparison.OrdinalIgnoreCase);
        turnBefore |= previous >= 0 && _terms[previous].Kind is TermKind.Move && _current.Feet.Count == 0
            && _terms[previous].Text.EndsWith(" turn", StringComparison.OrdinalIgnoreCase)
            && (next >= 0 ? _terms[next].Kind is TermKind.Side or TermKind.Foot
                : term.Text.Length > 2 && !_terms[previous].Text.Contains("step", StringComparison.OrdinalIgnoreCase)
                && _terms[previous].Meaning.Figures.All(f => f.Rows.Count == 3))
                && _terms[previous].Meaning is { Verb: null, Figures.Count: > 0 } turned
                && turned.Figures.All(f => f.TotalTurn.Sign != 0 && f.NamedBy == NamedBy.FirstFoot);
        turnBefore |= previous >= 0
            && _terms[previous] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Press }, ..] }, ..] } }
            && _current is { Feet.Count: 0, Amount: not null } && next < 0;
        if (turnBefore && (_current.TurnSide is null) && _pending is not (Link.Soft or Link.Amp))
        {
            _current.TurnSide = side;
            Widen(term);
            return;
        }

        bool turnAfter = next >= 0 && _terms[next].Kind is TermKind.Amount or TermKind.Turn && !OtherSideFollows(next);
        if (turnAfter && _current.TurnSide is null)
        {
            // "right 1/4 turn"; but "step right 1/4 turn" may mean the foot too: the side serves both
            if (_pending is Link.Soft or Link.Amp && _current.HasContent)
            {
                Close(_pending);
                _pending = Link.None;
            }

            bool verbBefore = _current.HasVerb && _current.Feet.Count == 0 && _current.Head!.Verb is not (ActionKind.Pivot or ActionKind.Unwind);
            if (verbBefore || (_current.IsFigure && _current.Feet.Count == 0))
            {
                _current.Feet.Add(new FootWord(side, false, false));
            }
            else if (_current.HasContent && !_current.IsFigure)
            {
                Close(Link.None);
            }

            _current.TurnSide = side;
            Widen(term);
            return;
        }

        FootTerm(term, at, false);
    }

    private static bool IsGoing(string word) => word.Split(' ')[0].ToLowerInvariant() is "travelling" or "traveling" or "travel" or "travels" or "moving"
        or "going" or "heading" or "progressing";

    private static int? WholeTurn(string name) => AmountOfTurn(name)
        ?? (name.StartsWith("full turn ", StringComparison.OrdinalIgnoreCase) || name.StartsWith("full spin", StringComparison.OrdinalIgnoreCase) ? 8 : null);

    /// <summary>Whether two feet and no more are listed after this place, with words of going and stepping at most before them.</summary>
    private bool TwoFeetFollow(int from)
    {
        int feet = 0;
        for (int i = from; i < _end; i++)
        {
            Term term = _terms[i];
            switch (term.Kind)
            {
                case TermKind.Side or TermKind.Foot:
                    feet++;
                    break;
                case TermKind.Filler or TermKind.Dash or TermKind.Join or TermKind.Style:
                case TermKind.Separator when term.Text is "," or "/" or "-":
                case TermKind.Dir when feet == 0 && term.Meaning.Side is null:
                case TermKind.Move when feet == 0 && term.Meaning is { Verb: ActionKind.Step, IsIng: true }:
                    break;
                default:
                    return false;
            }
        }

        return feet == 2;
    }

    private bool SaysOnto(int at)
    {
        for (int i = at; i >= 0 && _terms[i].Kind is TermKind.Filler; i--)
        {
            if (_terms[i].Text.StartsWith("onto", StringComparison.OrdinalIgnoreCase)
                || _terms[i].Text.StartsWith("on to", StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether the name at this place says how far it turns, and is called by its first foot.</summary>
    private bool TurnsByName(int at) => at >= 0
        && _terms[at] is { Kind: TermKind.Move, Meaning: { Verb: null, NamesAmount: true, Figures.Count: > 0 } named }
        && named.Figures.All(f => f.TotalTurn.Sign != 0 && f.NamedBy == NamedBy.FirstFoot && f.Rows.Count > 2);

    private bool IsStepAfter(int at)
    {
        int next = NextIndex(at + 1);
        return next >= 0 && _terms[next].Kind is TermKind.Dir && _current.HasVerb;
    }

    private bool OtherSideFollows(int at)
    {
        for (int i = at; i < _end && i < at + 6; i++)
        {
            if (_terms[i].Kind is TermKind.Side or TermKind.Foot)
            {
                // "right 1/4 turn left": the left belongs to the turn unless it starts a move of its own
                int next = NextIndex(i + 1);
                bool startsMove = next >= 0 && _terms[next].Kind is TermKind.Dir or TermKind.Move;
                int before = PreviousIndex(i - 1);
                bool glued = before >= 0 && _terms[before].Kind is TermKind.Amount or TermKind.Turn;
                return glued && !(startsMove && _terms[before].Kind is TermKind.Move);
            }

            if (_terms[i].Kind is TermKind.Dir
                && (_terms[i].Meaning.Side is not null || _terms[i].Meaning.Direction is Direction.Clockwise or Direction.Anticlockwise))
            {
                return true;
            }

            if (_terms[i].Kind is TermKind.Separator or TermKind.Move or TermKind.Join or TermKind.Then or TermKind.With or TermKind.Amp)
            {
                return false;
            }
        }

        return false;
    }
}
