using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Notes on the weight.
internal sealed partial class ClauseBuilder
{
    /// <summary>The clause that a note on the weight speaks of: a hold or a clap leaves it where the move before brought it.</summary>
    private Clause WeightOwner()
    {
        if (_current.HasContent && !IsStill(_current))
        {
            return _current;
        }

        // "bounce both heels twice, relaxed knees, weight ends on L": how it looks has no weight
        Clause? moved = _clauses.FindLast(c => !c.IsAmp && !IsStill(c) && !(c is { Head: null, Dir: null, HasStyle: true, Amount: null, Feet.Count: 0 }));
        return moved is { WeightNote: null } && (_current.HasContent || (_clauses.Count > 0 && IsStill(_clauses[^1]))) ? moved : Last();
    }

    // "weight is on L", "the weight rests on L", "keeping weight on L"
    private static bool SaysStaying(string words)
    {
        foreach (string stay in (ReadOnlySpan<string>)[" is", "stay", "rest", "remain", "keep", "kept", "still"])
        {
            if (words.Contains(stay, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The foot that weight is said to be brought to, and its place: "transferring the weight to L", "putting your weight on the left".</summary>
    private (Foot Foot, int At)? FootOfWeight(Term term, int at)
    {
        int next = at + 1;
        while (next < _end && _terms[next].Kind is TermKind.Filler)
        {
            next++;
        }

        bool moves = term.Text.StartsWith("transfer", StringComparison.OrdinalIgnoreCase) || term.Text.StartsWith("chang", StringComparison.OrdinalIgnoreCase)
            || term.Text.StartsWith("put", StringComparison.OrdinalIgnoreCase);
        if (!moves || next >= _end || _terms[next].Meaning.Side is not Foot foot)
        {
            return null;
        }

        bool onto = _terms[next].Kind is TermKind.Foot or TermKind.Side || (_terms[next].Kind is TermKind.Dir
            && _terms[next].Text.StartsWith("to ", StringComparison.OrdinalIgnoreCase)
            && !_terms[next].Text.EndsWith("side", StringComparison.OrdinalIgnoreCase));
        return onto ? (foot, next) : null;
    }

    /// <summary>"With the weight on your right foot step the left foot forward": where the weight is before the first step, which takes it.</summary>
    private bool TellsStart(Term term, int foot)
    {
        if (_clauses.Count > 0 || _current.HasContent || !(_with || term.Text.StartsWith("with", StringComparison.OrdinalIgnoreCase)))
        {
            return false;
        }

        int step = NextIndex(foot + 1);
        int other = step < 0 ? -1 : NextIndex(step + 1);
        return other >= 0 && _terms[step] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Step }
            && _terms[other].Kind is TermKind.Foot or TermKind.Side && _terms[other].Meaning.Side != _terms[foot].Meaning.Side;
    }

    private static bool IsStill(Clause clause) => clause.Head?.Verb is ActionKind.Hold or ActionKind.Clap or ActionKind.Snap;

    private void WeightOn(ref int at, Term term)
    {
        Clause owner = WeightOwner();
        int next = at + 1;
        while (next < _end && _terms[next].Kind is TermKind.Filler)
        {
            next++;
        }

        if (next < _end && _terms[next].Kind is TermKind.Side or TermKind.Foot)
        {
            if (_current is { Head.Verb: ActionKind.Rock, Feet: [{ } rocking], WeightNote: null } && _pending is Link.None or Link.Hard
                && rocking.Foot != _terms[next].Meaning.Side && term.Text.Contains("back", StringComparison.OrdinalIgnoreCase))
            {
                // "rock R back weight back on L cross R over L": all in one breath
                Close(Link.None);
                _current.Link = Link.Hard;
            }

            bool moves = term.Text.EndsWith("onto", StringComparison.OrdinalIgnoreCase)
                || term.Text.EndsWith(" on to", StringComparison.OrdinalIgnoreCase);
            bool actsItself = !_current.HasContent && _current.Link is Link.Hard
                && (_clauses.Count > 0 ? moves || term.Text.Contains("back", StringComparison.OrdinalIgnoreCase)
                    || term.Text.Contains("return", StringComparison.OrdinalIgnoreCase) || _clauses[^1].Head?.Verb is ActionKind.Press
                    || _clauses[^1].Head?.Verb is ActionKind.Rock or ActionKind.Lunge or ActionKind.Grind
                    || _clauses.Exists(c => c is { Stands: true, Part: "heel" })
                : term.Text.Contains("back", StringComparison.OrdinalIgnoreCase));
            if (actsItself)
            {
                // "rock R back, weight again on L": a recover, or a note; the solver decides
                _current.Head = new Meaning(TermKind.Move) { Verb = _clauses.Count > 0 ? ActionKind.Shift : ActionKind.Recover, Special = "shift" };
                _current.HeadText = term.Text;
                _current.Feet.Add(new FootWord(_terms[next].Meaning.Side!.Value, true, false));
                _current.Cover(term.Span);
                _current.Cover(_terms[next].Span);
                at = next;
                return;
            }

            if (!actsItself && TellsStart(term, next))
            {
                at = next;
                return;
            }

            if (!actsItself)
            {
                owner.WeightNote = TermKind.WeightOn;
                owner.WeightStays = SaysStaying(term.Text);
                owner.WeightFoot = _terms[next].Meaning.Side;
                owner.Cover(_terms[next].Span);
                at = next;
                return;
            }
        }

        if (next < _end && _terms[next].Kind is TermKind.BothFeet)
        {
            owner.WeightNote = TermKind.WeightBoth;
            owner.Cover(_terms[next].Span);
            at = next;
            return;
        }

        bool speaksOfStart = next < _end && _terms[next].Kind is TermKind.Part;
        if (!_current.HasContent && !speaksOfStart)
        {
            _current.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Recover, Special = "recover" };
            _current.HeadText = term.Text;
        }

        Widen(term);
    }
}
