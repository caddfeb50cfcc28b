using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Words that carry no move, and what they say of the moves beside them.
internal sealed partial class ClauseBuilder
{
    private static int? StepNamed(string words)
    {
        bool step = words.Contains("step", StringComparison.Ordinal);
        if (!step && !words.EndsWith(" count", StringComparison.Ordinal) && !words.EndsWith(" beat", StringComparison.Ordinal))
        {
            return null;
        }

        // "on the last count" may be the touch at the end, and no step
        return step && words.Contains("last", StringComparison.Ordinal) ? -1
            : words.Contains("first", StringComparison.Ordinal) ? 1
            : words.Contains("second", StringComparison.Ordinal) ? 2
            : words.Contains("third", StringComparison.Ordinal) ? 3
            : words.Contains("fourth", StringComparison.Ordinal) ? 4
            : null;
    }

    /// <summary>
    /// The foot in "ending with the left", "finishing with your right foot", where nothing more is told of it: the last one that steps; or null.
    /// </summary>
    private int? EndsOnFoot(int at)
    {
        if (_terms[at].Text.ToLowerInvariant() is not ("ending" or "finishing" or "ends" or "finishes" or "end" or "finish")
            || !(Last() is { WeightNote: null, Detail.Count: 0 } walk && (walk.Times > 1 || walk.Feet.Count > 1 || walk.Head is { Special: "walk" or "run" })))
        {
            return null;
        }

        int foot = at + 1;
        while (foot < _end && _terms[foot].Kind is TermKind.With or TermKind.Filler)
        {
            foot++;
        }

        return foot < _end && _terms[foot].Kind is TermKind.Foot or TermKind.Side
            && (foot + 1 >= _end || _terms[foot + 1].Kind is TermKind.Separator or TermKind.Close) ? foot : null;
    }

    /// <summary>"Shuffle 1/2 left R-L-R moving back": the way of the whole figure, and not of the last foot alone.</summary>
    private bool GoesWithAll(Term term, int at)
    {
        bool moving = at > 0 && _terms[at - 1].Kind is TermKind.Filler
            && _terms[at - 1].Text.ToLowerInvariant() is "moving" or "going" or "travelling" or "traveling"
            && term.Meaning is { Direction: Direction.Forward or Direction.Back, Side: null };
        if (!moving || !_current.IsFeetOnly || _current.Feet.Count != 1
            || _clauses is not [.., { IsFigure: true, Dir: null, Detail.Count: 0, Feet.Count: > 0 } figure]
            || !figure.Head!.Figures.Any(f => f.Rows.Count == figure.Feet.Count + 1))
        {
            return false;
        }

        figure.Feet.AddRange(_current.Feet);
        figure.Dir = term.Meaning;
        figure.DirText = term.Text;
        figure.Cover(term.Span);
        _current = new Clause { Link = Link.None };
        _pending = Link.None;
        return true;
    }

    private static bool IsThatIs(Term term) => term.Text.ToLowerInvariant() is "ie" or "i.e" or "i.e." or "that is" or "namely" or "meaning";

