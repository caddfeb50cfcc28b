using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>
/// Gathers the terms of a line into clauses: one move's worth of words each, its slots (move, foot, direction, contact,
/// size, turn) filled in whatever order they come. A comma ends a clause; so does a word that would fill a slot twice.
/// </summary>
internal sealed class ClauseBuilder
{
    private readonly List<Term> _terms;
    private readonly List<Clause> _clauses = [];
    private readonly int _end;
    private Clause _current = new();
    private Link _pending = Link.Hard;
    private bool _styling;
    private bool _with;
    private bool _skipsFoot;
    private bool _soThat;

    private readonly bool _placesStart;

    private ClauseBuilder(List<Term> terms, int end, bool placesStart)
    {
        _terms = terms;
        _end = end;
        _placesStart = placesStart;
    }

    /// <summary>The clauses of a line.</summary>
    /// <param name="terms">Its terms.</param>
    /// <param name="placesStart">Whether a place before a foot starts a move ("kick left back left": back left is a step).</param>
    public static List<Clause> Build(List<Term> terms, bool placesStart = false)
    {
        StylePhrases.Mark(terms);
        return new ClauseBuilder(terms, terms.Count, placesStart).Run(0);
    }

    /// <summary>The clauses from one term up to another.</summary>
    private List<Clause> Build(int start, int end) => new ClauseBuilder(_terms, end, _placesStart).Run(start);

    private List<Clause> Run(int start)
    {
        for (int i = start; i < _end; i++)
        {
            Term term = _terms[i];
            if (term.Corrected)
            {
                _current.Corrected.Add(term);
            }

            switch (term.Kind)
            {
                case TermKind.Separator:
                    if (term.Text is ":" or "=" && TryDetail(ref i, _end))
                    {
                        break;
                    }

                    if (term.Text is "-" or "–" or "—" && ((_current.IsFigure && (_current.Head!.Figures[0].Rows.Count > 1 || _current.HeadText.EndsWith('s'))) || (_current.Head is null && _current.Feet.Count == 0 && _clauses.Count > 0 && _clauses[^1].IsFigure)) && TryDetail(ref i, _end))
                    {
                        break;
                    }

                    Close(Link.Hard);
                    _styling = false;
                    break;
                case TermKind.Then:
                    Close(Link.Hard);
                    _styling = false;
                    break;
                case TermKind.Join when _current.HasContent && (i + 1 >= _end || _terms[i + 1].Kind is TermKind.Separator or TermKind.Close or TermKind.Open or TermKind.Clock or TermKind.With):
                    // "R heel and L heel and": the last and may be danced
                    Amp(term);
                    break;
                case TermKind.Join:
                    _pending = Link.Soft;
                    _with = false;
                    break;
                case TermKind.With:
                    _pending = Link.Soft;
                    _with = true;
                    _styling = NextMeaningful(i + 1) is TermKind.Unknown;
                    if (!_current.HasContent && _clauses.Count > 0 && term.Text.StartsWith("let", StringComparison.OrdinalIgnoreCase))
                    {
                        // "step R back, letting the L sweep round"
                        _current.Link = Link.Soft;
                        _current.IsWith = true;
                    }

                    break;
                case TermKind.Amp:
                    Amp(term);
                    break;
                case TermKind.Dash:
                    break;
                case TermKind.Open:
                    Bracket(ref i);
                    break;
                case TermKind.Close:
                    break;
                case TermKind.Filler when IsThatIs(term) && TryDetail(ref i, _end):
                    break;
                case TermKind.Filler when term.Text.Equals("by", StringComparison.OrdinalIgnoreCase) && _current is { IsFigure: true, Detail.Count: 0 } && _current.Head!.Figures[0].Rows.Count > 2 && TryDetail(ref i, _end):
                    // "begin a jazz box by crossing R over L, step back ..."
                    break;
                case TermKind.Filler when term.Text.ToLowerInvariant() is "each" or "every" && i + 1 < _end && _terms[i + 1].Kind is TermKind.Move && (i + 2 >= _end || _terms[i + 2].Kind is TermKind.Separator or TermKind.Close):
                    // "clap on every touch": moves that are told already
                    _current.SaysEach = true;
                    _current.OnEachMove = true;
                    Widen(_terms[++i]);
                    break;
                case TermKind.Filler:
                    Filler(term, i);
                    break;
                case TermKind.Style when term.Text.ToLowerInvariant() is "ready to" or "ready for" or "preparing to" or "prepare to" or "preparing for" or "in preparation for" or "like" or "as if" or "as though" or "pretending" or "imagine":
                    // a comparison runs to the next comma
                    while (i + 1 < _end && _terms[i + 1].Kind is not (TermKind.Separator or TermKind.Close or TermKind.Open))
                    {
                        i++;
                    }

                    break;
                case TermKind.Style:
                    _current.HasStyle = true;
                    _current.SaysWaltz |= term.Text.StartsWith("waltz", StringComparison.OrdinalIgnoreCase);
                    _current.HasLift |= term.Text.StartsWith("lift", StringComparison.OrdinalIgnoreCase) || term.Text.StartsWith("rais", StringComparison.OrdinalIgnoreCase);
                    Widen(term);
                    break;
                case TermKind.Lead:
                    Lead(term);
                    break;
                case TermKind.Size:
                    StartIfPending(TermKind.Size, i);
                    _current.Size = term.Meaning.Value;
                    Widen(term);
                    break;
                case TermKind.Part:
                    Part(term, i);
                    break;
                case TermKind.Foot:
                    FootTerm(term, i, true);
                    break;
                case TermKind.Side:
                    SideTerm(term, i);
                    break;
                case TermKind.BothFeet when i + 1 < _end && (IsArm(_terms[i + 1]) || (_terms[i + 1] is { Kind: TermKind.Part, Meaning.Part: "knee" } && _current.HasContent)):
                    // "lifting both arms", "step R to side dipping both knees"
                    _current.HasStyle = true;
                    Widen(term);
                    break;
                case TermKind.BothFeet:
                    StartIfPending(term.Kind, i);
                    _current.BothFeet = true;
                    Widen(term);
                    break;
                case TermKind.Dir:
                    DirTerm(term, i);
                    break;
                case TermKind.Amount:
                    AmountTerm(term, i);
                    break;
                case TermKind.Turn:
                    TurnTerm(term, i);
                    break;
                case TermKind.Move:
                    MoveTerm(term, i);
                    break;
                case TermKind.WeightOn:
                    WeightOn(ref i, term);
                    break;
                case TermKind.WeightTakes when !_current.HasContent && NextIndex(i + 1) is int shifted and >= 0 && _terms[shifted].Kind is TermKind.Side or TermKind.Foot && term.Text.ToLowerInvariant() is ['s' or 't' or 'c', ..]:
                    // "shift weight R"
                    _current.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Shift, Special = "shift" };
                    _current.HeadText = term.Text;
                    _pending = Link.None;
                    Widen(term);
                    break;
                case TermKind.WeightNone:
                case TermKind.WeightTakes:
                case TermKind.WeightBoth:
                    WeightOwner().WeightNote = term.Kind;
                    break;
                case TermKind.Times when !_current.HasContent && NextContent(i + 1) is not null:
                    // "2 x half pivot"
                    _current.Times = Math.Clamp(term.Meaning.Value, 1, 8);
                    Widen(term);
                    break;
                case TermKind.Times:
                    Clause repeated = Last();
                    repeated.Times = Math.Clamp(term.Meaning.Value, 1, 8);
                    repeated.TimesStated = true;
                    break;
                case TermKind.Number:
                    NumberTerm(ref i, term);
                    break;
                case TermKind.Repeat:
                case TermKind.RepeatMirrored:
                    RepeatTerm(ref i, term);
                    break;
                case TermKind.Clock:
                    if (Last() is { Head.Verb: ActionKind.Unwind or ActionKind.Pivot, Amount: null } or { HasTurnWord: true, Amount: null } && Last() is Clause turning || (Last() is { HasTurnWord: true } && (turning = Last()) is not null))
                    {
                        turning.TurnTo = term.Meaning.Value;
                    }

                    break;
                default:
                    if (!_styling)
                    {
                        _current.Unknown.Add(term);
                    }

                    Widen(term);
                    break;
            }
        }

