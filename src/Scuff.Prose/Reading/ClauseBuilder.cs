using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>
/// Gathers the terms of a line into clauses: one move's worth of words each, its slots (move, foot, direction, contact,
/// size, turn) filled in whatever order they come. A comma ends a clause; so does a word that would fill a slot twice.
/// </summary>
internal sealed partial class ClauseBuilder
{
    private readonly List<Term> _terms;
    private readonly List<Clause> _clauses = [];
    private readonly int _end;
    private Clause _current = new();
    private Link _pending = Link.Hard;
    private bool _styling;
    private bool _with;
    private bool _asYou;
    private bool _skipsFoot;
    private bool _skipsStep;
    private bool _soThat;
    private Clause? _leading;

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
        WordOrder.JoinFeet(terms);
        WordOrder.Mend(terms);
        WayOfTurn.PutLast(terms);
        if (Rhythm(terms) is (List<int> rhythm, int start))
        {
            // "quick quick slow: R forward, L forward, R forward": how long each takes
            List<Clause> told = new ClauseBuilder(terms, terms.Count, placesStart).Run(start);
            List<Clause> moves = told.FindAll(c => c.HasContent && !c.IsAmp);
            if (moves.Count == rhythm.Count)
            {
                for (int i = 0; i < moves.Count; i++)
                {
                    moves[i].Lasts ??= rhythm[i];
                }
            }

            return told;
        }