    private void Filler(Term term, int at)
    {
        string word = term.Text.ToLowerInvariant();
        if (word.EndsWith("first half", StringComparison.Ordinal) || word.EndsWith("second half", StringComparison.Ordinal))
        {
            // "K-step, first half": the half of the figure it stands by
            Clause halved = !_current.HasContent && _clauses.Count > 0 && _clauses[^1].IsFigure ? _clauses[^1] : _current;
            halved.HalfOf = word.EndsWith("first half", StringComparison.Ordinal) ? 1 : 2;
        }

        _current.Stands |= word is "stand" or "standing";
        _soThat = word is "so that" or "so" or "such that" or "letting" || (_soThat && word is "the" or "its" or "your");
        _current.TurnsInto |= word is "into" or "into a" && _current.IsTurnOnly && _current.Amount is not null;
        _current.SaysSameFoot |= word.EndsWith("same foot", StringComparison.Ordinal) || word.EndsWith("same toe", StringComparison.Ordinal)
            || word.EndsWith("same heel", StringComparison.Ordinal);
        _current.SaysIt |= word is "it" or "them" or "that foot" or "that toe" or "that heel" || _current.SaysSameFoot;
        if (StepNamed(word) is int step)
        {
            // "turning 1/4 left on the last step", "on the third step 1/4 left", "turning a quarter to your left on the third count"
            Clause turning = _current.HasContent || _clauses.Count == 0 || !_clauses[^1].IsTurnOnly ? _current : _clauses[^1];
            turning.OnStep = step;
        }

        if ((term.Meaning.Value > 1 ? term.Meaning.Value : CountsIn(word)) is int lasting)
        {
            Lasting(at, lasting);
        }

        if (word is "finishing" or "ending" && _current is { IsFigure: true, Detail.Count: 0, Times: 1 } && _current.Head!.Figures[0].Rows.Count > 2
            && NextMeaningful(at + 1 < _end && _terms[at + 1].Kind is TermKind.With ? at + 2 : at + 1) is TermKind.Side or TermKind.Foot)
        {
            // "mambo R forward ending with R back"
            Close(Link.None);
            _pending = Link.None;
            _current.SaysFinish = true;
            Widen(term);
            return;
        }

        _current.SaysFinish |= !_current.HasContent && _clauses.Count > 0
            && word is "finish" or "finishing" or "finishes" or "ending" or "end" or "ends";
        _current.SaysFinish |= _current is { Head: not null, Amount: null } && _clauses.Count > 0 && word is "at the end" or "in the end";
        _current.SaysEach |= word is "each" or "every" or "each time" or "after each" or "every time" or "on every step" or "on each step" or "each step"
            or "every step";
        if (word is "first" && _current is { Feet.Count: 1 } && _clauses.Count > 0
            && _clauses[^1] is { IsFigure: true, Feet.Count: 0, Detail.Count: 0 } figure && figure.Head!.Figures[0].Rows.Count > 2)
        {
            // "charleston, right toe touches in front first": how the figure begins
            figure.Feet.AddRange(_current.Feet);
            figure.Cover(_current.Span);
            figure.Cover(term.Span);
            _current = new Clause { Link = Link.Hard };
            return;
        }

        if (word is "back again" && _pending is Link.Soft && !_with && PartsOut(_current))
        {
            // "right toes out and back again"
            Close(Link.Soft);
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Home };
            _current.DirText = term.Text;
        }

        Widen(term);
    }

    /// <summary>Whether a side before words on arms is theirs ("right arm up"); before both arms, or what they do, it is a foot.</summary>
    internal static bool IsSidedArm(Term term) => IsArm(term) && term.Text.Split(' ') is [var first, ..]
        && !(term.Kind is TermKind.Move && (first.EndsWith("ing", StringComparison.OrdinalIgnoreCase)
            || first.ToLowerInvariant() is "arms" or "hands" or "raise" or "lift" or "lower" or "throw" or "push" or "swing" or "cross"))
        && first.ToLowerInvariant() is not ("arms" or "hands" or "head" or "chest" or "eyes" or "elbows" or "shoulders" or "palms" or "fists" or "look"
            or "looking");

    /// <summary>Whether it sends heels or toes out, from where they come back.</summary>
    internal static bool PartsOut(Clause clause)
        => (clause is { Head: null, Part: "heels" or "toes" or "heel" or "toe", Dir.Direction: Direction.Out })
            || clause.Head?.Verb is ActionKind.FanToe or ActionKind.FanHeel or ActionKind.SplitHeels or ActionKind.SplitToes
            || clause.Head is
            {
                Verb: null, Figures: [
                {
                    Rows: [
                        {
                            Action.Kind: ActionKind.FanToe or ActionKind.FanHeel or ActionKind.SplitHeels
                or ActionKind.SplitToes
                        }]
                }, ..]
            };

    /// <summary>Whether a name stands for toes or heels that go out and in, and for nothing else.</summary>
    internal static bool IsFan(Meaning? head) => head is { Figures: [{ Rows.Count: > 0 } ways, ..] }
        && ways.Rows.All(r => r.Action.Kind is ActionKind.FanToe or ActionKind.FanHeel or ActionKind.SplitHeels or ActionKind.SplitToes);

    /// <summary>Whether arms are what a word of lifting speaks of: "L forward lifting both arms".</summary>
    private bool ArmFollows(int at)
    {
        int next = at + 1;
        while (next < _end && _terms[next].Kind is TermKind.Filler or TermKind.BothFeet or TermKind.Side or TermKind.Foot)
        {
            next++;
        }

        return next < _end && IsArm(_terms[next]);
    }

    internal static bool IsArm(Term term) => term is { Kind: TermKind.Move, Meaning.Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] }
        || (term.Kind is TermKind.Style && term.Text.ToLowerInvariant() is "arm" or "arms" or "hand" or "hands" or "elbow" or "elbows" or "finger"
        or "fingers" or "shoulder" or "shoulders" or "palm" or "palms" or "thumb" or "thumbs" or "hat" or "belt" or "brim" or "pocket" or "pockets"
        or "chest" or "head" or "eyes" or "look" or "looking" or "fist" or "fists");
}
