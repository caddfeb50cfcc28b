using Scuff.Prose.Words;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Numbers: how often, how long, and what is repeated.
internal sealed partial class ClauseBuilder
{
    /// <summary>Words on how long a move takes, for the move they stand with: "R forward over 2 counts", "then, over 2 counts, sweep L".</summary>
    private void Lasting(int at, int counts)
    {
        int before = at - 1;
        while (before >= 0 && _terms[before].Kind is TermKind.Filler or TermKind.Separator or TermKind.Number)
        {
            before--;
        }

        if (_pending is Link.Soft && _current.HasContent && NextIndex(at + 1) is int onward and >= 0
            && _terms[onward] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Drag or ActionKind.Slide or ActionKind.Sweep or ActionKind.Hold })
        {
            // "step R to side and spend the other two counts dragging L": the counts of what follows
            Close(Link.Soft);
            _pending = Link.None;
        }

        bool leads = !_current.HasContent && (NextIndex(at + 1) >= 0 || before < 0 || _terms[before].Kind is TermKind.Then or TermKind.Join);
        Clause owner = leads ? _current : Last();
        owner.Lasts = counts;
    }

    /// <summary>How many counts "for two counts" or "over 3 counts" speaks of, or null.</summary>
    private static int? CountsIn(string words)
    {
        if (!words.StartsWith("for ", StringComparison.Ordinal) && !words.StartsWith("over ", StringComparison.Ordinal))
        {
            return null;
        }

        string[] parts = words.Split(' ');
        return parts is ["for" or "over", string number, "count" or "counts" or "beat" or "beats"]
            ? number switch
            {
                "a" or "one" or "1" => 1,
                "two" or "2" => 2,
                "three" or "3" => 3,
                "four" or "4" => 4,
                _ => null,
            }
            : null;
    }

    private void NumberTerm(ref int at, Term term)
    {
        int number = term.Meaning.Value;
        int next = at + 1;
        if (at > 0 && _terms[at - 1].Kind == TermKind.Amp && _terms[at - 1].Span.End == term.Span.Start)
        {
            // "and then &3": a count; the line's reader asks about it
            Widen(term);
            return;
        }

        if (next + 1 < _end && _terms[next].Kind == TermKind.Dash && _terms[next + 1].Kind == TermKind.Number
            && _terms[next + 1].Meaning.Value > number && _current.HasContent)
        {
            // "drag L in over 2-3": says again what the label says
            Widen(_terms[next + 1]);
            at = next + 1;
            return;
        }

        if (at > 1 && _terms[at - 1].Kind == TermKind.Join && _terms[at - 2].Kind == TermKind.Number && at > 2
            && _terms[at - 3].Kind == TermKind.Filler)
        {
            // "during counts 2 and 3"
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (at > 0 && _terms[at - 1].Kind == TermKind.Filler
            && (_terms[at - 1].Text.Contains("count", StringComparison.OrdinalIgnoreCase) || _terms[at - 1].Text.ToLowerInvariant() is "on" or "at"))
        {
            // "on count eight": says again what the label says, or where the turn is made
            if (Last() is { Amount: not null } or { HasTurnWord: true })
            {
                Last().OnCount = number;
            }

            Widen(term);
            return;
        }

        bool countsWord = next < _end && _terms[next].Kind == TermKind.Filler
            && _terms[next].Text.StartsWith("count", StringComparison.OrdinalIgnoreCase);
        if (countsWord || (next < _end && _terms[next].Text.StartsWith("beat", StringComparison.OrdinalIgnoreCase)))
        {
            Lasting(next, number);
            at = next;
            Widen(term);
            return;
        }

        int stepAt = next < _end && _terms[next].Kind is TermKind.Dash ? next + 1 : next;
        if (stepAt + 1 < _end && _terms[stepAt].Text.Equals("step", StringComparison.OrdinalIgnoreCase) && number is >= 2 and <= 8
            && NextIndex(stepAt + 1) == stepAt + 1
            && _terms[stepAt + 1] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ Rows.Count: > 1 }, ..] } })
        {
            // "four-step walk-around": how many steps the figure has
            at = stepAt;
            Widen(term);
            return;
        }

        if (next < _end && _terms[next].Text.StartsWith("steps", StringComparison.OrdinalIgnoreCase) && _current.Head is not null
            && number is >= 2 and <= 8)
        {
            // "walk forward three steps"; "walk round in four steps" has them already
            _current.Times = _current.IsFigure && _current.Head.Figures.Any(f => f.Rows.Count == number) ? 1 : number;
            at = next;
            Widen(term);
            return;
        }

        if (next < _end && _terms[next].Text.StartsWith("steps", StringComparison.OrdinalIgnoreCase)
            && _current is { IsTurnOnly: true, Amount: not null, Head: null }
            && at > 0 && _terms[at - 1].Text.ToLowerInvariant() is "over" or "in" && next + 1 < _end && _terms[next + 1].Kind is TermKind.Separator)
        {
            // "turn a full 360 degrees over two steps, stepping back on R ...": the steps are told
            _current.OverSteps = number;
            at = next;
            Widen(term);
            return;
        }

        if (next < _end && _terms[next].Kind is TermKind.Move && _terms[next].Meaning.Special is "walk" or "run" && number is >= 3 and <= 8 && at > 0
            && _current is { IsTurnOnly: true, Amount: not null, Head: null }
            && (_terms[at - 1].Kind is TermKind.With || _terms[at - 1].Text.ToLowerInvariant() is "over" or "in"))
        {
            // "turn 1/2 left over 4 walks": the walks share the turn
            _current.OverSteps = number;
            _current.Dir = null;
            _current.DirText = "";
        }

        if (NextIndex(next) is int follow and >= 0 && (_terms[follow].Kind is TermKind.Move or TermKind.Dir or TermKind.Side
            || (_terms[follow].Kind is TermKind.Amount && char.IsLetter(term.Text[0]) && _terms.FindIndex(follow, t => t.Kind is TermKind.Move
            or TermKind.Separator)
            is int named and >= 0 && _terms[named].Kind is TermKind.Move)) && number is >= 2 and <= 8)
        {
            if (_current.HasContent)
            {
                Close(Link.None);
            }

            _current.Times = number;
            Widen(term);
            return;
        }

        if (_current.IsFigure && number > 2 && NextContent(next) is null && _current.Head!.Figures.Any(f => f.Rows.Count == number))
        {
            // "weave R 4": how many steps it has
            Widen(term);
            return;
        }

        if (_current.HasContent && number is >= 2 and <= 8 && _current.Times == 1 && NextContent(next) is null)
        {
            // "walk forward 3", "hip bumps 4"
            _current.Times = number;
            Widen(term);
            return;
        }

        _current.Unknown.Add(term);
        Widen(term);
    }

    private void RepeatTerm(ref int at, Term term)
    {
        if (term.Kind == TermKind.RepeatMirrored)
        {
            Clause owner = _current.IsRepeat || _clauses.Count == 0 || _current.HasContent ? _current : _clauses[^1].IsRepeat ? _clauses[^1]
                : _current;
            owner.IsRepeat = true;
            owner.IsMirrored = true;
            owner.Cover(term.Span);
        }
        else
        {
            if (_current.HasContent && !_current.IsRepeat)
            {
                Close(Link.Hard);
            }

            _current.IsRepeat = true;
            Widen(term);
        }

        _pending = _pending is Link.Soft && _current.IsRepeat ? Link.None : _pending;

        // "repeat 1-4", "repeat counts 1 to 4", "repeat steps 1-4"
        int next = at + 1;
        while (next < _end && (_terms[next].Kind is TermKind.Filler
            || (_terms[next].Kind is TermKind.Move && _terms[next].Meaning.Verb is ActionKind.Step)))
        {
            if (_terms[next].Text.StartsWith("section", StringComparison.OrdinalIgnoreCase) && next + 1 < _end
                && _terms[next + 1].Kind == TermKind.Number)
            {
                _current.IsRepeat = true;
                _current.RepeatSection = _terms[next + 1].Meaning.Value;
                next++;
                at = next;
                _current.Cover(_terms[next].Span);
            }

            next++;
        }

        if (next < _end && _terms[next].Kind == TermKind.Number)
        {
            int from = _terms[next].Meaning.Value;
            int to = from;
            int far = next + 1;
            while (far < _end && _terms[far].Kind is TermKind.Dash or TermKind.Filler or TermKind.Amp or TermKind.Separator && far < next + 3)
            {
                far++;
            }

            if (far < _end && _terms[far].Kind == TermKind.Number)
            {
                to = _terms[far].Meaning.Value;
                next = far;

                // 1-3&4: go on to the last number
                while (next + 2 < _end && _terms[next + 1].Kind is TermKind.Amp or TermKind.Dash && _terms[next + 2].Kind == TermKind.Number)
                {
                    next += 2;
                    to = _terms[next].Meaning.Value;
                }
            }

            _current.RepeatCounts = (from, to);
            _current.Cover(_terms[next].Span);
            at = next;
        }
    }
}