        return new ClauseBuilder(terms, terms.Count, placesStart).Run(0);
    }

    /// <summary>The counts that the words slow and quick give at the head of a line, and where its moves begin; or null.</summary>
    private static (List<int> Counts, int Start)? Rhythm(List<Term> terms)
    {
        List<int> counts = [];
        for (int i = 0; i < terms.Count; i++)
        {
            switch (terms[i].Text.ToLowerInvariant())
            {
                case "slow":
                    counts.Add(2);
                    break;
                case "quick":
                    counts.Add(1);
                    break;
                case ",":
                    break;
                case ":" when counts.Count > 1:
                    return (counts, i + 1);
                default:
                    return null;
            }
        }

        return null;
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

                    if (term.Text is "-" or "–" or "—"
                        && ((_current.IsFigure && (_current.Head!.Figures[0].Rows.Count > 1 || _current.HeadText.EndsWith("s",
                            StringComparison.OrdinalIgnoreCase))) || IsOfGestures(_current)
                        || (_current.Head is null && _current.Feet.Count == 0 && _clauses.Count > 0 && _clauses[^1].IsFigure))
                        && TryDetail(ref i, _end))
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
                case TermKind.Join when _current.HasContent
                    && (i + 1 >= _end || _terms[i + 1].Kind is TermKind.Separator or TermKind.Close or TermKind.Open or TermKind.Clock
                    or TermKind.With):
                    // "R heel and L heel and": the last and may be danced
                    Amp(term);
                    break;
                case TermKind.Join:
                    _pending = Link.Soft;
                    _with = false;
                    break;
                case TermKind.With when term.Text.Equals("at the same time", StringComparison.OrdinalIgnoreCase)
                    && _current is { HasContent: true, Link: Link.Soft }
                    && (i + 1 >= _end || _terms[i + 1].Kind is TermKind.Separator or TermKind.Close):
                    // "rock back on R and kick L forward at the same time"
                    _current.SameTime = true;
                    Widen(term);
                    break;
                case TermKind.With when _current is { IsTurnOnly: true, Amount: not null } && AsYouDo(i) is int done:
                    // "a quarter turn right as you do it": made with the move before
                    _current.WithBefore = true;
                    Widen(_terms[done - 1]);
                    i = done - 1;
                    break;
                case TermKind.With:
                    _pending = Link.Soft;
                    _with = true;
                    _asYou = term.Text.EndsWith("you", StringComparison.OrdinalIgnoreCase)
                        || (i + 1 < _end && _terms[i + 1].Text.Equals("you", StringComparison.OrdinalIgnoreCase));
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
                case TermKind.Filler when EndsOnFoot(i) is int ended:
                    // "walk forward four steps, beginning with the right foot and ending with the left"
                    Last().WeightNote = TermKind.WeightOn;
                    Last().WeightFoot = _terms[ended].Meaning.Side;
                    Last().Cover(_terms[ended].Span);
                    _pending = _current.HasContent ? Link.None : _pending;
                    i = ended;
                    break;
                case TermKind.Filler when term.Text.Equals("by", StringComparison.OrdinalIgnoreCase)
                    && _current is { IsFigure: true, Detail.Count: 0 } && _current.Head!.Figures[0].Rows.Count > 2 && TryDetail(ref i, _end):
                    // "begin a jazz box by crossing R over L, step back ..."
                    break;
                case TermKind.Filler when term.Text.ToLowerInvariant() is "each" or "every" && i + 1 < _end && _terms[i + 1].Kind is TermKind.Move
                    && (i + 2 >= _end || _terms[i + 2].Kind is TermKind.Separator or TermKind.Close):
                    // "clap on every touch": moves that are told already
                    _current.SaysEach = true;
                    _current.OnEachMove = true;
                    Widen(_terms[++i]);
                    break;
                case TermKind.Filler when term.Text.ToLowerInvariant() is "on" or "on the" or "with the" or "at the" or "the" && i + 1 < _end
                    && _current.Head?.Verb is ActionKind.Clap or ActionKind.Snap && _terms[i + 1] is { Kind: TermKind.Move, Meaning.Verb: not null } each
                    && each.Text.EndsWith("s", StringComparison.OrdinalIgnoreCase)
                    && (i + 2 >= _end || _terms[i + 2].Kind is TermKind.Separator or TermKind.Close):
                    // "(snap fingers on the drops)": moves that are told already
                    _current.SaysEach = true;
                    _current.OnEachMove = true;
                    Widen(_terms[++i]);
                    break;
                case TermKind.Filler:
                    Filler(term, i);
                    break;
                case TermKind.Unknown when term.Text.Equals("instead", StringComparison.OrdinalIgnoreCase) && _current.HasContent:
                    // "but scuff instead of the touch": what is not danced runs to the next comma
                    while (i + 1 < _end && _terms[i + 1].Kind is not (TermKind.Separator or TermKind.Close or TermKind.Open))
                    {
                        i++;
                    }

                    break;
                case TermKind.Dir when term.Text.Equals("in place", StringComparison.OrdinalIgnoreCase) && _current.HasContent && i + 1 < _end
                    && _terms[i + 1].Kind is TermKind.Filler && _terms[i + 1].Text.StartsWith("of", StringComparison.OrdinalIgnoreCase):
                    // "but scuff in place of the touch": what is not danced runs to the next comma
                    while (i + 1 < _end && _terms[i + 1].Kind is not (TermKind.Separator or TermKind.Close or TermKind.Open))
                    {
                        i++;
                    }

                    break;
                case TermKind.Style when term.Text.ToLowerInvariant() is "ready to" or "ready for" or "preparing to" or "prepare to"
                    or "preparing for" or "in preparation for" or "like" or "as if" or "as though" or "pretending" or "imagine" or "pretend" or "pretend to"
                    or "think" or "picture" or "prep for" or "prep to" or "prepping for" or "prepping to" || IsPrep(i) || (term.Kind is TermKind.Style
                        && IsCondition(i)):
                    // a comparison runs to the next comma
                    while (i + 1 < _end && _terms[i + 1].Kind is not (TermKind.Separator or TermKind.Close or TermKind.Open))
                    {
                        i++;
                    }

                    break;
                case TermKind.Style when term.Text.Equals("once more", StringComparison.OrdinalIgnoreCase) && i + 1 >= _end
                    && (!_current.HasContent || _pending is Link.Soft) && (_clauses.Count > 0 || _current.HasContent):
                    // "pivot 1/4 left, and once more"
                    if (_current.HasContent)
                    {
                        Close(Link.Hard);
                    }

                    _current.IsRepeat = true;
                    Widen(term);
                    break;
                case TermKind.Style when !_current.HasContent && _clauses.Count > 0 && term.Text.StartsWith("straight", StringComparison.OrdinalIgnoreCase)
                    && (NextIndex(i + 1) is int up && (up < 0 || _terms[up] is { Kind: TermKind.Part, Meaning.Part: "knee" } or { Kind: TermKind.BothFeet }
                        or { Kind: TermKind.Dir, Meaning.Direction: Direction.Up }))
                    && (_clauses[^1].Head?.Verb is ActionKind.Dip
                        || _clauses[^1].Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Dip }] }, ..] }):
                    // "bend both knees, straighten up"
                    _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Up };
                    _current.DirText = term.Text;
                    Widen(term);
                    break;
                case TermKind.Style:
                    _current.IsSlow |= term.Text.ToLowerInvariant() is "slow" or "slowly";
                    _current.NamesBoot |= _current.Head?.Verb is ActionKind.Slap && term.Text.StartsWith("boot", StringComparison.OrdinalIgnoreCase);
                    _current.HasStyle = true;
                    _current.SaysWaltz |= term.Text.StartsWith("waltz", StringComparison.OrdinalIgnoreCase);
                    _current.HasLift |= !ArmFollows(i) && (term.Text.StartsWith("lift", StringComparison.OrdinalIgnoreCase)
                        || term.Text.StartsWith("rais", StringComparison.OrdinalIgnoreCase));
                    Widen(term);
                    break;
                case TermKind.Lead:
                    Lead(term, i);
                    break;
                case TermKind.Size when _pending is Link.Soft && !_with && _current is { Feet.Count: 1, Dir.Direction: Direction.Forward or Direction.Back }
                    && i + 1 < _end && _terms[i + 1] is { Kind: TermKind.Dir, Meaning.Direction: Direction.CrossFront or Direction.CrossBehind }:
                    // "R forward and slightly across L": one place, told in two words
                    Widen(term);
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
                case TermKind.BothFeet when i + 1 < _end
                    && (IsArm(_terms[i + 1]) || (_terms[i + 1] is { Kind: TermKind.Part, Meaning.Part: "knee" } && _current.HasContent)):
                    // "lifting both arms", "step R to side dipping both knees"
                    _current.HasStyle = true;
                    Widen(term);
                    if (_terms[i + 1].Kind is TermKind.Part)
                    {
                        Widen(_terms[++i]);
                    }

                    break;
                case TermKind.BothFeet when _current is { Head.Verb: ActionKind verb, Feet.Count: > 0, IsFigure: false } && _pending is Link.None
                    && NextMeaningful(i + 1) is TermKind.WeightTakes or TermKind.WeightNone:
                    // "stomp R stomp L both with weight"
                    if (_clauses is [.., { WeightNote: null } other] && other.Head?.Verb == verb)
                    {
                        other.WeightNote = NextMeaningful(i + 1);
                    }

                    Widen(term);
                    break;
                case TermKind.BothFeet:
                    StartIfPending(term.Kind, i);
                    _current.BothFeet = true;
                    Widen(term);
                    break;
                case TermKind.Dir when term.Text.EndsWith("crossing", StringComparison.OrdinalIgnoreCase) && TellsSteps(term, ref i):
                    // "jazz box crossing R over L, back L, side R, together L"
                    break;
                case TermKind.Dir when GoesWithAll(term, i):
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
                case TermKind.Move when TellsSteps(term, ref i):
                    // "sailor step 1/4 right stepping R behind L, L to side, R forward"
                    break;
                case TermKind.Move:
                    MoveTerm(term, i);
                    break;
                case TermKind.WeightOn:
                    WeightOn(ref i, term);
                    break;
                case TermKind.WeightTakes when !_current.HasContent && NextIndex(i + 1) is int shifted and >= 0
                    && _terms[shifted].Kind is TermKind.Side or TermKind.Foot && term.Text.ToLowerInvariant() is ['s' or 't' or 'c', ..]:
                    // "shift weight R"
                    _current.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Shift, Special = "shift" };
                    _current.HeadText = term.Text;
                    _pending = Link.None;
                    Widen(term);
                    break;
                case TermKind.WeightTakes when _current.HasContent && FootOfWeight(term, i) is (Foot onto, int last):
                    // "unwind 1/2 left transferring the weight to L"
                    _current.WeightNote = TermKind.WeightOn;
                    _current.WeightFoot = onto;
                    _pending = Link.None;
                    Widen(_terms[last]);
                    i = last;
                    break;
                case TermKind.WeightNone or TermKind.WeightTakes when !_current.HasContent && _clauses is [.., { IsAmp: false } kept, { IsAmp: true }]
                    && (term.Kind is TermKind.WeightNone || term.Text.Contains("ing", StringComparison.OrdinalIgnoreCase)):
                    // "stomp R together & no weight": no step of its own
                    _clauses.RemoveAt(_clauses.Count - 1);
                    kept.WeightNote = term.Kind;
                    kept.Cover(term.Span);
                    _current = new Clause { Link = Link.Hard };
                    _pending = Link.Hard;
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

                    // "1/8 left point R to side x4": a paddle, which turns each time; "1/4 left stomp R twice" turns once
                    repeated.SaysEach |= repeated is { TurnFirst: true, Amount: not null, TurnSide: not null, TurnTo: null, Detail.Count: 0 }
                        && (repeated.Head?.Verb is ActionKind.Point or ActionKind.Touch or ActionKind.Tap || (repeated.Times > 2 && repeated.HasVerb));
                    break;
                case TermKind.Number:
                    NumberTerm(ref i, term);
                    break;
                case TermKind.Repeat:
                case TermKind.RepeatMirrored:
                    RepeatTerm(ref i, term);
                    break;
                case TermKind.Clock:
                    if (Last() is { Head.Verb: ActionKind.Unwind or ActionKind.Pivot, Amount: null } or { HasTurnWord: true, Amount: null }
                        && Last() is Clause turning || (Last() is { HasTurnWord: true } && (turning = Last()) is not null))
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
        if (_leading is Clause leading)
        {
            LeadFirst(leading);
        }

        ClauseTidier.Tidy(_clauses);
        return _clauses;
    }

    // "step R forward (prep R)", "prepping left": for which turn the body is wound up
    private bool IsPrep(int at) => _terms[at].Text.StartsWith("prep", StringComparison.OrdinalIgnoreCase) && at + 1 < _end
        && _terms[at + 1].Kind is TermKind.Foot or TermKind.Side or TermKind.Turn
        && (at + 2 >= _end || _terms[at + 2].Kind is TermKind.Separator or TermKind.Close);

    /// <summary>
    /// Gives the foot that is said to begin, before anything else is told, to the first move; what names another foot is left for the solver.
    /// </summary>
    private void LeadFirst(Clause leading)
    {
        Clause? first = _clauses.Find(c => c.HasContent);
        Clause? second = first is null ? null : _clauses.Find(c => c.HasContent && !ReferenceEquals(c, first));
        Clause? named = first is { Feet.Count: > 0 } ? first : first is not null && second is { IsFeetOnly: true } ? second : null;
        Foot foot = leading.Feet[0].Foot;
        if (first is null or { Head.Verb: ActionKind.RollBody } || (named is not null && named.Feet[0].Foot != foot))
        {
            _clauses.Insert(0, leading);
            return;
        }

        first.Cover(leading.Span);
        if (named is null)
        {
            first.Feet.Add(leading.Feet[0]);
        }
    }

    /// <summary>
    /// "If your knees allow", "mind your neighbour": who may leave it out, and what to look out for; but what hangs on a wall or a count has to be asked about.
    /// </summary>
    private bool IsCondition(int at)
    {
        if (_terms[at].Text.ToLowerInvariant() is not ("if" or "mind your" or "mind the" or "watch your" or "watch out" or "beware of"))
        {
            return false;
        }

        for (int i = at + 1; i < _end && _terms[i].Kind is not (TermKind.Separator or TermKind.Close or TermKind.Open); i++)
        {
            if (_terms[i].Kind is TermKind.Number or TermKind.Clock or TermKind.Foot or TermKind.Side or TermKind.Amount or TermKind.Times
                || _terms[i].Text.StartsWith("wall", StringComparison.OrdinalIgnoreCase) || _terms[i].Text.Equals("not", StringComparison.OrdinalIgnoreCase))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The place after "as you do it", "while doing so", where nothing else follows up to a comma; or null.</summary>
    private int? AsYouDo(int at)
    {
        int end = at + 1;
        while (end < _end && _terms[end].Kind is TermKind.Filler)
        {
            end++;
        }

        bool does = Enumerable.Range(at + 1, end - at - 1).Any(i => _terms[i].Text.StartsWith("do", StringComparison.OrdinalIgnoreCase));
        return does && (end >= _end || _terms[end].Kind is TermKind.Separator or TermKind.Close) ? end : null;
    }

    /// <summary>Whether the writer names the move before the foot ("kick left"), by the first words of the line.</summary>
    private bool VerbFirst => _terms.Find(t => t.Kind is TermKind.Move or TermKind.Side or TermKind.Foot or TermKind.Dir or TermKind.Turn
        or TermKind.Amount).Meaning is { Kind: TermKind.Move };

    private static bool IsContent(TermKind kind) => kind is TermKind.Move or TermKind.Foot or TermKind.Side or TermKind.Dir or TermKind.Amount
        or TermKind.Turn or TermKind.Part or TermKind.BothFeet or TermKind.Repeat or TermKind.RepeatMirrored;

    /// <summary>Whether a word means a turn of the body, by itself or as a figure.</summary>
    internal static bool IsTurnVerb(Meaning? head) => head is { Verb: ActionKind.Pivot or ActionKind.Unwind }
        || (head is { Figures.Count: > 0 } && head.Figures.Any(f => f.TotalTurn.Sign != 0 || f.NamedBy == NamedBy.Turn));

    private void Widen(Term term) => _current.Cover(term.Span);

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
        _current = new Clause { Link = link, IsWith = link == Link.Soft && _with, SaysAsYou = link == Link.Soft && _with && _asYou, Lasts = lasts };
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

            if (kind is TermKind.Dir && _terms[at].Meaning.Direction is Direction.Out
                && _current is { HasVerb: true, Feet.Count: 0, Dir.Direction: Direction.Forward or Direction.Back })
            {
                // "step forward and out on the right foot"
                _pending = Link.None;
                return;
            }

            bool feetGoOn = kind is TermKind.Foot or TermKind.Side && _current.Feet.Count > 0
                && NextContent(at + 1) is TermKind.Foot or TermKind.Side or null;
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
    private void Lead(Term term, int at)
    {
        if (_clauses.Count == 0 && !_current.HasContent && at + 1 < _end && _terms[at + 1] is { Kind: TermKind.Separator, Text: "," })
        {
            // "beginning with the right foot, take two steps forward"
            _leading = new Clause();
            _leading.Feet.Add(new FootWord(term.Meaning.Side!.Value, true, false));
            _leading.Cover(term.Span);
            return;
        }

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
}