        Close(Link.Hard);
        ClauseTidier.Tidy(_clauses);
        return _clauses;
    }

    /// <summary>Whether the writer names the move before the foot ("kick left"), by the first words of the line.</summary>
    private bool VerbFirst => _terms.Find(t => t.Kind is TermKind.Move or TermKind.Side or TermKind.Foot or TermKind.Dir or TermKind.Turn or TermKind.Amount).Meaning is { Kind: TermKind.Move };

    private static bool IsContent(TermKind kind) => kind is TermKind.Move or TermKind.Foot or TermKind.Side or TermKind.Dir or TermKind.Amount
        or TermKind.Turn or TermKind.Part or TermKind.BothFeet or TermKind.Repeat or TermKind.RepeatMirrored;

    /// <summary>Whether a word means a turn of the body, by itself or as a figure.</summary>
    internal static bool IsTurnVerb(Meaning? head) => head is { Verb: ActionKind.Pivot or ActionKind.Unwind }
        || (head is { Figures.Count: > 0 } && head.Figures.Any(f => f.TotalTurn.Sign != 0 || f.NamedBy == NamedBy.Turn));

    private void Widen(Term term) => _current.Cover(term.Span);

    private static int? StepNamed(string words)
    {
        if (!words.Contains("step", StringComparison.Ordinal))
        {
            return null;
        }

        return words.Contains("last", StringComparison.Ordinal) ? -1
            : words.Contains("first", StringComparison.Ordinal) ? 1
            : words.Contains("second", StringComparison.Ordinal) ? 2
            : words.Contains("third", StringComparison.Ordinal) ? 3
            : words.Contains("fourth", StringComparison.Ordinal) ? 4
            : null;
    }

    /// <summary>Words on how long a move takes, for the move they stand with: "R forward over 2 counts", "then, over 2 counts, sweep L".</summary>
    private void Lasting(int at, int counts)
    {
        int before = at - 1;
        while (before >= 0 && _terms[before].Kind is TermKind.Filler or TermKind.Separator or TermKind.Number)
        {
            before--;
        }

        bool leads = !_current.HasContent && (NextIndex(at + 1) >= 0 || before < 0 || _terms[before].Kind is TermKind.Then or TermKind.Join);
        Clause owner = leads ? _current : Last();
        owner.Lasts = counts;
    }

    /// <summary>How many counts "for two counts" or "over 3 counts" speaks of, or null.</summary>
    private static int? CountsIn(string words)
    {
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

        _soThat = word is "so that" or "so" or "such that" or "letting" || (_soThat && word is "the" or "its" or "your");
        _current.TurnsInto |= word is "into" or "into a" && _current.IsTurnOnly && _current.Amount is not null;
        _current.SaysSameFoot |= word.EndsWith("same foot", StringComparison.Ordinal);
        _current.SaysIt |= word is "it" or "them" or "same foot" or "that same foot" or "the same foot" or "that foot";
        if (StepNamed(word) is int step)
        {
            // "turning 1/4 left on the last step", "on the third step 1/4 left"
            Clause turning = _current.HasContent || _clauses.Count == 0 || !_clauses[^1].IsTurnOnly ? _current : _clauses[^1];
            turning.OnStep = step;
        }

        if (CountsIn(word) is int lasting)
        {
            Lasting(at, lasting);
        }

        _current.SaysFinish |= !_current.HasContent && _clauses.Count > 0 && word is "finish" or "finishing" or "finishes" or "ending" or "end" or "ends";
        _current.SaysEach |= word is "each" or "each time" or "after each" or "every time" or "on every step" or "on each step" or "each step" or "every step";
        if (word is "first" && _current is { Feet.Count: 1 } && _clauses.Count > 0 && _clauses[^1] is { IsFigure: true, Feet.Count: 0, Detail.Count: 0 } figure && figure.Head!.Figures[0].Rows.Count > 2)
        {
            // "charleston, right toe touches in front first": how the figure begins
            figure.Feet.AddRange(_current.Feet);
            figure.Cover(_current.Span);
            figure.Cover(term.Span);
            _current = new Clause { Link = Link.Hard };
            return;
        }

        Widen(term);
    }

    /// <summary>The clause that a note at this place speaks of: the current one, or the last when the current is still empty.</summary>
    private Clause Last() => _current.HasContent || _clauses.Count == 0 ? _current : _clauses[^1];

    private void Close(Link link)
    {
        if (_current.HasContent || _current.Unknown.Count > 0 || _current.HasStyle || _current.WeightNote is not null || _current.Corrected.Count > 0)
        {
            _current.LinkAfter = link;
            if (!_current.HasContent && _current.Unknown.Count == 0)
            {
                // only styling words, or a note on the weight: it belongs to the move before
                if (_clauses.Count > 0)
                {
                    _clauses[^1].WeightNote ??= _current.WeightNote;
                    _clauses[^1].WeightFoot ??= _current.WeightFoot;
                    _clauses[^1].HasStyle |= _current.HasStyle;
                }
            }
            else
            {
                _clauses.Add(_current);
            }
        }

        int? lasts = _current.HasContent ? null : _current.Lasts;
        _current = new Clause { Link = link, IsWith = link == Link.Soft && _with, Lasts = lasts };
        _with &= link is not Link.Hard;
        _pending = link;
    }

    private void StartIfPending(TermKind kind, int at)
    {
        if (_pending is Link.Soft && _current.HasContent)
        {
            // "and 1/4 turn", "with a quarter turn" still belong to the move; so does a size or a part before them
            if (kind is TermKind.Amount or TermKind.Turn && _current.IsFigure)
            {
                _pending = Link.None;
                return;
            }

            if (_current.IsFeetOnly && kind is TermKind.Foot or TermKind.Side)
            {
                _pending = Link.None;
                return;
            }

            if (_with && kind is TermKind.Foot or TermKind.Side && _current.Feet.Count == 0)
            {
                // "step to the side with the right"
                _pending = Link.None;
                return;
            }

            if (_with && kind is TermKind.Part && _current.Head is not null && _current.Part.Length == 0)
            {
                // "touch with the heel"
                _pending = Link.None;
                return;
            }

            if (kind is TermKind.Dir && _terms[at].Meaning.Direction is Direction.Out && _current is { HasVerb: true, Feet.Count: 0, Dir.Direction: Direction.Forward or Direction.Back })
            {
                // "step forward and out on the right foot"
                _pending = Link.None;
                return;
            }

            bool feetGoOn = kind is TermKind.Foot or TermKind.Side && _current.Feet.Count > 0 && NextContent(at + 1) is TermKind.Foot or TermKind.Side or null;
            if (feetGoOn)
            {
                _pending = Link.None;
                return;
            }

            Close(Link.Soft);
        }

        _pending = Link.None;
    }

    private TermKind? NextContent(int from)
    {
        for (int i = from; i < _end; i++)
        {
            TermKind kind = _terms[i].Kind;
            if (IsContent(kind))
            {
                return kind;
            }

            if (kind is TermKind.Separator or TermKind.Then or TermKind.Open or TermKind.Close)
            {
                return null;
            }
        }

        return null;
    }

    /// <summary>The index of the next term that is no filler, or -1 at a separator or the end.</summary>
    private int NextIndex(int from)
    {
        for (int i = from; i < _end; i++)
        {
            TermKind kind = _terms[i].Kind;
            if (kind is TermKind.Separator or TermKind.Then or TermKind.Open or TermKind.Close or TermKind.Join or TermKind.With or TermKind.Amp)
            {
                return -1;
            }

            if (kind is not (TermKind.Filler or TermKind.Style or TermKind.Size or TermKind.Dash))
            {
                return i;
            }
        }

        return -1;
    }

    private int PreviousIndex(int from)
    {
        for (int i = from; i >= 0; i--)
        {
            TermKind kind = _terms[i].Kind;
            if (kind is TermKind.Separator or TermKind.Then or TermKind.Open or TermKind.Close or TermKind.Join or TermKind.With or TermKind.Amp)
            {
                return -1;
            }

            if (kind is not (TermKind.Filler or TermKind.Style or TermKind.Size or TermKind.Dash))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>"Starting with the right foot": names the foot of the move it stands by.</summary>
    private void Lead(Term term)
    {
        Clause owner = _current.HasContent ? _current : _clauses.Count > 0 ? _clauses[^1] : _current;
        if (owner.Feet.Count == 0)
        {
            owner.Feet.Add(new FootWord(term.Meaning.Side!.Value, true, false));
        }
        else if (owner.IsRepeat)
        {
            owner.Feet.Add(new FootWord(term.Meaning.Side!.Value, true, false));
        }

        owner.Cover(term.Span);
    }

    private string? PreviousPart(int at)
    {
        int previous = PreviousIndex(at - 1);
        return previous >= 0 && _terms[previous].Kind == TermKind.Part && (_current.Head?.Verb is not (ActionKind.RollBody or ActionKind.PopShoulder or ActionKind.Shimmy)) ? _terms[previous].Meaning.Part : null;
    }

    private TermKind? NextMeaningful(int from)
    {
        for (int i = from; i < _end; i++)
        {
            if (_terms[i].Kind is not (TermKind.Filler or TermKind.Size))
            {
                return _terms[i].Kind;
            }
        }

        return null;
    }

    private static bool IsArm(Term term) => term is { Kind: TermKind.Move, Meaning.Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] } || (term.Kind is TermKind.Style && term.Text.ToLowerInvariant() is "arm" or "arms" or "hand" or "hands" or "elbow" or "elbows" or "finger" or "fingers" or "shoulder" or "shoulders" or "palm" or "palms" or "thumb" or "thumbs" or "hat" or "belt" or "brim" or "pocket" or "pockets" or "chest" or "head" or "eyes" or "look" or "looking" or "fist");

    private void Amp(Term term)
    {
        // an & sign is a join, or a step of its own on an & count: the solver decides
        if (_current.HasContent)
        {
            Close(Link.Amp);
        }

        Clause amp = new() { IsAmp = true, Link = Link.Amp, LinkAfter = Link.Amp };
        amp.Cover(term.Span);
        _clauses.Add(amp);
        _current = new Clause { Link = Link.Amp };
        _pending = Link.Amp;
    }

    private void Part(Term term, int at)
    {
        string part = term.Meaning.Part;
        StartIfPending(TermKind.Part, at);
        if (part == "ball" && _current is { Head: null, Dir: null, Feet.Count: 0, Part.Length: 0 } && _current.HasTurnWord && _current.Amount is not null && _current.TurnSide is not null && _pending is Link.None)
        {
            // "turn 1/2 left on the ball of the left": the foot it is made on follows
            _current.IsOnBall = true;
            Widen(term);
            return;
        }

        bool places = _current.Dir is { Direction: Direction.Together or Direction.CrossFront or Direction.CrossBehind or Direction.LockBehind or Direction.LockFront } && _current.Reference is not null;
        if (places)
        {
            // "up to R heel": a place, not a move
            Widen(term);
            return;
        }

        if (_current.Head is null && _current.Part.Length > 0 && (_current.Feet.Count > 0 || _current.Dir is not null) && part is "heel" or "toe" or "heels" or "toes")
        {
            Close(Link.None);
        }

        _current.PartFirst = _current.Feet.Count == 0;

        if (part is "knee" && _current.Head is null)
        {
            _current.Part = "knee";
        }
        else if (part is "body" or "shoulder")
        {
            _current.HasStyle = true;
        }
        else
        {
            _current.Part = part;
        }

        Widen(term);
    }

    private void FootTerm(Term term, int at, bool certain, bool mayBeReference = false)
    {
        Foot foot = term.Meaning.Side!.Value;
        if (_skipsFoot)
        {
            _skipsFoot = false;
            Widen(term);
            return;
        }

        if (at + 1 < _end && IsArm(_terms[at + 1]))
        {
            // "with L hand on hat brim"
            _current.HasStyle = true;
            Widen(term);
            return;
        }

        if (term.Text.StartsWith("with ", StringComparison.OrdinalIgnoreCase) && _current.Head is not null && _current.Feet.Count > 0 && at + 1 < _end && _terms[at + 1].Kind is TermKind.Move)
        {
            // "scoot twice on R with L knee up"
            Close(Link.Soft);
            _current.IsWith = true;
            _current.Link = Link.Soft;
            _pending = Link.None;
        }

        if (_current.Head?.Verb is ActionKind.Recover && _current.Dir is null && _current.Feet.Count == 1 && _pending is Link.None && _current.Feet[0].Foot != foot)
        {
            // "recover left right coaster step": one foot recovers, the other begins the next move
            Close(Link.None);
        }

        if (at > 0 && IsPassing(at - 1) && _current.HasContent)
        {
            // "scuff R past the left foot"
            _current.Reference ??= foot;
            Widen(term);
            return;
        }

        if ((_with || term.Text.StartsWith("with", StringComparison.OrdinalIgnoreCase)) && _current is { IsFigure: true, Feet.Count: 1 } && _current.Head!.Figures[0].Rows.Count > 2 && _current.Feet[0].Foot != foot && NextIndex(at + 1) is int ends and >= 0 && _terms[ends].Kind is TermKind.Dir or TermKind.Move && NextIndex(ends + 1) < 0)
        {
            // "jazz box R with L cross": how it ends
            Close(Link.Soft);
            _current.IsWith = false;
            _current.SaysFinish = true;
            _pending = Link.None;
        }

        bool withOther = (_with || term.Text.StartsWith("with", StringComparison.OrdinalIgnoreCase)) && _current.Feet.Count == 1 && _current.Feet[0].Foot != foot;
        if (withOther && _current.Feet[0].MayBeReference)
        {
            // "step across the right with your left"
            _current.Reference = _current.Feet[0].Foot;
            _current.Feet[0] = new FootWord(foot, true, false);
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (withOther && _current.Dir is { Direction: Direction.Together })
        {
            // "close R together with L"
            _current.Reference = foot;
            _pending = Link.None;
            Widen(term);
            return;
        }

        bool sideAgain = !certain && _current.Feet.Count > 0 && _current.Feet[^1].Foot == foot && (_current.Diagonal || _current.Dir is { Direction: Direction.Forward or Direction.Back or Direction.Side }) && _current.DirSide is null && NextIndex(at + 1) < 0 && _pending is Link.None && !_current.IsFigure;
        if (sideAgain)
        {
            // "step left diagonally forward left"
            _current.DirSide = foot;
            Widen(term);
            return;
        }

        bool namedPlace = at > 0 && _terms[at - 1 - (_terms[at - 1].Kind == TermKind.Filler && at > 1 ? 1 : 0)] is { Kind: TermKind.Move } named && EndsInPlace(named.Text) && named.Meaning.Figures.All(f => f.Rows.Count < 3);
        if (namedPlace && _current.Feet.Count == 1 && _current.Feet[0].Foot != foot && _pending is Link.None && NextIndex(at + 1) < 0)
        {
            // "L foot touch next to R"
            _current.Reference = foot;
            Widen(term);
            return;
        }

        if (namedPlace && _current.Feet.Count == 0 && _pending is Link.None)
        {
            // "touch next to the left": the standing foot, where that has the weight
            _current.Feet.Add(new FootWord(foot, certain, true, term.Text.Length > 3));
            Widen(term);
            return;
        }

        bool endsOn = term.Text.StartsWith("onto", StringComparison.OrdinalIgnoreCase) && _current is { TurnSide: not null, WeightNote: null } && _pending is Link.None && NextIndex(at + 1) < 0
            && (IsTurnVerb(_current.Head) && _current.Head!.Verb is ActionKind.Pivot or ActionKind.Unwind || (_current.IsFigure && _current.Head!.Figures.Any(VariantParts.IsStepAndPivot)));
        if (endsOn)
        {
            // "pivot half left onto left"
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = foot;
            Widen(term);
            return;
        }

        bool onOther = term.Text.StartsWith("on", StringComparison.OrdinalIgnoreCase) && _current is { Amount: not null, TurnSide: not null, Head.Verb: not null, Feet.Count: 1 } && _current.Feet[0].Foot != foot && _pending is Link.None && NextIndex(at + 1) < 0;
        if (onOther)
        {
            // "hitch R turning 1/4 left on L": the foot it turns on
            _current.Reference = foot;
            Widen(term);
            return;
        }

        bool afterPlace = _current.Dir is { Direction: Direction.CrossFront or Direction.CrossBehind or Direction.Together or Direction.LockBehind or Direction.LockFront } && PreviousIndex(at - 1) is int before and >= 0 && _terms[before].Kind is TermKind.Dir or TermKind.Part;
        if (afterPlace && _pending is not (Link.Soft or Link.Amp) && _current.Reference is null && _current.Feet.Count > 0 && _current.Feet[^1].Foot != foot && !NextSuitsNewClause(at))
        {
            // "over left", "next to right": the standing foot
            _current.Reference = foot;
            Widen(term);
            return;
        }

        if (_current is { HasTurnWord: true, TurnSide: not null, Part: "ball", Feet.Count: > 0 } && _current.Feet[^1].Foot != foot && _pending is Link.None)
        {
            // "hitch R turning 1/2 left on the ball of the left"
            _current.Reference = foot;
            Widen(term);
            return;
        }

        bool toFoot = at > 0 && _terms[at - 1].Kind == TermKind.Filler && (_terms[at - 1].Text is "to" or "by" or "at" or "towards" || (certain && SaysTo(at - 1)) || (_current.Head?.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Drag or ActionKind.Slide && SaysTo(at - 1))) && _current.Feet.Count > 0 && _current.Feet[^1].Foot != foot && _pending is not (Link.Soft or Link.Amp) && _current.Dir is null or { Direction: Direction.Together or Direction.Up or Direction.In };
        bool backToFoot = at > 1 && _terms[at - 1] is { Kind: TermKind.Filler } && _terms[at - 1].Text.Split(' ')[0].ToLowerInvariant() is "to" or "the" or "your" && _terms[PreviousIndex(at - 1) is int way and >= 0 ? way : at] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Back }
            && SaysTo(at - 1) && _current is { Feet.Count: > 0, Dir.Direction: Direction.Back, Head: null or { Verb: ActionKind.Step } } && _current.Feet[^1].Foot != foot && _pending is Link.None && NextIndex(at + 1) < 0;
        if (toFoot || backToFoot)
        {
            // "touch L to R", "drag LF to RF", "R back to the L"
            _current.Reference = foot;
            _current.Dir = backToFoot || _current.Dir is null ? new Meaning(TermKind.Dir) { Direction = Direction.Together } : _current.Dir;
            Widen(term);
            return;
        }

        if (_current.IsTurnOnly && _pending is Link.None && (_current.IsOnBall || term.Text.StartsWith("on", StringComparison.OrdinalIgnoreCase)) && (_current.TurnSide is not null || _current.Amount is not null))
        {
            // "turn 1/4 left on L"
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = foot;
            Widen(term);
            return;
        }

        if (_current is { Head.Verb: ActionKind.Hold or ActionKind.Clap or ActionKind.Snap, Feet.Count: 0, Dir: null } && !VerbFirst && _pending is Link.None && NextIndex(at + 1) >= 0)
        {
            // "clap right to the side"
            Close(Link.None);
        }

        bool partFollows = !VerbFirst && _current is { FootFirst: true, HasVerb: true, IsFigure: false, Feet.Count: 1, Dir: null, Part.Length: 0 } && _current.Feet[0].Foot == foot && _pending is Link.None && at + 1 < _end && _terms[at + 1].Kind is TermKind.Part && !_current.HeadText.Contains(' ', StringComparison.Ordinal);
        if (partFollows)
        {
            // "left hitch left heel"
            Close(Link.None);
        }

        bool sideOfFoot = !certain && _current is { Feet.Count: 1, Dir: null, Reference: null } && (_current.Feet[0].IsCertain || _current.FootFirst) && _current.Feet[0].Foot == foot && _current.Head?.Verb is not null && !_current.IsFigure && _pending is Link.None;
        if (sideOfFoot && !VerbFirst && NextIndex(at + 1) is int coming and >= 0 && (_terms[coming].Kind is TermKind.Move || (_terms[coming].Kind is TermKind.Dir && _current.Head!.Verb is ActionKind.Touch or ActionKind.Tap && _terms[coming].Meaning.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together) || (_terms[coming].Kind is TermKind.Dir && _current.Head!.Verb is ActionKind.Hitch or ActionKind.Scuff or ActionKind.Brush or ActionKind.Stomp or ActionKind.Hook or ActionKind.Flick or ActionKind.Kick && !(_current.Head.Verb is ActionKind.Kick && _terms[coming].Meaning.Direction is Direction.Side)) || (_terms[coming].Kind is TermKind.Part && !_current.HeadText.Contains(' ', StringComparison.Ordinal))))
        {
            // "left kick left scuff", "right brush right heel": the foot begins the next move
            Close(Link.None);
            sideOfFoot = false;
        }

        if (sideOfFoot)
        {
            // "RF step right": the foot is named already, so this is where it goes
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = foot };
            _current.DirSide = foot;
            Widen(term);
            return;
        }

        if (_current.Diagonal && at > 0 && _terms[at - 1].Meaning.Special == "diag" && _current.DirSide is null && _current.Feet.Count > 0)
        {
            _current.DirSide = foot;
            Widen(term);
            return;
        }

        StartIfPending(certain ? TermKind.Foot : TermKind.Side, at);
        if (_current is { Head.Verb: ActionKind.Pivot or ActionKind.Unwind, TurnSide: not null, Feet.Count: 0, Amount: not null } && _pending is Link.None && NextIndex(at + 1) is int begun and >= 0 && (_terms[begun].Kind is TermKind.Dir or TermKind.Part || (_terms[begun].Kind is TermKind.Move && !VerbFirst)))
        {
            // "1/2 pivot left right mambo forward"
            Close(Link.None);
        }

        if (_current.Feet.Count > 0 && (_current.Dir is not null || _current.Part.Length > 0 || _current.Amount is not null) && !IsListContinued(at) && !(_current.IsFigure && _current.Feet[^1].Foot != foot && AllFeetUpTo(at)))
        {
            Close(Link.None);
        }
        else if (_current is { IsFigure: true, Feet.Count: > 0 } && !VerbFirst && NextIndex(at + 1) is int move and >= 0 && (_terms[move].Kind is TermKind.Move || (_terms[move].Kind is TermKind.Dir or TermKind.Part && _current is { FootFirst: true, Feet.Count: 1 })) && (_current.Feet[^1].Foot != foot || (_current is { FootFirst: true, Feet.Count: 1 } && _pending is Link.None)))
        {
            // "right heel strut left heel strut"
            Close(Link.None);
        }
        else if (_current.Feet.Count > 0 && _current.HasVerb && !_current.IsFigure && NextIndex(at + 1) is int following and >= 0 && (_terms[following].Kind is TermKind.Dir or TermKind.Part || (_terms[following].Kind is TermKind.Move && !VerbFirst)) && _current.Feet[^1].Foot != foot)
        {
            // "step right left behind": the second foot begins its own move when something follows it
            Close(Link.None);
        }

        bool reference = mayBeReference || (afterPlace && _current.Feet.Count == 0);
        _current.FootFirst |= _current.Head is null;
        _current.Feet.Add(new FootWord(foot, certain, reference && afterPlace, term.Text.Length > 3));
        Widen(term);
    }

    private bool SaysTo(int at)
    {
        for (int i = at; i >= 0 && _terms[i].Kind is TermKind.Filler; i--)
        {
            if (_terms[i].Text.Split(' ').Any(w => w.ToLowerInvariant() is "to" or "by" or "towards" or "toward"))
            {
                return true;
            }
        }

        return false;
    }

    private static bool EndsInPlace(string name) => name.EndsWith(" next to", StringComparison.OrdinalIgnoreCase) || name.EndsWith(" beside", StringComparison.OrdinalIgnoreCase)
        || name.EndsWith(" across", StringComparison.OrdinalIgnoreCase) || name.EndsWith(" over", StringComparison.OrdinalIgnoreCase) || name.EndsWith(" behind", StringComparison.OrdinalIgnoreCase)
        || name.EndsWith(" in front of", StringComparison.OrdinalIgnoreCase);

    private bool IsPassing(int at)
    {
        while (at > 0 && _terms[at].Kind == TermKind.Filler && _terms[at].Text.ToLowerInvariant() is "the" or "your")
        {
            at--;
        }

        return _terms[at].Kind == TermKind.Filler && _terms[at].Text.ToLowerInvariant() is "past" or "past the" or "past your" or "passing";
    }

    private bool AllFeetUpTo(int at)
    {
        int next = NextIndex(at + 1);
        return next < 0 || _terms[next].Kind is TermKind.Side or TermKind.Foot || (_terms[next].Kind is TermKind.Move && VerbFirst);
    }

    private bool NextSuitsNewClause(int at)
    {
        // "cross R over L side R": L is the standing foot; "cross R over, L side": a comma stands there.
        // "step R together L side": L begins the next move when a direction follows and no other foot comes before it
        int next = NextIndex(at + 1);
        bool verbLast = _terms[at].Kind is TermKind.Foot && _current.Dir is { Direction: Direction.CrossBehind } && next >= 0 && _terms[next] is { Kind: TermKind.Dir, Meaning.Direction: Direction.CrossFront } && _terms[next].Text.StartsWith("cross", StringComparison.OrdinalIgnoreCase) && NextIndex(next + 1) < 0;
        if (_current.Head is null && !verbLast && next >= 0 && _terms[next].Kind is TermKind.Dir && _terms[next].Meaning.Direction is not Direction.Together)
        {
            return true;
        }

        return _current.Dir is { Direction: Direction.Together } && _terms[PreviousIndex(at - 1)].Text.StartsWith("tog", StringComparison.OrdinalIgnoreCase)
            && next >= 0 && (_terms[next].Kind is TermKind.Dir || (_terms[next].Kind is TermKind.Move && !VerbFirst));
    }

    private bool IsListContinued(int at)
    {
        // feet listed one after the other: "walk forward R L R"
        int before = PreviousIndex(at - 1);
        return before >= 0 && _terms[before].Kind is TermKind.Side or TermKind.Foot && AllFeetUpTo(at)
            && !(_current.Part.Length > 0 && _current.Head is null);
    }

    private void SideTerm(Term term, int at)
    {
        Foot side = term.Meaning.Side!.Value;
        int next = NextIndex(at + 1);
        int previous = PreviousIndex(at - 1);
        bool ofBody = previous >= 0 && _terms[previous] is { Kind: TermKind.Part, Meaning.Part: "body" or "shoulder" or "shoulders" } && NextIndex(at + 1) < 0;
        if (ofBody || (at + 1 < _end && IsArm(_terms[at + 1])) || (at > 0 && IsArm(_terms[at - 1])))
        {
            // "right arm", "look left": not a foot
            _current.HasStyle = true;
            Widen(term);
            return;
        }

        // right foot, right heel, right toe, right knee, right hip
        if (next >= 0 && _terms[next].Kind == TermKind.Part && _terms[next].Meaning.Part is "heel" or "toe" or "ball" or "heels" or "toes" && next == at + 1 && !_terms[next].Text.StartsWith("on", StringComparison.OrdinalIgnoreCase))
        {
            FootTerm(term, at, true);
            return;
        }

        if (_current is { Part: "ball", Head: null, Feet.Count: 0, Dir: null })
        {
            // "on ball of R"
            FootTerm(term, at, true);
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

        bool turnedFigure = _current is { Amount: not null, IsFigure: true } && previous >= 0 && _terms[previous] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ NamedBy: NamedBy.FirstFoot, Rows.Count: > 2 }, ..] } } && _current.Feet.Count == 0;
        turnedFigure |= previous >= 0 && _terms[previous] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ NamedBy: NamedBy.Turn, Rows.Count: > 1 }, ..] } } && _current.Feet.Count == 0;
        if ((turnedFigure || TurnsByName(previous)) && ((_current.Feet.Count == 1 && _current.Feet[0].Foot != side && next < 0) || (_current.Feet.Count == 0 && next >= 0 && _terms[next] is { Kind: TermKind.Move, Meaning: { Verb: ActionKind.Step, IsIng: true } } && FeetOnlyFollow(next + 1))) && _current.TurnSide is null && _pending is Link.None)
        {
            // "left half turn shuffle right", "half turn shuffle right stepping L, R, L"
            _current.TurnSide = side;
            Widen(term);
            return;
        }

        bool turnBefore = previous >= 0 && (_terms[previous].Kind is TermKind.Amount || (_terms[previous].Kind is TermKind.Turn && (_current.Amount is not null || !IsStepAfter(at))) || (_terms[previous].Kind is TermKind.Move && IsTurnVerb(_terms[previous].Meaning) && _terms[previous].Meaning.Verb is ActionKind.Pivot or ActionKind.Unwind));
        turnBefore |= previous >= 0 && _terms[previous].Kind is TermKind.Move && _terms[previous].Meaning is { Verb: null, Figures.Count: > 0 } named && named.Figures.Any(VariantParts.IsStepAndPivot) && _current.Feet.Count == 0 && !(next >= 0 && (_terms[next].Kind is TermKind.Amount || (_terms[next].Kind is TermKind.Move && AmountOfTurn(_terms[next].Text) is not null)));
        turnBefore |= previous >= 0 && _terms[previous].Kind is TermKind.Move && _current.Feet.Count == 0 && _terms[previous].Text.Contains("turn", StringComparison.OrdinalIgnoreCase)
            && _terms[previous].Meaning is { Verb: null, Figures.Count: > 0 } spin && spin.Figures.Any(f => f.Rows[f.Rows.Count - 1] is { Action: { Kind: ActionKind.Pivot, Turn.Sign: not 0 }, Foot: RelativeFoot.Same });
        turnBefore |= previous >= 0 && _terms[previous].Kind is TermKind.Move && _current.Feet.Count == 0 && _clauses.Count > 0 && _terms[previous].Text.EndsWith("spiral", StringComparison.OrdinalIgnoreCase);
        turnBefore |= previous >= 0 && _terms[previous].Kind is TermKind.Move && _current.Feet.Count == 0 && _terms[previous].Text.EndsWith(" turn", StringComparison.OrdinalIgnoreCase)
            && next >= 0 && _terms[next].Kind is TermKind.Side or TermKind.Foot && _terms[previous].Meaning is { Verb: null, Figures.Count: > 0 } turned && turned.Figures.All(f => f.TotalTurn.Sign != 0 && f.NamedBy == NamedBy.FirstFoot);
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

    private bool SaysOnto(int at)
    {
        for (int i = at; i >= 0 && _terms[i].Kind is TermKind.Filler; i--)
        {
            if (_terms[i].Text.StartsWith("onto", StringComparison.OrdinalIgnoreCase) || _terms[i].Text.StartsWith("on to", StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether the name at this place says how far it turns, and is called by its first foot.</summary>
    private bool TurnsByName(int at) => at >= 0 && _terms[at] is { Kind: TermKind.Move, Meaning: { Verb: null, NamesAmount: true, Figures.Count: > 0 } named } && named.Figures.All(f => f.TotalTurn.Sign != 0 && f.NamedBy == NamedBy.FirstFoot && f.Rows.Count > 2);

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

            if (_terms[i].Kind is TermKind.Dir && _terms[i].Meaning.Side is not null)
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

        if (at > 0 && PreviousPart(at) is "body" or "shoulder" or "shoulders" && _current.Head is not null)
        {
            // "opening the body to the left corner"
            _current.HasStyle = true;
            Widen(term);
            return;
        }

        if (dir is { Direction: Direction.Side, Side: Foot round } && at > 0 && _terms[at - 1] is { Kind: TermKind.Filler } way && way.Text.ToLowerInvariant() is "around" or "round" && _current is { Feet.Count: > 0, Dir: null, Amount: null } && _pending is Link.None)
        {
            // "walk R, L, R, L around to the right": the way round, how far comes after
            Close(Link.None);
            _current.HasTurnWord = true;
            _current.SaysCircle = true;
            _current.TurnSide = round;
            Widen(term);
            return;
        }

        bool onward = _pending is Link.Soft && !_with && dir.Direction is Direction.CrossFront or Direction.CrossBehind && !term.Text.StartsWith("cross", StringComparison.OrdinalIgnoreCase)
            && _current is { Feet.Count: 1, Dir.Direction: Direction.Forward or Direction.Back, Reference: null, Amount: null, Head: null or { Verb: ActionKind.Step or ActionKind.Touch or ActionKind.Point or ActionKind.Kick } }
            && NextIndex(at + 1) is int over && (over < 0 || (_terms[over].Meaning.Side is Foot stood && stood != _current.Feet[0].Foot && NextIndex(over + 1) < 0));
        if (onward)
        {
            // "R forward and across L": one place, told in two words
            _pending = Link.None;
            _current.Dir = dir;
            _current.DirText = term.Text;
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
            && (_terms[previous].Kind is TermKind.Amount or TermKind.Turn || (_terms[previous].Kind == TermKind.Move && IsTurnVerb(_terms[previous].Meaning) && _terms[previous].Meaning.Verb is ActionKind.Pivot or ActionKind.Unwind))
            && _pending is not Link.Amp;
        if (ofTurn)
        {
            _current.TurnSide = dir.Side;
            Widen(term);
            return;
        }

        if (dir.Direction is Direction.Clockwise or Direction.Anticlockwise && (_current.Amount is not null || _current.HasTurnWord))
        {
            _current.TurnSide = dir.Direction == Direction.Clockwise ? Foot.Right : Foot.Left;
            Widen(term);
            return;
        }

        bool letter = dir.Side is Foot beside && term.Text.Length == 4 && term.Text.StartsWith("to ", StringComparison.OrdinalIgnoreCase) && _current.Feet.Count > 0 && _current.Feet[^1].Foot != beside && _current.Dir is null && _pending is Link.None
            && _current.Head?.Verb is null or ActionKind.Step or ActionKind.Touch or ActionKind.Drag or ActionKind.Slide or ActionKind.Tap;
        bool gestureTo = dir is { Direction: Direction.Side, Side: Foot at0 } && term.Text.StartsWith("to ", StringComparison.OrdinalIgnoreCase) && !term.Text.Contains("side", StringComparison.OrdinalIgnoreCase) && _current is { Feet.Count: 1, Dir: null, Reference: null } && _pending is Link.None
            && _current.Feet[0].Foot != at0 && (_current.Head?.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Drag or ActionKind.Slide || (_current.Head is { Verb: ActionKind.Step } && _current.HeadText.StartsWith("join", StringComparison.OrdinalIgnoreCase)) || (_current.Head is { Verb: ActionKind.Step } && term.Text.Equals("to the " + (at0 == Foot.Right ? "right" : "left") + " foot", StringComparison.OrdinalIgnoreCase)))
            && NextIndex(at + 1) is int foot0 && (foot0 < 0 || _terms[foot0].Kind is TermKind.Part);
        gestureTo |= dir is { Direction: Direction.Side, Side: Foot at1 } && _current is { Feet.Count: 1, Dir: null, Reference: null } && _current.Feet[0].Foot != at1 && at + 1 < _end && _terms[at + 1].Text.Equals("foot", StringComparison.OrdinalIgnoreCase) && _pending is Link.None;
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

        bool endsFigure = _current is { IsFigure: true, Feet.Count: 2 } && dir.Direction == Direction.Together && _pending is Link.None && _current.HeadText.Contains("touch", StringComparison.OrdinalIgnoreCase)
            && NextIndex(at + 1) is int endFoot and >= 0 && _terms[endFoot].Meaning.Side == _current.Feet[0].Foot;
        if (endsFigure)
        {
            // "vine left and touch right beside left": where the touch of the figure is made
            _skipsFoot = true;
            Widen(term);
            return;
        }

        StartIfPending(TermKind.Dir, at);
        bool footFollows = NextIndex(at + 1) is int afterDir and >= 0 && _terms[afterDir].Kind is TermKind.Side or TermKind.Foot;
        if (_placesStart && _pending is Link.None && footFollows && _current is { Head: not null, Feet.Count: > 0, Dir: null } && !_current.IsFigure && dir.Side is null && dir.Direction is Direction.Back or Direction.Forward or Direction.Side or Direction.LockBehind or Direction.CrossBehind
            && !(dir.Direction is Direction.LockBehind or Direction.CrossBehind && _terms[NextIndex(at + 1)].Meaning.Side != _current.Feet[^1].Foot))
        {
            Close(Link.None);
        }

        bool afterRecover = _current is { Head.Verb: ActionKind.Recover, Feet.Count: 1, Dir: null } && footFollows && dir.Direction is Direction.CrossFront or Direction.CrossBehind && _pending is Link.None;
        bool closing = (term.Text.StartsWith("clos", StringComparison.OrdinalIgnoreCase) || dir.Special == "lock") && !term.Text.Contains(' ', StringComparison.Ordinal) && _current is { Feet.Count: 1 } && (_current.Dir is { Direction: Direction.Back } || _current is { Dir: null, Head.Verb: ActionKind.Step }) && footFollows && _pending is Link.None && _terms[NextIndex(at + 1)].Meaning.Side != _current.Feet[0].Foot;
        if (_current is { Head.Verb: ActionKind.Hold or ActionKind.Clap or ActionKind.Snap, Feet.Count: 0, Dir: null } && footFollows && _pending is Link.None && dir.Side is null)
        {
            // "clap cross left over right"
            Close(Link.None);
        }

        bool turned = _current is { TurnSide: not null, Feet.Count: 0, Dir: null, Head: { Verb: ActionKind.Pivot } or { Verb: null } } && IsTurnVerb(_current.Head) && (_current.HasVerb || VariantParts.IsStepAndPivot(_current.Head!.Figures[0]));
        if (turned && footFollows && dir.Side is null && dir.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together && _pending is Link.None)
        {
            // "pivot quarter left cross right over left"
            Close(Link.None);
        }

        bool recoverClose = _current is { Head.Verb: ActionKind.Recover, Feet.Count: 1, Dir: null } && footFollows && dir.Direction is Direction.Together && term.Text.StartsWith("clos", StringComparison.OrdinalIgnoreCase) && _pending is Link.None && _terms[NextIndex(at + 1)].Meaning.Side != _current.Feet[0].Foot;
        bool crossAfter = VerbFirst && term.Text.Equals("cross", StringComparison.OrdinalIgnoreCase) && footFollows && _pending is Link.None && _current is { Head.Verb: ActionKind.Stomp or ActionKind.Scuff or ActionKind.Hitch or ActionKind.Brush or ActionKind.Flick, Feet.Count: 1, Dir: null };
        if (recoverClose || crossAfter)
        {
            Close(Link.None);
        }

        bool sameAgain = _current is { HasVerb: true, IsFigure: false, Feet.Count: 1, Dir: null, Head.Verb: not ActionKind.Step } && dir.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together && dir.Side is null && _pending is Link.None && footFollows && _terms[NextIndex(at + 1)].Meaning.Side == _current.Feet[0].Foot;
        if (afterRecover || closing || sameAgain)
        {
            // "recover L cross R over", "step L back close R": the second is a step of its own
            Close(Link.None);
        }

        if (_current is { IsFigure: true, Feet.Count: > 0 } && _pending is Link.None && footFollows && dir.Side is null && dir.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together or Direction.LockBehind or Direction.LockFront
            && (_current.Feet.Count >= 2 || _terms[NextIndex(at + 1)].Meaning.Side == _current.Feet[^1].Foot || (VerbFirst && _current.Head!.Figures.All(f => f.Rows.Count > 2 && f.Rows[0].Action.Direction != dir.Direction) && !_current.HeadText.Contains("cross", StringComparison.OrdinalIgnoreCase) && !_current.HeadText.Contains("box", StringComparison.OrdinalIgnoreCase) && !_current.HeadText.Contains("touch", StringComparison.OrdinalIgnoreCase) && dir.Direction is not Direction.LockBehind)))
        {
            // "rock R to side recover L cross R over": the cross is a step of its own
            Close(Link.None);
        }

        if (dir.Special == "diag" && dir.Side is Foot bare && term.Text.Length > 0 && char.ToLowerInvariant(term.Text[0]) is 'r' or 'l' && _current.Feet.Count == 0 && dir.Side is not null)
        {
            // "R diag forward": the foot, and the diagonal on its side
            _current.Feet.Add(new FootWord(bare, false, false));
            _current.Diagonal = true;
            Widen(term);
            return;
        }

        if (dir.Special == "diag")
        {
            if (_current.Dir is not null && _current.Dir.Direction is not (Direction.Forward or Direction.Back or Direction.Side) && _current.Diagonal)
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

        Direction present = _current.Dir.Direction;
        Direction coming = dir.Direction;
        bool feetAfter = NextIndex(at + 1) is int n and >= 0 && _terms[n].Kind is TermKind.Side or TermKind.Foot;
        if ((present, coming) is (Direction.CrossBehind, Direction.CrossFront) && term.Text.StartsWith("cross", StringComparison.OrdinalIgnoreCase) && _current.Reference is not null && NextIndex(at + 1) < 0 && _pending is Link.None)
        {
            // "RF behind LF cross": the verb comes last
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
        bool referenceAfter = placing && following >= 0 && _terms[following].Kind is TermKind.Side or TermKind.Foot && _current.Feet.Count > 0 && _terms[following].Meaning.Side != _current.Feet[^1].Foot;
        bool said = !string.Equals(term.Text, _current.DirText, StringComparison.OrdinalIgnoreCase);
        if (present == Direction.Together && aside && _current.Feet.Count > 0 && _current.Feet[^1].Foot != dir.Side && _pending is Link.None)
        {
            // "close left to right"
            _current.Reference = dir.Side;
            Widen(term);
            return;
        }

        bool verbAfter = following >= 0 && present == coming && _current.Reference is null && _terms[following] is { Kind: TermKind.Move, Meaning.Verb: not null };
        if (_pending is Link.None && placing && said && (referenceAfter || _current.Feet.Count == 0 || following < 0 || verbAfter) && (present == coming || (present, coming) is (Direction.LockBehind, Direction.CrossBehind) or (Direction.LockBehind, Direction.CrossFront) or (Direction.Back, Direction.CrossBehind) or (Direction.Back, Direction.CrossFront) or (Direction.Forward, Direction.CrossFront) or (Direction.CrossFront, Direction.CrossBehind) or (Direction.Back, Direction.Together) or (Direction.In, Direction.Together) or (Direction.Up, Direction.Together) or (Direction.Up, Direction.CrossFront) or (Direction.Up, Direction.CrossBehind) or (Direction.InPlace, Direction.Together)))
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

        bool sameKind = present == coming || (present, coming) is (Direction.CrossFront, Direction.Forward) or (Direction.CrossFront, Direction.Side)
            or (Direction.Side, Direction.Out) or (Direction.Out, Direction.Side) or (Direction.Back, Direction.Together) or (Direction.Home, Direction.Together)
            or (Direction.Together, Direction.InPlace) or (Direction.InPlace, Direction.Together) or (Direction.Back, Direction.InPlace) or (Direction.LockBehind, Direction.CrossBehind) or (Direction.LockBehind, Direction.CrossFront)
            or (Direction.Forward, Direction.Out) or (Direction.Back, Direction.Out) or (Direction.Out, Direction.Forward) or (Direction.Out, Direction.Back)
            or (Direction.Back, Direction.Home) or (Direction.Back, Direction.In) or (Direction.In, Direction.Together) or (Direction.Together, Direction.Home)
            or (Direction.CrossBehind, Direction.Side) or (Direction.Side, Direction.Forward) or (Direction.Down, Direction.InPlace) or (Direction.Up, Direction.Forward) or (Direction.Forward, Direction.Up)
            or (Direction.Down, Direction.Together) or (Direction.Home, Direction.InPlace) or (Direction.CrossFront, Direction.In);
        bool soleMove = _current.HasVerb && !_current.IsFigure && (coming is not (Direction.Together or Direction.CrossFront or Direction.CrossBehind) || dir.Side is not null);
        if (_pending is Link.None && sameKind && !(present == coming && _current.Head is null && dir.Side is null) && (soleMove || coming is Direction.Together or Direction.InPlace or Direction.CrossFront or Direction.CrossBehind or Direction.Home) && !(_current.Head is null && feetAfter && _current.Feet.Count > 0))
        {
            if ((present, coming) is (Direction.LockBehind, Direction.CrossFront))
            {
                _current.Dir = dir with { Direction = Direction.LockFront };
            }
            else if (coming is Direction.Together && present is Direction.Back or Direction.In or Direction.Down)
            {
                _current.Dir = dir;
            }
            else if ((present, coming) is (Direction.Out, Direction.Forward or Direction.Back) or (Direction.Forward or Direction.Back, Direction.Out))
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

    private void AmountTerm(Term term, int at)
    {
        bool stepLike = _current.HasContent && !_current.IsTurnOnly && !_current.IsFigure && !IsTurnVerb(_current.Head) && !_current.HasTurnWord && _current.TurnSide is null
            && _current is not { Head.Verb: ActionKind.Swivel or ActionKind.Twist, Feet.Count: 0, Dir: null }
            && !(_current.Amount is null && _current.Feet.Count > 0 && _current.Dir is null && (_pending is Link.None || (_with && _current.IsFeetOnly)));
        if (_current is { Amount: null, Dir: null, Feet.Count: 1, Part: "ball", Head: null, Reference: null } && _pending is Link.None)
        {
            // "on ball of L 1/4 turn right": a turn on that foot
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = _current.Feet[0].Foot;
            _current.Feet.Clear();
            _current.Part = "";
            _current.Amount = term.Meaning.Value;
            Widen(term);
            return;
        }

        bool leadsOn = !_with && TurnLeadsOn(at);
        if (_pending is Link.Soft && _current.HasContent && (!_current.IsFigure || leadsOn) && (!IsTurnVerb(_current.Head) || leadsOn) && !(_with && _current.IsFeetOnly))
        {
            Close(Link.Soft);
        }
        else if (stepLike || (leadsOn && _pending is Link.None && !_current.IsTurnOnly && _current.Feet.Count > 0))
        {
            Close(Link.None);
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
                    return _current is { IsFigure: true, Feet.Count: > 0 } && stepping >= 0 && _terms[stepping].Meaning.Side is Foot steps && (steps != _current.Feet[0].Foot) == EndsOnFirstFoot(_current.Head!.Figures[0]);
                default:
                    return false;
            }
        }

        return false;
    }

    private static bool EndsOnFirstFoot(StepDefinition figure)
    {
        PatternRow? last = figure.Rows.LastOrDefault(r => r.Action.Effect == WeightEffect.Takes);
        return last is null || last.Foot != RelativeFoot.Other;
    }

    private void TurnTerm(Term term, int at)
    {
        if (_current is { Head: null, Feet.Count: 0 } && (term.Text.StartsWith("circl", StringComparison.OrdinalIgnoreCase) || term.Text.EndsWith("circle", StringComparison.OrdinalIgnoreCase) || term.Text.Equals("arc", StringComparison.OrdinalIgnoreCase)))
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

    private void MoveTerm(Term term, int at)
    {
        Meaning move = term.Meaning;
        if (AmountOfTurn(term.Text) is int amount && _current is { Amount: null } && (_current.HasTurnWord || IsTurnVerb(_current.Head)))
        {
            // "unwind full turn left"
            _current.Amount = amount;
            _current.HasTurnWord = true;
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (at > 0 && PreviousIndex(at - 1) is int arms and >= 0 && IsArm(_terms[arms]) && move.Verb is ActionKind.Bump or ActionKind.Sway)
        {
            // "hands on hips"
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Drag or ActionKind.Slide && NextIndex(at + 1) is int drawn and >= 0 && IsArm(_terms[drawn]) && _current.HasContent)
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

            if (move.Verb is ActionKind.Step && _current is { IsTurnOnly: true, Amount: 8, TurnSide: not null } && FeetOnlyFollow(at + 1))
            {
                // "full turn left stepping R, L"
                Widen(term);
                return;
            }

            if (move.Verb is ActionKind.Step && _current is { IsFigure: true, Feet.Count: < 2 } && _current.Head!.Figures[0].Rows.Count > 1 && FeetOnlyFollow(at + 1) && (_current.Feet.Count == 0 || NextIndex(at + 1) is int begins and >= 0 && _terms[begins].Meaning.Side == _current.Feet[0].Foot))
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

        if (move is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.SplitToes or ActionKind.FanToe }, ..] }, ..] } && term.Text.EndsWith(" out", StringComparison.OrdinalIgnoreCase) && _current is { Head.Verb: ActionKind.Touch or ActionKind.Tap or ActionKind.Point, Feet.Count: 1, Dir: null } && _pending is Link.None)
        {
            // "touch your left toes out to the side"
            _current.Part = "toe";
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Out };
            _current.DirText = "out";
            Widen(term);
            return;
        }

        bool laid = move.Verb is ActionKind.Drop || move is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Dig or ActionKind.Touch or ActionKind.Point }] }, ..] };
        if (laid && _current is { Head.Verb: ActionKind.Step, Feet.Count: 1, Dir: null, Part.Length: 0 } && IsPutting(_current.HeadText) && _pending is Link.None)
        {
            // "put your right heel down", "put R heel forward"
            _current.Head = move;
            _current.HeadText = term.Text;
            Widen(term);
            return;
        }

        bool settled = _current is { Head.Verb: ActionKind.Step, Feet.Count: 1, Dir.Direction: Direction.Side or Direction.Out } && move.Verb is ActionKind.Sway or ActionKind.Bump or ActionKind.RollHips;
        settled |= _current is { Head: null or { Verb: ActionKind.Step or ActionKind.Rock or ActionKind.Recover }, Feet.Count: 1, Dir: not null } && move.Verb is ActionKind.Dip or ActionKind.Shimmy or ActionKind.RollBody;
        if (term.Text.Contains("ing", StringComparison.OrdinalIgnoreCase) && settled && _pending is Link.None)
        {
            // "step R to side swaying right": how the step is made
            _current.HasStyle = true;
            int way = NextIndex(at + 1);
            _skipsFoot = way >= 0 && _terms[way].Kind is TermKind.Foot or TermKind.Side;
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Step && _current is { Head.Verb: ActionKind.Step, Feet.Count: 0, Dir: null, Amount: null } && _pending is Link.None && _current.HeadText.StartsWith("step", StringComparison.OrdinalIgnoreCase) && at > 1 && _terms[at - 1].Kind is TermKind.Size or TermKind.Filler or TermKind.Move)
        {
            // "step a big step to the side"
            Widen(term);
            return;
        }

        bool scuffs = move is { Verb: ActionKind.Scuff or ActionKind.Brush } or { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Scuff or ActionKind.Brush }] }, ..] };
        if (_soThat && scuffs && _current is { Feet.Count: 1, Head: null or { Verb: ActionKind.Step } } && _pending is Link.None)
        {
            // "swing the left foot forward so that the heel scuffs"
            _current.Head = move;
            _current.HeadText = term.Text;
            _current.Part = "";
            Widen(term);
            return;
        }

        bool nameGoesOn = move.Verb is ActionKind.Step && term.Text.ToLowerInvariant() is "step" or "steps" && _current.IsFigure && _pending is Link.None && (NextIndex(at + 1) < 0 || (_terms[NextIndex(at + 1)].Kind == TermKind.Foot && NextIndex(NextIndex(at + 1) + 1) < 0))
            && !_current.HeadText.Contains("step", StringComparison.OrdinalIgnoreCase) && _current.Head!.Figures.Any(f => f.Name.EndsWith("step", StringComparison.Ordinal));
        if (nameGoesOn)
        {
            // "L sailor 1/4 L step"
            Widen(term);
            return;
        }

        if (move.Verb is ActionKind.Hitch or ActionKind.Hook && move.Verb == _current.Head?.Verb && _pending is Link.None && at > 0 && _terms[at - 1].Text.ToLowerInvariant() is "into a" or "into" or "in a")
        {
            // "lift the left knee into a hitch"
            Widen(term);
            return;
        }

        // "turn 1/4 left stepping R forward": the turn goes with the step
        if (move.Verb is ActionKind.Hold or ActionKind.Clap or ActionKind.Snap && move.Figures.Count == 0 && _current.HasContent)
        {
            // "L out hold": a hold is a move of its own
            Close(_pending is Link.Soft or Link.Amp ? _pending : Link.None);
            _pending = Link.None;
        }

        bool closes = move.Verb is ActionKind.Step && _current is { Head: null, Feet.Count: 1, Dir: not null } && _pending is Link.None && NextIndex(at + 1) < 0;
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
            bool turnGoesOn = _current.IsTurnOnly && _current.Amount is not null && _pending is Link.None && _current.WeightNote is null;
            bool modifier = turnGoesOn || (_current.Head is null && !_current.IsTurnOnly && _current.Reference is null && _pending is Link.None or Link.Hard && !HasOwnFootAfter(at)) && !(_current.HasTurnWord && _current.Feet.Count > 0 && _current.Dir is not null);
            if (_current.Head is null && _pending is Link.None or Link.Hard && _current.Feet.Count == 0 && !_current.IsTurnOnly)
            {
                // only a direction or a part so far: it belongs to the verb ("cross rock", "side touch", "heel grind")
                modifier = true;
            }

            if (!modifier || _pending is Link.Soft or Link.Amp)
            {
                Close(_pending is Link.Soft or Link.Amp ? _pending : Link.None);
            }
        }

        _pending = Link.None;
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

    private static int? AmountOfTurn(string text) => text.ToLowerInvariant() switch
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

    /// <summary>The clause that a note on the weight speaks of: a hold or a clap leaves it where the move before brought it.</summary>
    private Clause WeightOwner()
    {
        if (_current.HasContent && !IsStill(_current))
        {
            return _current;
        }

        Clause? moved = _clauses.FindLast(c => !c.IsAmp && !IsStill(c));
        return moved is { WeightNote: null } && (_current.HasContent || (_clauses.Count > 0 && IsStill(_clauses[^1]))) ? moved : Last();
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
            bool moves = term.Text.EndsWith("onto", StringComparison.OrdinalIgnoreCase) || term.Text.EndsWith(" on to", StringComparison.OrdinalIgnoreCase);
            bool actsItself = !_current.HasContent && _current.Link is Link.Hard && (_clauses.Count > 0 ? moves || _clauses[^1].Head?.Verb is ActionKind.Rock or ActionKind.Lunge : term.Text.Contains("back", StringComparison.OrdinalIgnoreCase));
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

            if (!actsItself)
            {
                owner.WeightNote = TermKind.WeightOn;
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

        if (next + 1 < _end && _terms[next].Kind == TermKind.Dash && _terms[next + 1].Kind == TermKind.Number && _terms[next + 1].Meaning.Value > number && _current.HasContent)
        {
            // "drag L in over 2-3": says again what the label says
            Widen(_terms[next + 1]);
            at = next + 1;
            return;
        }

        if (at > 1 && _terms[at - 1].Kind == TermKind.Join && _terms[at - 2].Kind == TermKind.Number && at > 2 && _terms[at - 3].Kind == TermKind.Filler)
        {
            // "during counts 2 and 3"
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (at > 0 && _terms[at - 1].Kind == TermKind.Filler && (_terms[at - 1].Text.Contains("count", StringComparison.OrdinalIgnoreCase) || _terms[at - 1].Text.ToLowerInvariant() is "on" or "at"))
        {
            // "on count eight": says again what the label says, or where the turn is made
            if (Last() is { Amount: not null } or { HasTurnWord: true })
            {
                Last().OnCount = number;
            }

            Widen(term);
            return;
        }

        bool countsWord = next < _end && _terms[next].Kind == TermKind.Filler && _terms[next].Text.StartsWith("count", StringComparison.OrdinalIgnoreCase);
        if (countsWord || (next < _end && _terms[next].Text.StartsWith("beat", StringComparison.OrdinalIgnoreCase)))
        {
            Lasting(next, number);
            at = next;
            Widen(term);
            return;
        }

        if (next < _end && _terms[next].Text.StartsWith("steps", StringComparison.OrdinalIgnoreCase) && _current.Head is not null && number is >= 2 and <= 8)
        {
            // "walk forward three steps"; "walk round in four steps" has them already
            _current.Times = _current.IsFigure && _current.Head.Figures.Any(f => f.Rows.Count == number) ? 1 : number;
            at = next;
            Widen(term);
            return;
        }

        if (NextIndex(next) is int follow and >= 0 && _terms[follow].Kind is TermKind.Move or TermKind.Dir or TermKind.Side && number is >= 2 and <= 8)
        {
            if (_current.HasContent)
            {
                Close(Link.None);
            }

            _current.Times = number;
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
            Clause owner = _current.IsRepeat || _clauses.Count == 0 || _current.HasContent ? _current : _clauses[^1].IsRepeat ? _clauses[^1] : _current;
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
        while (next < _end && (_terms[next].Kind is TermKind.Filler || (_terms[next].Kind is TermKind.Move && _terms[next].Meaning.Verb is ActionKind.Step)))
        {
            if (_terms[next].Text.StartsWith("section", StringComparison.OrdinalIgnoreCase) && next + 1 < _end && _terms[next + 1].Kind == TermKind.Number)
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

    /// <summary>A bracket: a clock time or a note is passed over; a detail belongs to the figure before it.</summary>
    private void Bracket(ref int at)
    {
        int close = at + 1;
        int depth = 1;
        while (close < _end)
        {
            depth += _terms[close].Kind switch { TermKind.Open => 1, TermKind.Close => -1, _ => 0 };
            if (depth == 0)
            {
                break;
            }

            close++;
        }

        int contentStart = at + 1;
        if (close == contentStart + 1 && _terms[contentStart].Kind == TermKind.Number && Last().HasContent)
        {
            // "(3)": the count again
            Last().Cover(_terms[Math.Min(close, _end - 1)].Span);
            at = close;
            return;
        }

        if (contentStart < close && _terms[contentStart].Text.ToLowerInvariant() is "or" or "alternatively" && Last().HasContent)
        {
            // "drag (or slide)": the first word stands
            Last().HasStyle = true;
            Last().Cover(_terms[Math.Min(close, _end - 1)].Span);
            at = close;
            return;
        }

        DropCounts(contentStart, close);
        List<Clause> inner = Build(contentStart, close);
        bool opens = !_current.HasContent && close + 1 < _end && IsContent(_terms[close + 1].Kind);
        Clause owner = opens ? _current : Last();
        List<Clause> moves = inner.Where(c => c.HasContent && !c.IsAmp).ToList();
        if (moves.Count(m => m.Head is not { Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] }) < 2 && owner.HasContent)
        {
            // "(forward, head up)": arms and looks beside one word on the place
            moves.RemoveAll(m => m.Head is { Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] });
        }

        bool hasClock = Enumerable.Range(contentStart, close - contentStart).Any(i => _terms[i].Kind == TermKind.Clock);
        TakeWeightNote(owner, contentStart, close);

        for (int i = contentStart; i < close; i++)
        {
            if (_terms[i].Kind == TermKind.Times && owner.Times == 1)
            {
                owner.Times = Math.Clamp(_terms[i].Meaning.Value, 1, 8);
                owner.TimesStated = true;
            }
        }

        bool ofWeight = Enumerable.Range(contentStart, close - contentStart).Any(i => _terms[i].Kind is TermKind.WeightOn or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth);
        if (moves.Count > 0 && !hasClock && !(ofWeight && moves.Count == 1))
        {
            int rows = owner.Head is { Figures.Count: > 0 } ? owner.Head.Figures[0].Rows.Count : 1;
            if (moves.Count == 1 && moves[0].IsFeetOnly && owner.Amount is not null && owner.TurnSide is null)
            {
                owner.TurnSide = moves[0].Feet[0].Foot;
            }
            else if (moves.Count == 1 && moves[0].IsFeetOnly)
            {
                owner.Feet.AddRange(moves[0].Feet);
            }
            else if (moves.Count == 1 && moves[0].IsTurnOnly)
            {
                if (owner.Amount is null)
                {
                    owner.Amount = moves[0].Amount;
                    owner.TurnSide ??= moves[0].TurnSide;
                }
            }
            else if (moves.Count == 1 && moves[0].Head is { Verb: ActionKind.Sweep or ActionKind.Ronde or ActionKind.Drag or ActionKind.Slide } && owner.HasContent)
            {
                moves[0].Link = Link.Soft;
                moves[0].IsWith = true;
                if (_current.HasContent)
                {
                    Close(Link.Soft);
                }

                _clauses.Add(moves[0]);
            }
            else if (moves.Count == 1 && moves[0].Head is { Verb: ActionKind.Clap or ActionKind.Snap or ActionKind.Slap or ActionKind.Bump or ActionKind.Shimmy or ActionKind.Hold })
            {
                moves[0].Link = Link.Soft;
                if (_current.HasContent)
                {
                    Close(Link.Soft);
                }

                _clauses.Add(moves[0]);
            }
            else if ((moves.Count > 1 || rows > 1 || (owner.Head is null && owner.Dir is null)) && !owner.IsAmp)
            {
                if (owner.HasContent || _clauses.Count > 0)
                {
                    owner.Detail.AddRange(inner.Where(c => c.HasContent || c.Unknown.Count > 0));
                }
                else
                {
                    _clauses.AddRange(inner);
                }
            }
            else if (moves[0].Dir is not null && moves[0].Head is null && moves[0].Feet.Count == 0 && owner.Head?.Verb is ActionKind.Clap or ActionKind.Snap or ActionKind.Hold)
            {
                // "step R, clap, step L, clap (forward)": where the steps go
                foreach (Clause step in _clauses.Where(c => c.Head?.Verb is ActionKind.Step && c.Dir is null))
                {
                    step.Dir = moves[0].Dir;
                    step.DirSide ??= moves[0].DirSide;
                }
            }
            else if (owner.Dir is null && moves[0].Dir is not null && moves[0].Head is null)
            {
                owner.Dir = moves[0].Dir;
                owner.DirSide ??= moves[0].DirSide;
            }
        }

        owner.HasStyle = true;
        at = close;
        if (close < _end)
        {
            owner.Cover(_terms[close].Span);
        }

        _pending = _current.HasContent ? _pending : Link.Hard;
    }

    /// <summary>Counts inside a bracket ("[5 side, 6 behind]") say again what the label says.</summary>
    private void DropCounts(int start, int end)
    {
        List<int> numbers = [];
        for (int i = start; i < end; i++)
        {
            if (_terms[i].Kind == TermKind.Number)
            {
                numbers.Add(i);
            }
        }

        foreach (int i in numbers)
        {
            if (i + 1 < end && _terms[i + 1].Text is "=")
            {
                // "(2 = behind)"
                _terms[i] = _terms[i] with { Meaning = new Meaning(TermKind.Filler) };
                _terms[i + 1] = _terms[i + 1] with { Meaning = new Meaning(TermKind.Filler) };
            }
        }

        bool counting = numbers.Count >= 2 && numbers.Zip(numbers.Skip(1)).All(p => _terms[p.Second].Meaning.Value == _terms[p.First].Meaning.Value + 1L);
        if (counting)
        {
            foreach (int i in numbers)
            {
                _terms[i] = _terms[i] with { Meaning = new Meaning(TermKind.Filler) };
            }
        }
    }

    /// <summary>A note on the weight in brackets: "(no weight)", "(weight on L)".</summary>
    private void TakeWeightNote(Clause owner, int start, int end)
    {
        for (int i = start; i < end; i++)
        {
            TermKind kind = _terms[i].Kind;
            if (kind is TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth)
            {
                owner.WeightNote = kind;
            }
            else if (kind is TermKind.WeightOn)
            {
                for (int next = i + 1; next < end; next++)
                {
                    if (_terms[next].Meaning.Side is Foot foot)
                    {
                        owner.WeightNote = kind;
                        owner.WeightFoot = foot;
                        break;
                    }

                    if (_terms[next].Kind == TermKind.BothFeet)
                    {
                        owner.WeightNote = TermKind.WeightBoth;
                        break;
                    }
                }
            }
        }
    }

    /// <summary>A colon or dash after a figure: the rest of the clause list is its detail, if it is one.</summary>
    private bool TryDetail(ref int at, int end)
    {
        Clause owner = _current;
        if (!_current.IsFigure && _clauses.Count > 0 && _clauses[^1].IsFigure && _current.Head is null && _current.Feet.Count == 0)
        {
            // "rumba box, first half: ..."
            owner = _clauses[^1];
        }

        if (owner is { IsTurnOnly: true, SaysEach: true } && _clauses.Count > 0 && _clauses[^1].IsFigure)
        {
            // "walk a full circle left, a quarter on every step: R, L, R, L"
            owner = _clauses[^1];
        }

        int back = _clauses.Count - 1;
        if (!owner.IsFigure && (_current.Head?.Verb is ActionKind.Clap or ActionKind.Snap) && back >= 0)
        {
            // "vine R & clap: step R, ..."
            back -= _clauses[back].IsAmp ? 1 : 0;
            owner = back >= 0 ? _clauses[back] : owner;
        }

        bool headsOff = owner is { Head.Verb: ActionKind.Step, Feet.Count: 0, Amount: null } && _terms[at].Text == ":" && ReferenceEquals(owner, _current)
            && owner.HeadText.Length > 2 && char.ToLowerInvariant(owner.HeadText[0]) is 't' or 'g' or 'm' or 'w';
        bool repeats = owner is { IsRepeat: true, Head: null } && _terms[at].Text == ":" && ReferenceEquals(owner, _current);
        if (!owner.IsFigure && !headsOff && !repeats)
        {
            return false;
        }

        List<Clause> rest = Build(at + 1, end);
        List<Clause> moves = rest.Where(c => c.HasContent && !c.IsAmp).ToList();
        if ((headsOff || repeats) && moves.Count < 2)
        {
            return false;
        }

        if (repeats)
        {
            // "the same moving back: R behind, ...": what is written out is danced
            owner.IsRepeat = false;
            owner.IsMirrored = false;
            owner.RepeatCounts = null;
        }

        if (moves.Count < 2)
        {
            if (moves.Count == 1 && moves[0].IsFeetOnly)
            {
                owner.Feet.AddRange(moves[0].Feet);
                at = end - 1;
                return true;
            }

            return false;
        }

        string[] rhythm = owner.HeadText.ToLowerInvariant().Split(' ');
        if (rhythm.Length == moves.Count && rhythm.All(w => w is "slow" or "quick"))
        {
            // "slow, quick, quick: L side, R behind, L side": how long each takes
            for (int i = 0; i < rhythm.Length; i++)
            {
                moves[i].Lasts ??= rhythm[i] == "slow" ? 2 : null;
            }

            _clauses.Remove(owner);
            _clauses.AddRange(rest);
            _current = new Clause { Link = Link.Hard };
            at = end - 1;
            return true;
        }

        if (owner is { IsFigure: true, Feet.Count: 0 } && moves.Count == owner.Head!.Figures[0].Rows.Count && moves.TrueForAll(m => m is { IsFeetOnly: true, Feet.Count: 1 }) && rest.Count == moves.Count)
        {
            // "full turn left: R, L"
            owner.Feet.AddRange(moves.SelectMany(m => m.Feet));
            owner.Cover(_terms[end - 1].Span);
            at = end - 1;
            return true;
        }

        if (!ReferenceEquals(owner, _current))
        {
            _current = new Clause { Link = Link.Hard };
        }

        owner.Detail.AddRange(rest);
        owner.DetailAfterDash = _terms[at].Text is "-" or "–" or "—";
        owner.Cover(_terms[end - 1].Span);
        at = end - 1;
        return true;
    }

    private static bool IsPutting(string verb) => verb.Length > 2 && verb[..3].ToLowerInvariant() is "put" or "pla" or "set" or "pos";
}
