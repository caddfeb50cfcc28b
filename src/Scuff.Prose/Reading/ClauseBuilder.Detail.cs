using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Brackets, and what stands after the name of a figure.
internal sealed partial class ClauseBuilder
{
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
            int said = _terms[contentStart].Meaning.Value;
            bool wall = said is 3 or 6 or 9 or 12 && (Last().Amount is not null || Last().HasTurnWord || IsTurnVerb(Last().Head));
            Last().SaidCount = SaysCount(at) && !wall ? said : null;
            Last().Cover(_terms[Math.Min(close, _end - 1)].Span);
            at = close;
            return;
        }

        if (close == contentStart + 3 && _terms[contentStart].Kind == TermKind.Number && _terms[contentStart + 2].Kind == TermKind.Number
            && _terms[contentStart + 1].Text is "-" or "–" && Last().HasContent
            && _terms[contentStart + 2].Meaning.Value - _terms[contentStart].Meaning.Value is int more and >= 1 and <= 7)
        {
            // "slow walk R (1-2)": the counts of one move, or of the last few
            Last().Lasts ??= more + 1;
            Last().SaidCount = SaysCount(at) ? _terms[contentStart].Meaning.Value : null;
            Last().Cover(_terms[Math.Min(close, _end - 1)].Span);
            at = close;
            return;
        }

        bool tellsFree = Enumerable.Range(contentStart, close - contentStart).Any(i => _terms[i].Text.EndsWith("free", StringComparison.OrdinalIgnoreCase))
            && !Enumerable.Range(contentStart, close - contentStart).Any(i => _terms[i].Kind is TermKind.Move or TermKind.Dir or TermKind.Amount);
        if (tellsFree && Last().HasContent)
        {
            // "hold (left foot is free)": what is so already
            Last().HasStyle = true;
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
        if (!opens && moves.Count > 1 && moves.TrueForAll(m => m.IsFeetOnly)
            && owner is { Head: null, Feet.Count: 0, Dir: not null, DirSide: null, Amount: null }
            && ReferenceEquals(owner, _current) && _clauses is [.., { IsFigure: true, Detail.Count: 0, Dir: null } named]
            && named.Head!.Figures.Any(f => f.Rows.Count == moves.Count))
        {
            // "right shuffle, still travelling forwards (R, L, R)": where the figure goes, and its feet
            named.Dir = owner.Dir;
            named.DirText = owner.DirText;
            named.Cover(owner.Span);
            _current = new Clause { Link = Link.Hard };
            owner = named;
        }

        if (moves.Count(m => m.Head is not { Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] }) < 2 && owner.HasContent)
        {
            // "(forward, head up)": arms and looks beside one word on the place
            moves.RemoveAll(m => m.Head is { Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] });
        }

        if (owner.HasContent && inner is [{ Size: not 0, Head.Verb: ActionKind.Step, Unknown.Count: 0 } sized] && sized is
            {
                Feet.Count: 0, Dir: null, DirSide: null, Diagonal: false, Amount: null, HasTurnWord: false, Part.Length: 0, BothFeet: false, TimesStated: false,
                Detail.Count: 0, WeightNote: null
            })
        {
            // "pivot 1/2 left (small steps)": how it is danced, and no step of its own
            owner.HasStyle = true;
            owner.Cover(_terms[Math.Min(close, _end - 1)].Span);
            at = close;
            return;
        }

        if (moves is [{ Head.Verb: ActionKind.Shift or ActionKind.Recover, Feet: [{ } upon], Dir: null, Amount: null, Detail.Count: 0 } shift]
            && owner is { HasContent: true, WeightNote: null, Detail.Count: 0 } && shift.HeadText.Contains("weight", StringComparison.OrdinalIgnoreCase))
        {
            // "unwind 1/2 left (taking weight on L)": where it ends, and no move of its own
            owner.WeightNote = TermKind.WeightOn;
            owner.WeightFoot = upon.Foot;
            owner.Cover(_terms[Math.Min(close, _end - 1)].Span);
            at = close;
            return;
        }

        if (Grinds(owner) && inner.Count > 0 && inner.TrueForAll(c => c is { Amount: null, WeightNote: null, Detail.Count: 0, Unknown.Count: 0 }
                && (c.Part is "toe" or "toes" || c.Head?.Verb is ActionKind.SwivelToes or ActionKind.SplitToes or ActionKind.FanToe or ActionKind.Swivel
                || (c is { Head: null, Part.Length: 0 } && !ReferenceEquals(c, inner[0]))))
            && Enumerable.Range(contentStart, close - contentStart).Any(i => _terms[i].Text.Contains("toe", StringComparison.OrdinalIgnoreCase)))
        {
            // "grind right heel forward (toes left to right)": how a grind is made
            owner.HasStyle = true;
            owner.Cover(_terms[Math.Min(close, _end - 1)].Span);
            at = close;
            return;
        }

        bool hasClock = Enumerable.Range(contentStart, close - contentStart).Any(i => _terms[i].Kind == TermKind.Clock);
        bool ofStill = IsStill(owner) && Enumerable.Range(contentStart, close - contentStart).Any(i => _terms[i].Kind is TermKind.WeightOn);
        // "unwind 1/2 left, pause (weight on L)": a hold leaves the weight where the move before it brought it
        TakeWeightNote(ofStill ? WeightOwner() : owner, contentStart, close);

        for (int i = contentStart; i < close; i++)
        {
            if (_terms[i].Kind == TermKind.Filler && (_terms[i].Meaning.Value > 1 ? _terms[i].Meaning.Value
                : CountsIn(_terms[i].Text.ToLowerInvariant())) is int lasting)
            {
                // "(takes 2 counts)"
                owner.Lasts = lasting;
            }

            if (_terms[i].Kind == TermKind.Times && owner.Times == 1)
            {
                owner.Times = Math.Clamp(_terms[i].Meaning.Value, 1, 8);
                owner.TimesStated = true;
            }
        }

        if (owner.HasContent
            && moves is [{ Head.Verb: ActionKind.Step, Feet.Count: 0, Dir: null, Amount: null, Times: 1, Detail.Count: 0, WeightNote: null } manner]
            && inner.Count == 1 && (manner.Size != 0 || manner.HasStyle))
        {
            // "(small steps)", "(keep the steps tiny)": how it is danced
            owner.Size = owner is { Head.Verb: ActionKind.Step, Size: 0 } ? manner.Size : owner.Size;
            owner.HasStyle = true;
            moves.Clear();
        }

        if (moves.Count > 1 && owner is { HasContent: true, IsFigure: false } && moves.TrueForAll(IsOfBody))
        {
            // "touch L beside R (bend the knees, get down!)": how the body goes with it
            moves.Clear();
        }

        bool ofWeight = Enumerable.Range(contentStart, close - contentStart).Any(i =>
            _terms[i].Kind is TermKind.WeightOn or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth);
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
            else if (moves is [{ IsTurnOnly: true, Amount: int around }] && owner is { Amount: null, Head: null }
                && _clauses.FindLast(c => c is { SaysCircle: true, Amount: null }) is Clause circle)
            {
                // "walk around to the left in an arc: L, R, L, R (3/4 in total)"
                circle.Amount = around;
                circle.TurnSide ??= moves[0].TurnSide;
            }
            else if (moves.Count == 1 && moves[0].IsTurnOnly)
            {
                if (owner.Amount is null)
                {
                    owner.Amount = moves[0].Amount;
                    owner.TurnSide ??= moves[0].TurnSide;
                }
            }
            else if (moves.Count == 1 && moves[0].Head is { Verb: ActionKind.Sweep or ActionKind.Ronde or ActionKind.Drag or ActionKind.Slide }
                && owner.HasContent)
            {
                moves[0].Link = Link.Soft;
                moves[0].IsWith = true;
                if (_current.HasContent)
                {
                    Close(Link.Soft);
                }

                _clauses.Add(moves[0]);
            }
            else if (moves.Count == 1 && moves[0].Head
                is { Verb: ActionKind.Clap or ActionKind.Snap or ActionKind.Slap or ActionKind.Bump or ActionKind.Shimmy or ActionKind.Hold })
            {
                moves[0].Link = Link.Soft;
                if (_current.HasContent)
                {
                    Close(Link.Soft);
                }

                _clauses.Add(moves[0]);
            }
            else if (ClauseTidier.TakesParts(owner, moves))
            {
                // "strut R forward (heel, toe)"
            }
            else if (moves.Count == 1 && rows > 1 && owner is { IsFigure: true, Detail.Count: 0 }
                && moves[0] is { Dir: { } way, Head.Verb: ActionKind made, Amount: null }
                && owner.Head!.Figures[0].Rows[0].Action.Kind == made)
            {
                // "paddle 1/4 left twice (R presses out to side)": how its first action is made
                owner.FirstWay = moves[0].DirSide is not null ? Direction.Side : way.Direction;
                owner.Detail.Clear();
            }
            else if (moves.Count > 1 && owner is { HasVerb: true, IsFigure: false, Feet.Count: 0 }
                && moves.TrueForAll(m => m is { IsFeetOnly: true, Feet.Count: 1 }))
            {
                // "jump back (R, L)"
                owner.Feet.AddRange(moves.SelectMany(m => m.Feet));
            }
            else if (owner is { IsFigure: true, Amount: null } && OneFootFan(owner) is ActionKind fanned && inner.Count == moves.Count && moves.TrueForAll(m =>
                m is
                {
                    Head: null, Feet.Count: 0, Part.Length: 0, Amount: null, HasTurnWord: false, Detail.Count: 0,
                    Dir.Direction: Direction.Out or Direction.In or Direction.Home or Direction.Centre or Direction.Together or Direction.Back
                }))
            {
                // "two R toe fans (out, in, out, in)": the ways of the toe, nobody steps anywhere
                foreach (Clause move in moves)
                {
                    move.Head = new Meaning(TermKind.Move) { Verb = fanned };
                    move.HeadText = owner.HeadText;
                    move.Dir = move.Dir!.Direction == Direction.Out ? move.Dir : move.Dir with { Direction = Direction.In };
                    move.Feet.AddRange(owner.Feet);
                }

                owner.Detail.AddRange(inner);
            }
            else if (NamesFeet(owner, inner, moves))
            {
                // the feet are the figure's now
            }
            else if ((moves.Count > 1 || rows > 1 || (owner.Head is null && owner.Dir is null)) && !owner.IsAmp)
            {
                if (owner.HasContent || _clauses.Count > 0)
                {
                    TakeSides(owner, inner);
                    owner.Detail.AddRange(inner.Where(c => c.HasContent || c.Unknown.Count > 0));
                }
                else
                {
                    _clauses.AddRange(inner);
                }
            }
            else if (moves[0].Dir is not null && moves[0].Head is null && moves[0].Feet.Count == 0
                && owner.Head?.Verb is ActionKind.Clap or ActionKind.Snap or ActionKind.Hold)
            {
                // "step R, clap, step L, clap (forward)": where the steps go
                foreach (Clause step in _clauses.Where(c => c.Head?.Verb is ActionKind.Step && c.Dir is null))
                {
                    step.Dir = moves[0].Dir;
                    step.DirSide ??= moves[0].DirSide;
                }
            }
            else if (owner.Dir is null && moves[0] is { Head: null, Dir: not null }
                && !(moves[0] is { Part: "toe" or "toes" or "heel" or "heels", Dir.Direction: Direction.Up or Direction.Down }))
            {
                // "(toe up)" after a heel is how the foot is held, and not where it goes
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

    private static bool Grinds(Clause clause) => clause.Head is { Verb: ActionKind.Grind }
        or { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Grind }, ..] }, ..] };

    /// <summary>Whether a clause tells only what knees and body do: "bend the knees", "down", "up again".</summary>
    private static bool IsOfBody(Clause told) => told is { Feet.Count: 0, Amount: null, HasTurnWord: false, Times: 1 }
        && told.Head?.Verb is null or ActionKind.Dip
        && (told.Head is { Verb: ActionKind.Dip } or { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Dip or ActionKind.Arms }] }, ..] }
            || (told.Head is null && (told.Dir is { Direction: Direction.Down or Direction.Up } || (told.Dir is null
                && told.Part is "knee" or "knees" or "body"))));

    /// <summary>What a figure does whose every action fans the toe or the heel of one foot; or null.</summary>
    private static ActionKind? OneFootFan(Clause owner)
        => owner.Head!.Figures[0].Rows.All(r => r.Action.Kind is ActionKind.FanToe or ActionKind.FanHeel) ? owner.Head.Figures[0].Rows[0].Action.Kind : null;

    /// <summary>Makes a fan of the words that tell where the toe or the heel goes.</summary>
    internal static void Fan(Clause told, ActionKind fan, FootWord fanning)
    {
        told.Dir = new Meaning(TermKind.Dir) { Direction = FanWay(told, fanning.Foot)!.Value };
        told.DirSide = null;
        told.Head = new Meaning(TermKind.Move) { Verb = fan };
        told.HeadText = fan is ActionKind.FanHeel ? "heel fan" : "toe fan";
        told.Part = "";
        told.Feet.Clear();
        told.Feet.Add(fanning);
    }

    /// <summary>Where a toe or a heel that fans goes by these words, which name neither another foot nor a turn: out, in, or null.</summary>
    internal static Direction? FanWay(Clause told, Foot fanning)
    {
        bool bare = told is { Amount: null, HasTurnWord: false, Detail.Count: 0, Times: 1, BothFeet: false, WeightNote: null, Unknown.Count: 0, Feet.Count: < 2 }
            && told.Head is null or { Verb: ActionKind.Step or ActionKind.Recover or ActionKind.FanToe or ActionKind.FanHeel }
                or { Verb: null, Figures: [{ Id: "swivel_centre" }, ..] }
            && !(told.Head is { Verb: ActionKind.Step } && told.HeadText.StartsWith("st", StringComparison.OrdinalIgnoreCase));
        Foot? side = told.DirSide ?? (told.Dir is null && told.Feet is [{ } way] ? way.Foot : null);
        if (!bare || (told.Dir is not null && told.Feet.Exists(f => f.Foot != fanning)))
        {
            return null;
        }

        return told switch
        {
            { Dir.Direction: Direction.Out } => Direction.Out,
            { Dir.Direction: Direction.In or Direction.Home or Direction.Centre or Direction.Together or Direction.Back } => Direction.In,
            { Dir: null, Head: { Verb: ActionKind.Recover } or { Figures: [{ Id: "swivel_centre" }, ..] } } => Direction.In,
            { Dir: null or { Direction: Direction.Side } } when side is Foot aside => aside == fanning ? Direction.Out : Direction.In,
            _ => null,
        };
    }

    /// <summary>
    /// "Full turn left: R, L", "full turn L (R, L)": a detail that names nothing but the feet of a figure, one for each of its steps. They are given to it;
    /// where
    /// it is called by its turn, the side that stood with it is the way round.
    /// </summary>
    private static bool NamesFeet(Clause owner, List<Clause> told, List<Clause> moves)
    {
        bool oneEach = owner.IsFigure && owner.Head!.Figures.Any(f => f.Rows.Count == moves.Count) && told.Count == moves.Count
            && moves.TrueForAll(m => m is { IsFeetOnly: true, Feet.Count: 1 }
                or { Head.Verb: ActionKind.Step, IsFigure: false, Feet.Count: 1, Dir: null, Amount: null, HasTurnWord: false, Detail.Count: 0 });
        bool byTurn = owner is { IsFigure: true, TurnSide: null, Feet: [{ IsCertain: false }] } && owner.Head!.Figures.Any(f => f.NamedBy == NamedBy.Turn
            && f.Rows.Count == moves.Count);
        // "jazz box quarter turn right: R, L, R, L": the first foot is named once more
        bool again = owner is { Feet: [{ IsCertain: false } first], TimesStated: false } && moves[0].Feet is [{ } told1] && told1.Foot == first.Foot
            && owner.Head is { NamesAmount: true };
        if (!oneEach || (owner.Feet.Count > 0 && !byTurn && !again))
        {
            return false;
        }

        if (byTurn)
        {
            owner.TurnSide = owner.Feet[0].Foot;
            owner.Feet.Clear();
        }

        owner.Feet.AddRange(moves.SelectMany(m => m.Feet));
        return true;
    }

    /// <summary>
    /// "Swivet: on left heel and right ball turn both feet to the left, and back, weight on left": a figure of both feet has its side and where the weight ends
    /// from its detail, where its name does not say them.
    /// </summary>
    private static void TakeSides(Clause owner, List<Clause> detail)
    {
        if (!owner.IsFigure || detail.Count == 0 || !owner.Head!.Figures[0].Rows.All(r => r.Foot is RelativeFoot.Both))
        {
            return;
        }

        if (owner is { Feet.Count: 0, DirSide: null } && detail.Find(d => d.DirSide is not null)?.DirSide is Foot side)
        {
            owner.DirSide = side;
        }

        if (owner.WeightNote is null && detail[^1].WeightNote is not null)
        {
            owner.WeightNote = detail[^1].WeightNote;
            owner.WeightFoot = detail[^1].WeightFoot;
        }
    }

    /// <summary>Whether a number in this bracket is the count of the move before: not a wall in square brackets, and not "(5) cross R over L (6) step
    /// back".</summary>
    private bool SaysCount(int at) => _terms[at].Text == "(" && _terms.Find(t => t.Kind is not TermKind.Filler).Kind is not TermKind.Open && !CountsLead();

    /// <summary>Whether the counts in brackets stand before their moves: "heel taps: (3) R heel forward (4) R heel forward again".</summary>
    private bool CountsLead()
    {
        int counts = 0;
        int last = -1;
        for (int i = 0; i + 2 < _terms.Count; i++)
        {
            bool count = _terms[i].Text == "(" && _terms[i + 1].Kind is TermKind.Number or TermKind.Amp && _terms[i + 2].Kind is TermKind.Close;
            counts += count ? 1 : 0;
            last = count ? i + 2 : last;
            if (count && counts == 1 && i > 0 && _terms[i - 1].Text is ":")
            {
                return true;
            }
        }

        return counts > 1 && _terms.FindIndex(last, t => t.Kind is TermKind.Move or TermKind.Dir) > 0;
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

        bool counting = numbers.Count >= 2
            && numbers.Zip(numbers.Skip(1)).All(p => _terms[p.Second].Meaning.Value == _terms[p.First].Meaning.Value + 1L);
        if (counting)
        {
            foreach (int i in numbers)
            {
                _terms[i] = _terms[i] with { Meaning = new Meaning(TermKind.Filler) };
            }
        }
    }

    /// <summary>"(rocks, weight back on left, closes)": a step among others of the bracket, and not where all of it ends.</summary>
    private bool IsAmongSteps(int at, int start, int end)
    {
        int stop = _terms.FindIndex(at, end - at, t => t.Kind is TermKind.Separator or TermKind.Then);
        return stop > 0 && _terms.FindIndex(start, at - start, t => t.Kind is TermKind.Move) >= 0
            && _terms.FindIndex(stop, end - stop, t => t.Kind is TermKind.Move or TermKind.Dir) >= 0;
    }

    /// <summary>A note on the weight in brackets: "(no weight)", "(weight on L)".</summary>
    private void TakeWeightNote(Clause owner, int start, int end)
    {
        for (int i = start; i < end; i++)
        {
            TermKind kind = _terms[i].Kind;
            if (kind is TermKind.WeightOn && IsAmongSteps(i, start, end))
            {
                continue;
            }

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
                        // "(weight changes with every bump, finish weight R)": both are so where the last bump is to the right
                        bool each = owner is { WeightNote: TermKind.WeightTakes, Head.Verb: ActionKind.Bump } && owner.Feet.Count > 1
                            && owner.Feet[^1].Foot == foot;
                        owner.WeightNote = each ? TermKind.WeightTakes : kind;
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

    /// <summary>
    /// "Stepping" that leads to the steps of the figure before it, one by one, each with its foot: they are its detail, and what follows them are moves of
    /// their own.
    /// </summary>
    private bool TellsSteps(Term term, ref int at)
    {
        bool leads = term.Meaning is { Verb: ActionKind.Step or ActionKind.Rock or ActionKind.Kick or ActionKind.Point or ActionKind.Touch, IsIng: true }
            || (term.Kind is TermKind.Dir && term.Text.EndsWith("ing", StringComparison.OrdinalIgnoreCase));
        if (!leads || _pending is not Link.None || _current is not { IsFigure: true, Detail.Count: 0 }
            || _current.Head!.Figures[0] is not { Rows.Count: > 2 } figure || FeetOnlyFollow(at + 1))
        {
            return false;
        }

        // "stepping" only leads to the steps; any other word is the first of them
        List<Clause> told = Build(term.Meaning.Verb is ActionKind.Step ? at + 1 : at, _end);
        List<Clause> moves = told.FindAll(c => c.HasContent && !c.IsAmp && !(c.IsTurnOnly && c.Link is Link.None));
        bool itsFeet = moves.Count >= figure.Rows.Count && new[] { Foot.Right, Foot.Left }.Any(named =>
            Enumerable.Range(0, figure.Rows.Count).All(i => moves[i] is { Feet: [{ } word] } && figure.Rows[i].For(named).Foot.ToFoot() == word.Foot));
        if (!itsFeet)
        {
            return false;
        }

        int own = told.IndexOf(moves[figure.Rows.Count - 1]) + 1;
        own += own < told.Count && told[own] is { IsTurnOnly: true, Link: Link.None } ? 1 : 0;
        _current.Detail.AddRange(told.Take(own));
        _current.Cover(told[own - 1].Span);
        Close(Link.Hard);
        _clauses.AddRange(told.Skip(own));
        _current = new Clause { Link = Link.Hard };
        at = _end - 1;
        return true;
    }

    /// <summary>"Toe touches", "kicks": several gestures of a foot, whose places follow.</summary>
    private static bool IsOfGestures(Clause title)
    {
        bool bare = title is { Feet.Count: < 2, Dir: null, DirSide: null, Diagonal: false, Amount: null, Times: 1, Part.Length: 0 };
        ActionKind? gesture = title.Head switch
        {
            { Verb: ActionKind verb, Figures.Count: 0 } => verb,
            { Verb: null, Figures: [{ Rows: [{ } only] }, ..] } => only.Action.Kind,
            _ => null,
        };
        return bare && title.HeadText.Length > 4 && title.HeadText.EndsWith("s", StringComparison.OrdinalIgnoreCase)
            && gesture is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig or ActionKind.Kick;
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

        if (_terms[at].Text is ":" && ReferenceEquals(owner, _current) && owner is { Feet.Count: 0, Dir: null, Amount: null, Times: 1, Head: { } listed }
            && listed.Verb is ActionKind.Bump or ActionKind.Sway or ActionKind.Stomp or ActionKind.Twist or ActionKind.SwivelHeels or ActionKind.SwivelToes
            or ActionKind.Swivel or ActionKind.PopKnee or ActionKind.Kick or ActionKind.Point
            || owner is
            {
                Feet.Count: 0, Dir: null or { Direction: Direction.Forward or Direction.Back }, Amount: null, Head.Special: "walk" or "run"
            })
        {
            List<Clause> sides = Build(at + 1, end);
            int feet = sides.FindIndex(c => !(c is { IsFeetOnly: true, WeightNote: null, TimesStated: false }));
            feet = feet < 0 ? sides.Count : feet;
            if (sides.Take(feet).Sum(c => c.Feet.Count) >= 2)
            {
                // "hips: R, L, R, R", "walks: R, L"
                foreach (Clause side in sides.Take(feet))
                {
                    owner.Feet.AddRange(side.Feet);
                    owner.Cover(side.Span);
                }

                Close(Link.Hard);
                _clauses.AddRange(sides.Skip(feet));
                _current = new Clause { Link = Link.Hard };
                at = end - 1;
                return true;
            }
        }

        if (_terms[at].Text is ":" && ReferenceEquals(owner, _current) && owner is { Head.Verb: ActionKind.Swivel, Part.Length: 0, Amount: null, Times: 1 }
            && (owner.DirSide ?? (owner.Feet is [{ } only] ? only.Foot : null)) is Foot way)
        {
            List<Clause> parts = Build(at + 1, end);
            int count = parts.FindIndex(c => !(c is { Head: null, Part: "heels" or "toes", Feet.Count: 0, Dir: null }));
            count = count < 0 ? parts.Count : count;
            if (count >= 2)
            {
                // "swivel right: heels, toes, heels": which part, and the way is said once for all
                foreach (Clause part in parts.Take(count))
                {
                    part.Head = new Meaning(TermKind.Move) { Verb = part.Part == "heels" ? ActionKind.SwivelHeels : ActionKind.SwivelToes };
                    part.Part = "";
                    part.DirSide = way;
                    part.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = way };
                }

                parts[0].Cover(owner.Span);
                _clauses.AddRange(parts);
                _current = new Clause { Link = Link.Hard };
                at = end - 1;
                return true;
            }
        }

        if (ReferenceEquals(owner, _current) && IsOfGestures(owner))
        {
            List<Clause> places = Build(at + 1, end);
            int told = places.FindIndex(c => !(c is { Head: null, Part.Length: 0, Amount: null, HasTurnWord: false, IsAmp: false, IsRepeat: false }
                && !c.BothFeet && (c.Dir is not null || c.Diagonal)));
            told = told < 0 ? places.Count : told;
            if (told >= 2 && places[0].Feet.Count + owner.Feet.Count == 1)
            {
                places[0].Feet.AddRange(owner.Feet);
                foreach (Clause place in places.Take(told).Where(c => c.Feet.Count > 0 || c.Dir?.Direction is not (Direction.Together or Direction.Home)))
                {
                    // "toe touches: R forward, side, back": what the foot does there is said once for all
                    place.Head = owner.Head;
                    place.HeadText = owner.HeadText;
                }

                places[0].Cover(owner.Span);
                _clauses.AddRange(places);
                _current = new Clause { Link = Link.Hard };
                at = end - 1;
                return true;
            }
        }

        bool headsOff = owner is { Head.Verb: ActionKind.Step, Feet.Count: 0, Amount: null } && _terms[at].Text == ":"
            && ReferenceEquals(owner, _current)
            && owner.HeadText.Length > 2 && char.ToLowerInvariant(owner.HeadText[0]) is 't' or 'g' or 'm' or 'w';
        bool repeats = owner is { IsRepeat: true, Head: null } && _terms[at].Text == ":" && ReferenceEquals(owner, _current);
        if (!owner.IsFigure && !headsOff && !repeats)
        {
            return false;
        }

        if (_terms[at].Text is ":" && at + 1 < end && _terms[at + 1] is { Kind: TermKind.Number, Meaning.Value: 1 or 5 })
        {
            // "V step: 1 right to the corner, 2 left to the corner, ...": each count once more
            DropCounts(at + 1, end);
        }

        List<Clause> rest = Build(at + 1, end);
        List<Clause> moves = rest.Where(c => c.HasContent && !c.IsAmp).ToList();
        if (owner is { IsFigure: true } && owner.Head!.Figures[0].Id == "walk_around" && moves.TrueForAll(m => m.IsFeetOnly))
        {
            // "walk around R: R, L, R, L": the feet of the walks, which share the turn
            return false;
        }

        if (ReferenceEquals(owner, _current) && rest.Count == moves.Count && ClauseTidier.TakesParts(owner, moves))
        {
            // "toe strut R = toe down, heel down"
            owner.Cover(_terms[end - 1].Span);
            at = end - 1;
            return true;
        }

        if ((headsOff || repeats) && moves.Count < 2)
        {
            return false;
        }

        while (headsOff && _clauses.Count > 0 && _clauses[^1] is { Head.IsIng: true, LinkAfter: Link.None, Feet.Count: 0, Dir: null, Amount: null } title
            && title.Detail.Count == 0)
        {
            // "sweeping walks: step R back sweeping L, ...": all of it is the title
            owner.Cover(title.Span);
            _clauses.RemoveAt(_clauses.Count - 1);
        }

        if (repeats)
        {
            // "the same moving back: R behind, ...": what is written out is danced
            owner.IsRepeat = false;
            owner.IsMirrored = false;
            owner.RepeatCounts = null;
            if (!owner.HasContent)
            {
                // "and now the left: L to the corner, R locks behind, L to the corner"
                _clauses.AddRange(rest);
                _current = new Clause { Link = Link.Hard };
                at = end - 1;
                return true;
            }
        }

        if (owner is { IsFigure: true, Feet.Count: < 2 } && owner.Head!.Figures is [{ Rows.Count: 1, TotalTurn.Sign: not 0 }, ..]
            && rest.Count > 0 && rest[0] is { Head: null or { Verb: ActionKind.Step }, Feet.Count: 1, Amount: null, HasTurnWord: false, Detail.Count: 0 })
        {
            // "hinge 1/2 L: step R to side": with which foot, and where
            if (owner.Feet.Count == 1)
            {
                owner.TurnSide ??= owner.Feet[0].Foot;
                owner.Feet.Clear();
            }

            owner.Feet.AddRange(rest[0].Feet);
            owner.Cover(rest[0].Span);
            if (ReferenceEquals(owner, _current))
            {
                Close(Link.Hard);
            }

            _clauses.AddRange(rest.Skip(1));
            _current = new Clause { Link = Link.Hard };
            at = end - 1;
            return true;
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

        if (NamesFeet(owner, rest, moves))
        {
            owner.Cover(_terms[end - 1].Span);
            at = end - 1;
            return true;
        }

        int feetFirst = rest.FindIndex(m => !m.IsFeetOnly);
        if (feetFirst > 1 && NamesFeet(owner, rest.GetRange(0, feetFirst), rest.GetRange(0, feetFirst)))
        {
            // "full turn left travelling forward: R, L, rock R to side, recover L": the feet of the figure, and then other moves
            if (ReferenceEquals(owner, _current))
            {
                Close(Link.Hard);
            }

            _clauses.AddRange(rest.Skip(feetFirst));
            _current = new Clause { Link = Link.Hard };
            at = end - 1;
            return true;
        }

        if (!ReferenceEquals(owner, _current))
        {
            _current = new Clause { Link = Link.Hard };
        }

        if (owner is { IsFigure: true, Amount: null, Feet: [{ } fanning] } && OneFootFan(owner) is ActionKind toes
            && moves.TrueForAll(m => FanWay(m, fanning.Foot) is not null))
        {
            // "fan of the R toe: open to the right, come back to the centre": the ways of the toe, nobody steps anywhere
            bool heel = _terms.FindIndex(0, at, t => t.Span.Start >= owner.Span.Start && t.Text.StartsWith("heel", StringComparison.OrdinalIgnoreCase)) >= 0;
            ActionKind fan = heel ? ActionKind.FanHeel : toes;
            moves.ForEach(m => Fan(m, fan, fanning));
        }

        TakeSides(owner, rest);
        owner.Detail.AddRange(rest);
        owner.DetailAfterDash = _terms[at].Text is "-" or "–" or "—";
        owner.Cover(_terms[end - 1].Span);
        at = end - 1;
        return true;
    }
}
