using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>
/// Looks at the clauses of a line once they are all there, and joins those that tell one move between them: a pronoun and what it
/// stands for, a turn and the figure it belongs to, feet that stand alone and the move they go on with.
/// </summary>
internal sealed partial class ClauseTidier
{
    private readonly List<Clause> _clauses;

    private ClauseTidier(List<Clause> clauses) => _clauses = clauses;

    /// <summary>Joins what belongs together, in the list itself.</summary>
    /// <param name="clauses">The clauses in the order of the text.</param>
    public static void Tidy(List<Clause> clauses) => new ClauseTidier(clauses).Run();

    private void Run()
    {
        TurnOnBall();
        PartGoes();
        TurnOverDetail();
        JoinLifts();
        DropLaid();
        JoinWeightThatGoes();
        WaysOfFan();
        TurnOnEachCount();
        JoinPronouns();
        EachBefore();
        RecoverThenStep();
        NoteOnBoth();
        JoinManners();
        SwayOverStep();
        DropSaidAgain();
        JoinHeld();
        BodyAsYouStep();
        EndWith();
        EndOn();
        FansInDetail();
        TurnAsYouStep();
        TurnAndClose();
        JoinWeights();
        JoinAmounts();
        ShareTurn();
        ShareWay();
        FeetAfterPlaces();
        TurnWithGesture();
        JoinStruts();
        JoinSpirals();
        BehindAsBack();
        RollThreeSteps();
        RollByTurns();
        StrutsByParts();
        JoinSwivets();
        CentreOfSwivet();
        SwivelsOfOneFoot();
        CentreAfterFan();
        JoinFigureTurns();
        JoinGrinds();
        JoinTurnsOfEach();
        SideBeforeFeet();
        PartCircles();
        JoinAmounts();
        DropShares();
        JoinInPlace();
        JoinFeet();
        CentreAfterTwist();
        PullsIn();
        for (int i = 1; i < _clauses.Count; i++)
        {
            // "side mambo R closing R to L": how the figure ends, or a step of its own; the counts tell
            _clauses[i].SaysFinish |= _clauses[i] is { Link: Link.None or Link.Hard, Feet.Count: 1, Head: null, Amount: null, HasTurnWord: false } last
                && last.Dir is not null && last.DirText.Split(' ')[0].EndsWith("ing", StringComparison.OrdinalIgnoreCase)
                && _clauses[i - 1] is { IsFigure: true, Times: 1, Detail.Count: 0 } figure && figure.Head!.Figures[0].Rows.Count > 2
                && (_clauses[i].Link is Link.None || IsLastOf(figure, _clauses[i]));
        }

        foreach (Clause swaying in _clauses.Where(c => c is { FirstWithBefore: true, Feet.Count: > 1 }))
        {
            swaying.Feet.RemoveAt(0);
        }
    }

    /// <summary>Whether a step is the last one of a figure, told once more behind a comma: "right side mambo, closing R to L".</summary>
    private static bool IsLastOf(Clause figure, Clause step) => figure.Feet is [{ } lead]
        && figure.Head!.Figures[0].Rows[^1] is { IsFinish: false } row && row.For(lead.Foot) is { } last
        && last.Foot.ToFoot() == step.Feet[0].Foot && FigureComparison.Family(last.Direction) == FigureComparison.Family(step.Dir!.Direction);

    /// <summary>"Toe fans: R toe out, in, out, in": the name says what the toe does, so that nobody touches out with it.</summary>
    private void FansInDetail()
    {
        foreach (Clause fans in _clauses.Where(c => c.Detail.Count > 0 && ClauseBuilder.IsFan(c.Head)))
        {
            ActionKind kind = fans.Head!.Figures[0].Rows[0].Action.Kind;
            string part = kind is ActionKind.FanToe ? "toe" : kind is ActionKind.FanHeel ? "heel" : "";
            foreach (Clause told in fans.Detail.Where(c => c is { Head: null, Feet.Count: < 2, Amount: null, Dir.Direction: Direction.Out or Direction.In } && c.Part == part))
            {
                told.Head = new Meaning(TermKind.Move) { Verb = kind };
                told.HeadText = fans.HeadText;
                told.Part = "";
            }
        }
    }

    /// <summary>"On the ball of L turn 1/4 right closing R beside L": the foot it turns on, and not where the weight is in the end.</summary>
    private void TurnOnBall()
    {
        foreach (Clause clause in _clauses)
        {
            if (clause is
                {
                    SaysBall: true, WeightNote: TermKind.WeightOn, WeightFoot: Foot turnedOn, Amount: not null, Feet.Count: 1, Dir: not null,
                    Head: null or { Verb: ActionKind.Step }
                }
                && clause.Feet[0].Foot != turnedOn)
            {
                clause.WeightNote = null;
                clause.WeightFoot = null;
            }
        }
    }

    /// <summary>"Twist right, left, right, return to the centre with the weight on L": the heels come back, nobody recovers.</summary>
    private void CentreAfterTwist()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            Clause before = _clauses[i - 1];
            bool twisted = before.Head?.Verb is ActionKind.Twist or ActionKind.Swivel or ActionKind.SwivelHeels or ActionKind.SwivelToes;
            if (twisted && before.Amount is null && _clauses[i] is
                {
                    Head.Verb: ActionKind.Recover, Feet.Count: 0, Amount: null, Dir.Direction: Direction.Centre or Direction.Home
                } back)
            {
                back.Head = before.Head;
                back.HeadText = before.HeadText;
                back.Dir = back.Dir! with { Direction = Direction.Centre };
            }
        }
    }

    /// <summary>
    /// "Turning 1/8 left on each count touch R to side four times", "1/4 right on every step, walk R, L, R, L": the turn of each is said first.
    /// </summary>
    private void EachBefore()
    {
        for (int i = 0; i < _clauses.Count; i++)
        {
            Clause turning = _clauses[i];
            if (turning is not { SaysEach: true, Amount: int amount, TurnSide: Foot side, TurnTo: null })
            {
                continue;
            }

            bool many = turning is { Head.Verb: not null and not (ActionKind.Pivot or ActionKind.Unwind), IsFigure: false, Detail.Count: 0 }
                && (turning.Times > 1 || turning.Feet.Count > 1);
            if (many && turning.TurnFirst)
            {
                Clause turn = new() { Amount = amount, TurnSide = side, HasTurnWord = true, SaysEach = true, Link = Link.Soft, LinkAfter = turning.LinkAfter };
                turn.Cover(turning.Span);
                turning.Amount = null;
                turning.TurnSide = null;
                turning.HasTurnWord = false;
                turning.SaysEach = false;
                turning.TurnFirst = false;
                turning.LinkAfter = Link.None;
                _clauses.Insert(i + 1, turn);
                i++;
                continue;
            }

            if (!turning.IsTurnOnly || i > 0 || _clauses.Count < 2)
            {
                continue;
            }

            Clause next = _clauses[1];
            int feet = 1;
            while (1 + feet < _clauses.Count && _clauses[1 + feet] is { IsFeetOnly: true, WeightNote: null, TimesStated: false })
            {
                feet++;
            }

            if (next is { Head.Verb: not null and not (ActionKind.Pivot or ActionKind.Unwind), IsFigure: false, Amount: null, Detail.Count: 0 }
                && (next.Times > 1 || next.Feet.Count > 1 || feet > 1))
            {
                // the reader gives a turn of each to the move before it
                _clauses.RemoveAt(0);
                _clauses.Insert(feet, turning);
                turning.Link = Link.Soft;
                return;
            }

            List<Clause> steps = _clauses.FindAll(c =>
                c is { Head.Verb: ActionKind.Step or ActionKind.Touch or ActionKind.Point, IsFigure: false, Feet.Count: 1, Times: 1 }
                or { Head: null, Dir: not null, Feet.Count: 1, Times: 1 });
            if (steps.Count > 1 && steps.Count == _clauses.Count - 1 && steps.TrueForAll(c => c is { Amount: null, TurnTo: null }))
            {
                // "1/4 right on every step: R forward, L forward, R forward, L forward"
                foreach (Clause step in steps)
                {
                    step.Amount = amount;
                    step.TurnSide = side;
                    step.HasTurnWord = true;
                }

                steps[0].Cover(turning.Span);
                _clauses.RemoveAt(0);
                return;
            }
        }
    }

    /// <summary>"Walk R, L, R, L making a full circle right, 1/4 turn on each step": how the circle is shared, told after it.</summary>
    private void DropShares()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i] is { IsTurnOnly: true, SaysEach: true, Amount: int each } share
                && _clauses[i - 1] is { IsTurnOnly: true, SaysCircle: true, Amount: int whole } circle
                && (share.TurnSide is null || share.TurnSide == circle.TurnSide) && each < whole && whole % each == 0
                && _clauses.Take(i - 1).Sum(c => c is { Head: null or { Special: "walk" or "run" or "step" } } ? c.Feet.Count : 0) == whole / each)
            {
                circle.Cover(share.Span);
                circle.LinkAfter = share.LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"Bump the hips right, left, right, left in place": the last way of a list, and where they all are bumped.</summary>
    private void JoinInPlace()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i] is not { Head: null, Feet.Count: 1, Dir.Direction: Direction.InPlace, Amount: null, Part.Length: 0 } last)
            {
                continue;
            }

            int from = i - 1;
            while (from > 0 && _clauses[from] is { IsFeetOnly: true, Feet.Count: 1 })
            {
                from--;
            }

            if (_clauses[from].Head?.Verb is ActionKind.Bump or ActionKind.RollHips or ActionKind.Sway or ActionKind.Twist or ActionKind.SwivelHeels
                && _clauses[from].Feet.Count > 0)
            {
                last.Dir = null;
                last.DirText = "";
            }
        }
    }

    /// <summary>"Lift both heels and put them down": the heels of both feet leave the floor, they do not swivel.</summary>
    private void JoinLifts()
    {
        for (int i = 0; i + 1 < _clauses.Count; i++)
        {
            Clause clause = _clauses[i];
            if (clause is
                {
                    Head: null, HasLift: true, Part: "heels", Feet.Count: 0, Dir: null
                or { Direction: Direction.Up }, Amount: null, HasTurnWord: false
                }
                && Lowers(_clauses[i + 1]))
            {
                clause.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Bounce, Special = "bounce" };
                clause.HeadText = "lift heels";
                clause.Part = "";
                clause.BothFeet = true;
            }
        }
    }

    private static bool Lowers(Clause put) => put is { SaysIt: true, Dir.Direction: Direction.Down, Head.Verb: ActionKind.Step }
        or { SaysIt: true, Link: Link.Soft, Head: { Verb: ActionKind.Drop } or { Figures: [{ Id: "lower" }, ..] }, Feet.Count: 0, Amount: null };

    /// <summary>"Step-slide-step-brush to the right diagonal": verbs without feet, and one way for all the steps among them.</summary>
    private void ShareWay()
    {
        if (_clauses.Count > 2 && _clauses[0] is { IsFigure: true, Feet.Count: 0, Dir: null, Amount: null, Detail.Count: 0, LinkAfter: Link.None } named
            && named.HeadText.ToLowerInvariant() is "step slide" or "step-slide"
            && _clauses[1] is { Head.Verb: ActionKind.Step, Feet.Count: 0, Link: Link.None })
        {
            // "step-slide-step": verb by verb, and no name
            Clause step = new() { Head = new Meaning(TermKind.Move) { Verb = ActionKind.Step, Special = "step" }, HeadText = "step", LinkAfter = Link.None };
            Clause slide = new()
            {
                Head = new Meaning(TermKind.Move) { Verb = ActionKind.Slide, Special = "slide" },
                HeadText = "slide",
                Link = Link.None,
                LinkAfter = Link.None
            };
            step.Link = named.Link;
            step.Cover(named.Span);
            slide.Cover(named.Span);
            _clauses[0] = step;
            _clauses.Insert(1, slide);
        }

        if (_clauses.Count < 3 || _clauses[^1] is not { Head.Verb: ActionKind verb, Feet.Count: 0, Amount: null, Detail.Count: 0 } last
            || !(last.Diagonal || last.Dir is { Direction: Direction.Forward or Direction.Back })
            || !_clauses.SkipLast(1).All(c => c is
            {
                Head.Verb: not null, Feet.Count: 0, Dir: null, Diagonal: false, Amount: null, Detail.Count: 0, TimesStated: false, LinkAfter: Link.None
            }))
        {
            return;
        }

        foreach (Clause step in _clauses.Where(c => c.Head!.Verb is ActionKind.Step))
        {
            step.Diagonal = last.Diagonal;
            step.Dir = last.Dir;
            step.DirText = last.DirText;
        }

        if (verb is not ActionKind.Step)
        {
            last.Diagonal = false;
            last.Dir = null;
        }

        last.DirSide = null;
    }

    /// <summary>"Behind side R L": the places first, and then a foot for each of them.</summary>
    private void FeetAfterPlaces()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            Clause last = _clauses[i];
            int first = i;
            while (first > 0 && _clauses[first - 1] is { Head: null, Dir: not null, DirSide: null, Feet.Count: 0, Amount: null, LinkAfter: Link.None }
                && _clauses[first - 1] is { IsAmp: false, Part.Length: 0, HasTurnWord: false, BothFeet: false, WeightNote: null })
            {
                first--;
            }

            bool each = first < i && last is { Head: null, Dir: not null, Amount: null, Part.Length: 0, Reference: null, TimesStated: false }
                && last.Feet.Count == i - first + 1 && Enumerable.Range(1, last.Feet.Count - 1).All(n => last.Feet[n].Foot != last.Feet[n - 1].Foot);
            if (each)
            {
                for (int n = first; n < i; n++)
                {
                    _clauses[n].Feet.Add(last.Feet[n - first]);
                    _clauses[n].Cover(last.Span);
                }

                last.Feet.RemoveRange(0, i - first);
            }
        }
    }

    /// <summary>"Vine left with half turn, hitching R on the turn": the turn is made with the hitch.</summary>
    private void TurnWithGesture()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            if (_clauses[i] is { OnTurn: true, Amount: null } gesture && _clauses[i - 1] is { IsFigure: true, Amount: int amount, Detail.Count: 0 } figure)
            {
                gesture.Amount = amount;
                gesture.HasTurnWord = true;
                gesture.TurnSide = figure.TurnSide ?? figure.DirSide ?? (figure.Feet.Count == 1 ? figure.Feet[0].Foot : null);
                figure.Amount = null;
                figure.HasTurnWord = false;
                figure.TurnSide = null;
            }
        }
    }

    /// <summary>"Strut forward on L, heel then toe": which part of the foot comes first.</summary>
    private void JoinStruts()
    {
        for (int i = 0; i + 2 < _clauses.Count; i++)
        {
            if (TakesParts(_clauses[i], _clauses.GetRange(i + 1, 2)))
            {
                _clauses[i].Cover(_clauses[i + 2].Span);
                _clauses[i].LinkAfter = _clauses[i + 2].LinkAfter;
                _clauses.RemoveRange(i + 1, 2);
            }
        }
    }

    /// <summary>"Toe", "toe down": the part of the foot that a word of a strut speaks of.</summary>
    private static string PartOf(Clause clause) => clause.Head is null ? clause.Part.TrimEnd('s')
        : clause.HeadText.Contains("toe", StringComparison.OrdinalIgnoreCase) ? "toe"
        : clause.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase) ? "heel" : clause.Part.TrimEnd('s');

    /// <summary>Gives a bare strut the part that its two parts say it begins with; false where they are no such two.</summary>
    public static bool TakesParts(Clause strut, List<Clause> parts)
    {
        bool isStrut = strut is { IsFigure: true, Detail.Count: 0, Part.Length: 0 } && strut.HeadText.Contains("strut", StringComparison.OrdinalIgnoreCase)
            && strut.Head!.Figures[0].Rows is [_, { Action.Kind: ActionKind.Drop }];
        if (!isStrut || parts.Count != 2
            || !parts.TrueForAll(p => p is
            {
                Head: null or { Verb: ActionKind.Drop or ActionKind.Touch or ActionKind.Dig }, Feet.Count: 0, Amount: null,
                Detail.Count: 0
            } && p.Dir?.Direction is null or Direction.Down)
            || (PartOf(parts[0]), PartOf(parts[1])) is not (("heel", "toe") or ("toe", "heel")))
        {
            return false;
        }

        string first = PartOf(parts[0]);
        bool begins = strut.Head!.Figures[0].Rows[0].Action.Kind == (first == "heel" ? ActionKind.Dig : ActionKind.Touch);
        if (!(begins && strut.Head.Figures[0].Rows[0].Action.Direction is not Direction.Forward)
            && StepCatalogue.Default.Find(first + "_strut") is StepDefinition meant && !strut.HeadText.Contains(first, StringComparison.OrdinalIgnoreCase))
        {
            strut.Head = strut.Head! with { Figures = [meant] };
            strut.HeadText = meant.Name;
        }

        return true;
    }

    /// <summary>"Spiral full turn right, hooking R": how the free foot ends in a spiral.</summary>
    private void JoinSpirals()
    {
        foreach (Clause spiral in _clauses.Where(c => c is { IsSpiral: true, TurnSide: null, Feet.Count: 2 } && c.Feet[0].Foot != c.Feet[1].Foot))
        {
            // "step R forward spiral L": the foot, and the way round; "full spiral L on R": the other way about
            int way = spiral.Feet[1].IsCertain && !spiral.Feet[0].IsCertain && !spiral.FootFirst ? 0 : 1;
            spiral.TurnSide = spiral.Feet[way].Foot;
            spiral.Feet.RemoveAt(way);
        }

        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i - 1].IsSpiral && _clauses[i] is { Head: { Verb: ActionKind.Hook, IsIng: true }, Amount: null })
            {
                _clauses[i - 1].Cover(_clauses[i].Span);
                _clauses[i - 1].LinkAfter = _clauses[i].LinkAfter;
                _clauses[i - 1].HasStyle = true;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"RF step behind, LF close, RF step in front": behind and in front of where she stands, for nobody crosses to close beside.</summary>
    private void BehindAsBack()
    {
        for (int i = 0; i + 2 < _clauses.Count; i++)
        {
            bool named = _clauses[i] is { Head: { Verb: null, Figures: [{ Id: "cross_behind" }] }, Dir: null, Diagonal: false }
                && _clauses[i].HeadText.StartsWith("step", StringComparison.OrdinalIgnoreCase);
            if (_clauses[i] is { Reference: null, Feet.Count: 1, Amount: null } first
                && (named || (first is { Head: null or { Verb: ActionKind.Step }, Dir.Direction: Direction.CrossBehind }
                && first.DirText.StartsWith("beh", StringComparison.OrdinalIgnoreCase)))
                && _clauses[i + 1] is { Head: null or { Verb: ActionKind.Step }, Dir.Direction: Direction.Together, Feet.Count: 1, Amount: null } second
                && _clauses[i + 2] is { Head: null or { Verb: ActionKind.Step }, Dir.Direction: Direction.Forward, Feet.Count: 1 } third
                && third.DirText.Contains("front", StringComparison.OrdinalIgnoreCase)
                && first.Feet[0].Foot == third.Feet[0].Foot && second.Feet[0].Foot != third.Feet[0].Foot)
            {
                first.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Back };
                first.Head = named ? new Meaning(TermKind.Move) { Verb = ActionKind.Step, Special = "step" } : first.Head;
            }
        }
    }

    /// <summary>"Full turn right stepping R, L, R": three steps make it a rolling vine, while two would go forward.</summary>
    private void RollThreeSteps()
    {
        for (int i = 0; i < _clauses.Count; i++)
        {
            Clause turn = _clauses[i];
            if (turn is not { IsFigure: true, Times: 1, Amount: null or 8, IsRepeat: false } || turn.Head!.Figures.Count < 2
                || turn.Head.Figures.FirstOrDefault(f => f.Id == "three_step_turn") is not StepDefinition rolling)
            {
                continue;
            }

            List<Clause> told = turn.Detail.Count > 0 ? turn.Detail : _clauses;
            int from = turn.Detail.Count > 0 ? 0 : i + 1;
            List<Foot> feet = [];
            bool detailed = turn.Detail.Count > 0;
            if (!detailed && (turn.TurnSide is not null || turn.DirSide is not null))
            {
                // the side is the way round, so that a foot is a foot
                feet.AddRange(turn.Feet.Select(f => f.Foot));
            }

            int end = from;
            while (end < told.Count && feet.Count < 4 && told[end] is { IsFeetOnly: true, Feet.Count: > 0, WeightNote: null, TimesStated: false })
            {
                feet.AddRange(told[end].Feet.Select(f => f.Foot));
                end++;
            }

            Foot? way = turn.TurnSide ?? turn.DirSide ?? (turn.Feet is [{ } side] ? side.Foot : null);
            if (way is null || feet.Count != 3 || feet[0] != way || feet[1] == feet[0] || feet[2] != feet[0])
            {
                continue;
            }

            Clause roll = new()
            {
                Head = turn.Head with { Figures = [rolling] },
                HeadText = rolling.Name,
                DirSide = way,
                Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = way },
                Link = turn.Link,
                LinkAfter = end > from ? told[end - 1].LinkAfter : turn.LinkAfter,
                IsWith = turn.IsWith,
                WithoutFinish = true,
            };
            roll.Cover(turn.Span);
            List<Clause> rest = [.. turn.Detail.Skip(end)];
            if (!detailed)
            {
                foreach (Clause foot in told.GetRange(from, end - from))
                {
                    roll.Cover(foot.Span);
                }

                _clauses.RemoveRange(from, end - from);
            }

            _clauses[i] = roll;
            _clauses.InsertRange(i + 1, rest);
        }
    }

    /// <summary>"1/4 right, 1/2 right, 1/4 right, touch": the turns of a rolling vine, said without its steps.</summary>
    private void RollByTurns()
    {
        for (int i = 0; i + 2 < _clauses.Count; i++)
        {
            List<Clause> turns = _clauses.GetRange(i, 3);
            if (!turns.TrueForAll(c => c is { IsTurnOnly: true, WeightNote: null, SaysEach: false, TurnTo: null, SaysCircle: false, TimesStated: false })
                || (turns[0].Amount, turns[1].Amount, turns[2].Amount) is not (2, 4, 2) || turns[0].TurnSide is not Foot way
                || turns[1].TurnSide is Foot second && second != way || turns[2].TurnSide is Foot third && third != way
                || StepCatalogue.Default.Find("three_step_turn") is not StepDefinition rolling)
            {
                continue;
            }

            Clause roll = new()
            {
                Head = new Meaning(TermKind.Move) { Figures = [rolling] },
                HeadText = rolling.Name,
                DirSide = way,
                Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = way },
                Link = turns[0].Link,
                LinkAfter = turns[2].LinkAfter,
                WithoutFinish = true,
            };
            turns.ForEach(c => roll.Cover(c.Span));
            _clauses.RemoveRange(i, 3);
            _clauses.Insert(i, roll);
        }
    }

    /// <summary>"R toe-heel, L toe-heel", "R heel, toe, L heel, toe": what a foot lowers before the other one acts carries the weight.</summary>
    private void StrutsByParts()
    {
        bool struts = false;
        for (int i = 0; i + 1 < _clauses.Count; i++)
        {
            bool pair = _clauses[i] is { Head: null, Part: "toe" or "heel", Feet.Count: 1, Amount: null, Detail.Count: 0 } laid
                && _clauses[i + 1] is { Head: null, Part: "toe" or "heel", Feet.Count: 0, Dir: null, Amount: null, Detail.Count: 0, BothFeet: false } lowered
                && laid.Part != lowered.Part;
            bool otherActs = i + 3 < _clauses.Count && _clauses[i + 2] is { Head: null, Part: "toe" or "heel", Feet: [{ } other] } next
                && next.Part == _clauses[i].Part && pair && other.Foot != _clauses[i].Feet[0].Foot
                && _clauses[i + 3] is { Head: null, Feet.Count: 0, Dir: null } after && after.Part == _clauses[i + 1].Part;
            if (pair && (otherActs || struts))
            {
                struts = true;
                Clause drop = _clauses[i + 1];
                drop.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Drop, Special = "drop" };
                drop.HeadText = "drop " + drop.Part;
                drop.Part = "";
                drop.Feet.Add(_clauses[i].Feet[0]);
            }
        }
    }

    /// <summary>"R toe and L heel swivel to right, both back to centre": the toes of one foot and the heel of the other are a swivet.</summary>
    private void JoinSwivets()
    {
        for (int i = 0; i + 1 < _clauses.Count; i++)
        {
            Clause toe = _clauses[i];
            Clause heel = _clauses[i + 1];
            bool ofHeel = heel is { Head: null, Part: "heel" or "heels" } or
            {
                Head.Verb: ActionKind.Swivel or ActionKind.FanHeel, Part: "heel" or "heels"
                or ""
            }
                or { Head: { Verb: null, Figures: [{ Id: "swivel_heels" }, ..] } };
            if (toe is not { Head: null or { Verb: ActionKind.Swivel }, Part: "toe" or "toes", Feet.Count: 1, Dir: null, Amount: null } || !ofHeel
                || (toe.Head is null && heel.Head is null) || heel is not { Link: Link.Soft, Feet.Count: 1, DirSide: Foot way, Amount: null }
                || heel.Feet[0].Foot == toe.Feet[0].Foot
                || StepCatalogue.Default.Find("swivet_one") is not StepDefinition swivet)
            {
                continue;
            }

            Clause joined = new()
            {
                Head = new Meaning(TermKind.Move) { Figures = [swivet] },
                HeadText = swivet.Name,
                Link = toe.Link,
                LinkAfter = heel.LinkAfter
            };
            joined.Feet.Add(toe.Feet[0].Foot == way ? toe.Feet[0] : new FootWord(way, false, false));
            joined.Cover(toe.Span);
            joined.Cover(heel.Span);
            joined.WeightNote = heel.WeightNote;
            joined.WeightFoot = heel.WeightFoot;
            _clauses.RemoveAt(i + 1);
            _clauses[i] = joined;
            if (i + 1 < _clauses.Count && _clauses[i + 1] is { Head: null or { Verb: ActionKind.Recover or ActionKind.Step }, BothFeet: true }
                    or { Head: null or { Verb: ActionKind.Recover or ActionKind.Step }, Feet.Count: 0, Amount: null } && _clauses[i + 1] is Clause back
                && back.Dir?.Direction is Direction.Home or Direction.Centre)
            {
                back.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Swivel, Special = "swivel" };
                back.HeadText = "swivel";
                back.Dir = back.Dir with { Direction = Direction.Centre };
            }
        }
    }

    /// <summary>"Swivet right, return to centre with weight on L": how the swivet ends, told once more.</summary>
    private void CentreOfSwivet()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i - 1] is { Detail.Count: 0, Times: 1, Head: { Verb: null, Figures: [{ Id: "swivet" } figure, ..] } } swivet && figure.Rows.Count == 2
                && _clauses[i] is { Feet.Count: 0, Amount: null, HasTurnWord: false } back
                && (back.Head is { Verb: null, Figures: [{ Id: "swivel_centre" }, ..] } || (back.Dir?.Direction is Direction.Home or Direction.Centre
                    && back.Head is null or { Verb: ActionKind.Recover or ActionKind.Step or ActionKind.Swivel })))
            {
                swivet.WeightNote ??= back.WeightNote;
                swivet.WeightFoot ??= back.WeightFoot;
                swivet.Unknown.AddRange(back.Unknown);
                swivet.Cover(back.Span);
                swivet.LinkAfter = back.LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"Swivel right toe out, centre": one foot swivels, and that is a fan.</summary>
    private void SwivelsOfOneFoot()
    {
        foreach (Clause clause in _clauses)
        {
            if (clause is { Head.Verb: ActionKind.Swivel, Part: "toe" or "heel", Feet.Count: 1, BothFeet: false, Amount: null })
            {
                clause.Head = new Meaning(TermKind.Move) { Verb = clause.Part == "toe" ? ActionKind.FanToe : ActionKind.FanHeel };
                clause.HeadText = clause.Part + " fan";
                clause.Part = "";
            }
        }
    }

    /// <summary>"Fan R toe to right, return to centre": the toe comes back, the other foot has nothing to do with it.</summary>
    private void CentreAfterFan()
    {
        foreach (Clause home in _clauses.Where(c => c is { Head: { Verb: null, Figures: [{ Id: "swivel_centre" }, ..] }, Feet.Count: 1, Part.Length: 0 }))
        {
            // "return to centre with right": one foot comes home, none swivels
            home.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Step, Special = "step" };
            home.HeadText = "step";
            home.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Home };
        }

        for (int i = _clauses.Count - 1; i > 1; i--)
        {
            if (_clauses[i] is { Head: { Verb: null, Figures: [{ Id: "swivel_centre" }, ..] }, Link: Link.None }
                && _clauses[i - 1] is { Head.Verb: ActionKind.Recover or ActionKind.Step, Feet.Count: 0, Dir: null, Amount: null, Detail.Count: 0 } verb
                && _clauses[i - 2] is { Feet.Count: 1 } fanned && (fanned.Head?.Verb is ActionKind.FanToe or ActionKind.FanHeel
                || fanned.Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.FanToe or ActionKind.FanHeel }] }, ..] }))
            {
                // "fan right toes out to right, return toes to centre": nobody recovers
                _clauses[i].Link = verb.Link;
                _clauses[i].IsWith = verb.IsWith;
                _clauses[i].Cover(verb.Span);
                _clauses.RemoveAt(i - 1);
            }
        }

        for (int i = 1; i < _clauses.Count; i++)
        {
            if (_clauses[i] is { Head: { Verb: null, Figures: [{ Id: "swivel_centre" }, ..] } head, Feet.Count: 0 } back
                && _clauses[i - 1] is { Feet.Count: 1 } fan && (fan.Head?.Verb is ActionKind.FanToe or ActionKind.FanHeel
                || fan.Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.FanToe or ActionKind.FanHeel }] }, ..] }))
            {
                back.Head = fan.Head;
                back.HeadText = fan.HeadText;
                back.Feet.AddRange(fan.Feet);
                back.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Centre };
            }
        }
    }

    /// <summary>"Triple half L R-L-R": the way round, and then a foot for each step.</summary>
    private void SideBeforeFeet()
    {
        foreach (Clause turned in _clauses.Where(c => c is { IsFigure: true, TurnSide: null, Times: 1, Detail.Count: 0, FootFirst: false }
            && (c.Amount is not null || c.Head!.NamesAmount) && c.Feet.Count == c.Head!.Figures[0].Rows.Count + 1 && c.Feet.Count > 3 && !c.Feet[0].IsCertain))
        {
            Foot first = turned.Feet[1].Foot;
            bool alternate = Enumerable.Range(1, turned.Feet.Count - 1).All(n => turned.Feet[n].Foot == (n % 2 == 1 ? first : first.Other()));
            if (alternate)
            {
                turned.TurnSide = turned.Feet[0].Foot;
                turned.Feet.RemoveAt(0);
            }
        }
    }

    /// <summary>Walks in a circle: the walks with all their feet, and after them the turn that they share.</summary>
    private void PartCircles()
    {
        ShareAmongWalks();
        for (int i = _clauses.Count - 1; i >= 0; i--)
        {
            if (_clauses[i] is { Head: null or { Special: "walk" or "run" or "step" }, Amount: int about, TurnSide: not null, HasTurnWord: true } walks
                && walks is { SaysEach: false, Detail.Count: 0, Part.Length: 0, WeightNote: null, TurnTo: null, OnStep: null, OnCount: null }
                && walks is { TurnFirst: false, TimesStated: false }
                && walks.Dir?.Direction is null or Direction.Forward or Direction.Back
                && (walks.Feet.Count > 2 || (walks.Feet.Count == 2 && walks.SaysCircle) || (walks.SaysCircle && WalksBefore(i)))
                    && !(walks.Feet.Count == 2 && about == 8))
            {
                // "walk R L R L in a half circle left": the walks, and the turn that they share
                Clause shared = new() { Amount = about, TurnSide = walks.TurnSide, HasTurnWord = true, SaysCircle = true, Link = Link.None };
                shared.LinkAfter = walks.LinkAfter;
                shared.Cover(walks.Span);
                walks.Amount = null;
                walks.TurnSide = null;
                walks.HasTurnWord = false;
                walks.SaysCircle = false;
                walks.LinkAfter = Link.None;
                _clauses.Insert(i + 1, shared);
            }
        }

        for (int i = 1; i < _clauses.Count; i++)
        {
            Clause circle = _clauses[i];
            if (circle is { SaysCircle: true, Head: null, Feet.Count: > 0, Dir: null, Part.Length: 0 } && (circle.Amount is not null || circle.HasTurnWord))
            {
                // "walk R, L, R, L making a full circle left": the last L is a walk like the others
                Clause walk = new() { Link = circle.Link, LinkAfter = Link.None };
                walk.Feet.AddRange(circle.Feet);
                walk.Cover(circle.Span);
                circle.Feet.Clear();
                if (_clauses[i - 1] is { Head.Special: "walk" or "run", Feet.Count: 0, Times: 1, Detail.Count: 0 } && i + 1 < _clauses.Count
                    && _clauses[i + 1] is { IsFeetOnly: true })
                {
                    // "walk in a half circle right R, L, R": the first of the feet that are listed after it
                    walk.Link = Link.Hard;
                    _clauses.Insert(i + 1, walk);
                }
                else
                {
                    circle.Link = Link.None;
                    _clauses.Insert(i, walk);
                    i++;
                }
            }

            if (!circle.SaysCircle || !circle.IsTurnOnly || _clauses[i - 1] is not
                {
                    Head.Special: "walk"
                or "run", Feet.Count: 0, Times: 1, Detail.Count: 0
                } walked)
            {
                continue;
            }

            int last = i + 1;
            while (last < _clauses.Count && _clauses[last] is { IsFeetOnly: true, WeightNote: null, TimesStated: false })
            {
                last++;
            }

            List<Clause> listed = _clauses.GetRange(i + 1, last - i - 1);
            if (listed.Sum(c => c.Feet.Count) >= 2)
            {
                // "walk in a full circle left, R, L, R, L"
                walked.Feet.AddRange(listed.SelectMany(c => c.Feet));
                walked.Cover(listed[^1].Span);
                circle.LinkAfter = listed[^1].LinkAfter;
                _clauses.RemoveRange(i + 1, listed.Count);
                DropShare(i, walked.Feet.Count);
            }
        }
    }

    /// <summary>"Four walks making a full turn left", "turn 1/2 left over 4 walks": the walks, however many, and after them the turn that they share.</summary>
    private void ShareAmongWalks()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            (Clause first, Clause second) = (_clauses[i - 1], _clauses[i]);
            if (IsSharedTurn(first) && IsSomeWalks(second) && second.Link is Link.None && (first.SaysCircle || first.OverSteps == second.Times))
            {
                (first.Link, second.Link) = (Link.None, first.Link);
                first.LinkAfter = second.LinkAfter;
                second.LinkAfter = Link.None;
                (_clauses[i - 1], _clauses[i]) = (second, first);
                first.SaysCircle = true;
                first.OverSteps = null;
            }
            else if (IsSomeWalks(first) && IsSharedTurn(second) && second.Link is Link.None && (second.Amount is not null || first.SaysCircle))
            {
                second.SaysCircle = true;
            }
        }

        static bool IsSomeWalks(Clause clause) => clause is
        {
            Head.Special: "walk" or "run", Times: >= 3, Amount: null, HasTurnWord: false, Detail.Count: 0, Part.Length: 0, WeightNote: null
        }
            && (clause.Feet.Count == 0 || clause.Feet.Count == clause.Times) && clause.Dir?.Direction is null or Direction.Forward or Direction.Back;

        static bool IsSharedTurn(Clause clause) => clause is
        {
            IsTurnOnly: true, TurnSide: not null, TurnTo: null, SaysEach: false, OnStep: null, OnCount: null, WeightNote: null, Feet.Count: 0
        };
    }

    /// <summary>Whether two walks with a foot each stand before a place: "walk R, walk L, walk R, walk L making a half circle left".</summary>
    private bool WalksBefore(int at) => at > 1 && _clauses.GetRange(at - 2, 2).TrueForAll(c => c is
    {
        Head.Special: "walk" or "run", Feet.Count: 1, Amount: null, HasTurnWord: false, Detail.Count: 0, Times: 1
    });

    /// <summary>"Around to the right, 3/4 in all": how far the turn before goes.</summary>
    private void JoinAmounts()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i] is { IsFigure: true, Feet.Count: 0, Dir: null, Detail.Count: 0, TurnSide: null, Amount: null } named
                && ClauseBuilder.AmountOfTurn(named.HeadText) is int told && _clauses[i - 1] is { SaysCircle: true, Amount: null, TurnSide: not null })
            {
                // "in a circle to the left, a full turn"
                named.Head = null;
                named.Amount = told;
                named.HasTurnWord = true;
            }

            if (_clauses[i] is { IsTurnOnly: true, Amount: int amount, TurnSide: null, TurnTo: null }
                && _clauses[i - 1] is { IsTurnOnly: true, Amount: null, TurnSide: not null, TurnTo: null } way)
            {
                // "around to the right, 3/4 in all"
                way.Amount = amount;
                way.Cover(_clauses[i].Span);
                way.LinkAfter = _clauses[i].LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"... making a quarter turn left on every step": how a circle is shared, said once more.</summary>
    private void DropShare(int circle, int walks)
    {
        if (circle + 1 < _clauses.Count && _clauses[circle + 1] is { IsTurnOnly: true, SaysEach: true, Amount: int each }
            && each * walks == (_clauses[circle].Amount ?? 8))
        {
            _clauses.RemoveAt(circle + 1);
        }
    }

    /// <summary>"Monterey turn, 1/4 right": the amount belongs to the figure.</summary>
    private void JoinFigureTurns()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            Clause turn = _clauses[i];
            Clause figure = _clauses[i - 1];
            // "jazz box L, quarter turn left, end with touch R": the turn is of the figure, and not of how it ends
            bool beforeEnd = i + 1 < _clauses.Count && _clauses[i + 1].SaysFinish && figure.IsFigure && figure.Times == 1
                && figure.Head!.Figures[0].Rows.Count > 2 && turn is { OnStep: null, OnCount: null };
            if (turn.IsTurnOnly && turn.Amount is not null && figure is { IsFigure: true, Amount: null, Detail.Count: 0, Head.NamesAmount: false }
                && (beforeEnd || ClauseBuilder.IsTurnVerb(figure.Head)))
            {
                figure.Amount = turn.Amount;
                if (figure.TurnSide is Foot lead && turn.TurnSide is not null && figure.Feet.Count == 0)
                {
                    // "military turn R, full left": R was the foot
                    figure.Feet.Add(new FootWord(lead, false, false));
                    figure.TurnSide = null;
                }

                figure.TurnSide ??= turn.TurnSide;
                figure.Cover(turn.Span);
                figure.LinkAfter = turn.LinkAfter;
                figure.WeightNote ??= turn.WeightNote;
                figure.WeightFoot ??= turn.WeightFoot;
                _clauses.RemoveAt(i);
                i--;
            }
        }
    }

    /// <summary>"Grind R heel turning toes from left to right", "R heel forward grinding 1/4 right": how a grind is made.</summary>
    private void JoinGrinds()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i] is { SaysIt: true, Head.Verb: ActionKind.Grind, Feet.Count: 0 }
                && _clauses[i - 1] is { Head.Verb: ActionKind.Step, Feet.Count: 0, Part: "heel", WeightNote: TermKind.WeightOn } weighted
                && weighted.WeightFoot is Foot stood)
            {
                // "put your weight on the right heel"
                weighted.Feet.Add(new FootWord(stood, true, false));
                weighted.WeightNote = TermKind.WeightTakes;
                weighted.WeightFoot = null;
            }

            if (_clauses[i] is { Head.Verb: ActionKind.Grind, Feet.Count: 0, Dir: null or { Direction: Direction.Side }, Detail.Count: 0 } ground
                && (ground.Link is Link.None || ground.SaysIt)
                && _clauses[i - 1] is { Feet.Count: 1, Amount: null, Detail.Count: 0, WeightNote: null or TermKind.WeightTakes } heel && IsHeelLaid(heel))
            {
                // "put your weight on the right heel in front of you and grind it"
                heel.Head = ground.Head;
                heel.HeadText = ground.HeadText;
                heel.Part = "";
                heel.WeightNote = null;
                heel.Amount = ground.Amount;
                heel.TurnSide = ground.TurnSide;
                heel.HasTurnWord = ground.HasTurnWord;
                heel.Cover(ground.Span);
                heel.LinkAfter = ground.LinkAfter;
                _clauses.RemoveAt(i);
                continue;
            }

            if (_clauses[i] is { IsTurnOnly: true, SaysIt: true, Amount: not null, TurnSide: not null, WeightNote: null }
                && _clauses[i - 1] is
                {
                    Head: null or { Verb: ActionKind.Dig }, Feet.Count: 1, Amount: null, Dir.Direction: Direction.Forward, WeightNote: null
                } laid
                && (laid.Part is "heel" || laid.Head is not null))
            {
                // "R heel forward, turn 1/4 right on it": who turns on a heel grinds it
                laid.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Grind, Special = "grind" };
                laid.HeadText = "grind";
                laid.Part = "";
                _clauses[i].WithBefore = true;
            }

            if (_clauses[i] is { Part: "toe" or "toes", HasTurnWord: true, Feet.Count: 0, Amount: null, Head: null }
                && _clauses[i - 1] is { Stands: true, Part: "heel", Feet.Count: 1, Head: null } standing)
            {
                // "on R heel stand and turn toe from left to right"
                standing.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Grind, Special = "grind" };
                standing.HeadText = "grind";
                standing.Part = "";
            }

            bool ofToes = _clauses[i] is { Part: "toe" or "toes", HasTurnWord: true, Feet.Count: 0, Amount: null, Head: null }
                or { Head: { Verb: ActionKind.SplitToes or ActionKind.FanToe or ActionKind.SwivelToes, IsIng: true }, Feet.Count: 0, Amount: null };
            // "grind right heel forward, toes left to right"
            ofToes |= _clauses[i] is { Head: null, Part: "toe" or "toes", Amount: null, Feet: [{ IsCertain: false } from], DirSide: Foot to }
                && from.Foot != to;
            if (ofToes && _clauses[i - 1].Head is { Verb: ActionKind.Grind })
            {
                // "grind R heel turning toes from left to right": how a grind is made
                _clauses[i - 1].Cover(_clauses[i].Span);
                _clauses[i - 1].LinkAfter = _clauses[i].LinkAfter;
                _clauses[i - 1].HasStyle = true;
                _clauses.RemoveAt(i);
            }
        }
    }

    private static bool IsHeelLaid(Clause clause) => clause is { Head: null or { Verb: ActionKind.Step }, Part: "heel" }
        or { Head.Verb: ActionKind.Dig } or { Head: { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Dig }] }, ..] } };

    /// <summary>How the turn of a figure is shared out: the catalogue knows.</summary>
    private void JoinTurnsOfEach()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i] is { IsTurnOnly: true, SaysEach: true, TurnSide: null } && _clauses[i - 1] is { IsFigure: true } walked
                && walked.Head!.Figures.Any(f => f.TotalTurn.Sign != 0))
            {
                // how the turn of the figure is shared out: the catalogue knows
                walked.Cover(_clauses[i].Span);
                walked.LinkAfter = _clauses[i].LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>Feet that stand alone after a comma go on with the move before: "walk R, L, R".</summary>
    private void JoinFeet()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            Clause clause = _clauses[i];
            bool lastOfList = clause is { Head: null, Amount: not null, Dir: null, Feet.Count: > 0, Part.Length: 0 }
                && _clauses[i - 1] is { IsFigure: true, Amount: null, Feet.Count: > 1 };
            if (lastOfList)
            {
                // "triple in place L, R, L making a 1/2 turn left"
                Clause figure = _clauses[i - 1];
                figure.Feet.AddRange(clause.Feet);
                figure.Amount = clause.Amount;
                figure.TurnSide ??= clause.TurnSide;
                figure.Cover(clause.Span);
                figure.LinkAfter = clause.LinkAfter;
                _clauses.RemoveAt(i);
                i--;
                continue;
            }

            bool wayOfList = clause is { Head: null, Amount: null, HasTurnWord: false, Feet.Count: 1, Part.Length: 0, Reference: null, Link: Link.Hard }
                && clause is { IsRepeat: false, DirFirst: false, WeightNote: null, SaysIt: false }
                && clause.Dir?.Direction is Direction.InPlace or Direction.Forward or Direction.Back or Direction.Side
                && _clauses[i - 1] is { IsFigure: true, Amount: null, Feet.Count: 2, Dir: null, Detail.Count: 0, Times: 1 } listing
                && listing.Feet[0].Foot != listing.Feet[1].Foot && listing.Feet[0].Foot == clause.Feet[0].Foot
                && listing.Head!.Figures is [{ NamedBy: NamedBy.FirstFoot, Rows.Count: 3 }, ..];
            if (wayOfList)
            {
                // "triple step R, L, R in place": where all of them go
                Clause figure = _clauses[i - 1];
                figure.Feet.AddRange(clause.Feet);
                figure.Dir = clause.Dir;
                figure.DirText = clause.DirText;
                figure.DirSide = clause.DirSide;
                figure.Cover(clause.Span);
                figure.LinkAfter = clause.LinkAfter;
                _clauses.RemoveAt(i);
                i--;
                continue;
            }

            if (!clause.IsFeetOnly || clause.WeightNote is not null || clause.HasLift)
            {
                continue;
            }

            if (clause.Link is Link.None && i > 1 && _clauses[i - 1] is { HasTurnWord: true, SaysCircle: true, Head.Special: "walk" or "run" })
            {
                // "walk a half circle left stepping R, L, R, L"
                clause.Link = Link.Hard;
            }

            int listed = 0;
            while (i + listed < _clauses.Count && _clauses[i + listed] is { IsFeetOnly: true, Feet.Count: 1, WeightNote: null, TimesStated: false })
            {
                listed++;
            }

            if (listed > 1 && _clauses[i - 1] is { IsFigure: true, Feet.Count: 0, Detail.Count: 0, Times: 1 } told && listed == 3
                && told.Head!.Figures[0].Rows.Count == listed && told.Head.Figures[0].NamedBy is NamedBy.FirstFoot)
            {
                // "shuffle 1/2 right, L, R, L"
                told.Feet.AddRange(_clauses.GetRange(i, listed).SelectMany(c => c.Feet));
                told.Cover(_clauses[i + listed - 1].Span);
                told.LinkAfter = _clauses[i + listed - 1].LinkAfter;
                _clauses.RemoveRange(i, listed);
                i--;
                continue;
            }

            if (clause.Feet.Count > 1 && _clauses[i - 1]
                is { Head: { Verb: ActionKind.Step, Special: "walk" or "run" }, Feet.Count: 0, Detail.Count: 0, SaysCircle: false } run
                && (run.Times == 1 || run.Times == clause.Feet.Count))
            {
                // "run forward, right left right"
                run.Feet.AddRange(clause.Feet);
                run.Cover(clause.Span);
                run.LinkAfter = clause.LinkAfter;
                _clauses.RemoveAt(i);
                i--;
                continue;
            }

            if (_clauses[i - 1] is { Detail.Count: 0, Times: 1, Feet.Count: < 2 } around
                && ((around.IsFigure && around.Head!.Figures[0].Id == "walk_around") || around is { SaysCircle: true, Head.Special: "walk" or "run" })
                && clause.Feet.Count + Math.Max(0, listed - 1) >= 2)
            {
                // "walk around 1/4 to the right, R, L": as many walks as feet, which share the turn
                int used = Math.Max(1, listed);
                Foot? way = around.TurnSide ?? around.DirSide ?? (around.Feet.Count == 1 ? around.Feet[0].Foot : null);
                Clause circle = new() { Amount = around.Amount ?? 8, TurnSide = way, HasTurnWord = true, SaysCircle = true, Link = Link.Soft };
                circle.Cover(around.Span);
                around.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Step, Special = "walk" };
                around.Feet.Clear();
                around.Feet.AddRange(_clauses.GetRange(i, used).SelectMany(c => c.Feet));
                around.Amount = null;
                around.TurnSide = null;
                around.DirSide = null;
                around.Dir = null;
                around.Cover(_clauses[i + used - 1].Span);
                circle.LinkAfter = _clauses[i + used - 1].LinkAfter;
                _clauses.RemoveRange(i, used);
                _clauses.Insert(i, circle);
                DropShare(i, around.Feet.Count);
                continue;
            }

            bool spins = _clauses[i - 1] is { Head: null, Amount: 8, HasTurnWord: true, Feet.Count: 0, TurnSide: not null, Times: 1, TurnTo: null }
                && clause.Feet.Count + (listed > 1 ? listed - 1 : 0) == 2;
            if (spins)
            {
                // "full turn right, R, L": a foot for each half of it
                Clause turned = _clauses[i - 1];
                int used = Math.Max(1, listed);
                turned.Feet.AddRange(_clauses.GetRange(i, used).SelectMany(c => c.Feet));
                turned.Cover(_clauses[i + used - 1].Span);
                turned.LinkAfter = _clauses[i + used - 1].LinkAfter;
                _clauses.RemoveRange(i, used);
                i--;
                continue;
            }

            if (_clauses[i - 1] is { Head: null, Amount: 8, HasTurnWord: true, Feet.Count: 1 } spun)
            {
                // "full turn left travelling forward R, L"
                spun.Feet.AddRange(clause.Feet);
                spun.Cover(clause.Span);
                spun.LinkAfter = clause.LinkAfter;
                _clauses.RemoveAt(i);
                i--;
                continue;
            }

            int before = i - 1;
            if (_clauses[before].IsAmp && before > 0)
            {
                before--;
            }

            Clause owner = _clauses[before];
            if (clause.Diagonal && (owner.Reference is not null || owner.Dir?.Direction is Direction.CrossFront or Direction.CrossBehind
                or Direction.LockBehind or Direction.LockFront or Direction.Together or Direction.Side))
            {
                // "R to right diagonal, step L behind R, R to right diagonal": a place of its own
                continue;
            }
            if (clause.SaidCount is not null && owner.Lasts > 1 && owner is { IsFigure: false, Head: not null, Detail.Count: 0, Amount: null }
                && !owner.Feet.Exists(f => f.Foot == clause.Feet[0].Foot))
            {
                // "slow walk R (1-2), L (3-4)": the same again, on counts of its own
                clause.Head = owner.Head;
                clause.HeadText = owner.HeadText;
                clause.Dir ??= owner.Dir;
                clause.DirText = owner.DirText;
                continue;
            }

            bool apart = owner is { Head: null, BothFeet: true, Dir.Direction: Direction.Out or Direction.In };
            bool walks = owner is
            {
                Head: null, Part.Length: 0, BothFeet: false, Amount: null, HasTurnWord: false, Dir.Direction: Direction.Forward
                or Direction.Back
            }
                && owner.Reference is null && clause is { Link: Link.Hard, SaysIt: false };
            if ((owner.Head is not null || apart || walks) && owner.Detail.Count == 0 && owner.Feet.Count > 0 && !ClauseBuilder.IsTurnVerb(owner.Head))
            {
                owner.Feet.AddRange(clause.Feet);
                owner.Cover(clause.Span);
                owner.LinkAfter = clause.LinkAfter;
                owner.WeightNote ??= clause.WeightNote;
                owner.Unknown.AddRange(clause.Unknown);
                if (clause.TimesStated && owner.TimesStated && owner.Feet.Count == 2)
                {
                    // "bump hips R twice, then L twice"
                    FootWord second = owner.Feet[1];
                    owner.Feet.InsertRange(1, Enumerable.Repeat(owner.Feet[0], owner.Times - 1));
                    owner.Feet.AddRange(Enumerable.Repeat(second, clause.Times - 1));
                    owner.Times = 1;
                    owner.TimesStated = false;
                }
                else if (clause.TimesStated)
                {
                    owner.Times = clause.Times;
                    owner.TimesStated = true;
                }

                _clauses.RemoveRange(before + 1, i - before);
                i = before;
            }
        }
    }

    /// <summary>"Bring it in and touch it next to R": one move in two verbs.</summary>
    private void JoinPronouns()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            Clause fetch = _clauses[i - 1];
            Clause put = _clauses[i];
            if (fetch is
                {
                    Head.Verb: ActionKind.SplitHeels or ActionKind.SplitToes or ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.FanToe
                    or ActionKind.FanHeel
                }
                && (put is { SaysIt: true, Head.Verb: ActionKind.Step, Feet.Count: 0 }
                    || (put is { Head.Verb: ActionKind.Step or ActionKind.Recover, Feet.Count: 0, Amount: null, Detail.Count: 0 } && NamesPart(put)
                        && fetch.Head.Verb is ActionKind.SplitHeels or ActionKind.SplitToes))
                && put.Dir is { Direction: Direction.Together or Direction.In or Direction.Home or Direction.Back })
            {
                // "heels apart, then bring them together again", "split heels, bring heels back together"
                put.Head = fetch.Head;
                put.HeadText = fetch.HeadText;
                put.Dir = put.Dir with { Direction = Direction.In };
                if (fetch.Head!.Verb is ActionKind.FanToe or ActionKind.FanHeel)
                {
                    // "fan the right toes out and bring them back"
                    put.Feet.AddRange(fetch.Feet);
                }

                continue;
            }

            bool fanned = fetch is { Head.Verb: ActionKind.FanToe or ActionKind.FanHeel, Feet.Count: 1 }
                or { Head.Verb: ActionKind.Swivel, Part: "toe" or "heel", Feet.Count: 1, BothFeet: false }
                or { Head: { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.FanToe or ActionKind.FanHeel }] }, ..] }, Feet.Count: 1 };
            bool comesBack = put is { Head.Verb: ActionKind.Recover, Feet.Count: 0, Dir.Direction: Direction.In or Direction.Home or Direction.Centre };
            if (fanned && put is { Head: null or { Verb: ActionKind.Step or ActionKind.Recover }, Amount: null, Detail.Count: 0 }
                && (NamesPart(put) || comesBack) && (put.Dir is { Direction: Direction.Together or Direction.In or Direction.Home or Direction.Centre }
                || (put.Head is not null && put.Dir is { Direction: Direction.Back }) || (put.Head?.Verb is ActionKind.Recover && put.Dir is null))
                && put.Feet.TrueForAll(f => f.Foot == fetch.Feet[0].Foot))
            {
                // "fan right toe out, bring right toe back in": it stays where it is and only turns back
                put.Head = fetch.Head;
                put.HeadText = fetch.HeadText;
                put.Part = fetch.Head!.Verb is ActionKind.Swivel ? fetch.Part : "";
                put.Dir = (put.Dir ?? new Meaning(TermKind.Dir)) with { Direction = Direction.In };
                put.Feet.Clear();
                put.Feet.AddRange(fetch.Feet);
                continue;
            }

            bool gesture = fetch.Head?.Verb is ActionKind.Dig or ActionKind.Touch or ActionKind.Point or ActionKind.Tap or ActionKind.Kick
                || (fetch.Head is null && fetch.Part is "heel" or "toe");
            if (gesture && fetch.Feet.Count == 1 && put is { Head.Verb: ActionKind.Step, Dir: { Direction: Direction.Back } way, Feet.Count: 1, Amount: null }
                && put.Feet[0].Foot == fetch.Feet[0].Foot && (put.HeadText.Split(' ')[0].ToLowerInvariant() is "put" or "set" or "bring" or "take"
                    || (put.HeadText.StartsWith("place", StringComparison.OrdinalIgnoreCase) && fetch.Head?.Verb is null or ActionKind.Dig)))
            {
                // "RF heel forward, RF put back": where it came from
                put.Dir = way with { Direction = Direction.Home };
            }

            if (put is { SaysIt: true, Head.Verb: ActionKind.Step, Dir.Direction: Direction.Down, Feet.Count: 0, Amount: null } && fetch.Feet.Count == 1
                && fetch.Head?.Verb is not (ActionKind.Bounce or ActionKind.SwivelHeels or ActionKind.SwivelToes))
            {
                // "throw the right foot back, set it down"
                put.Feet.Add(fetch.Feet[0]);
            }

            if (put.SaysSameFoot && put.Feet.TrueForAll(f => f.MayBeReference) && fetch.Feet.Count > 0)
            {
                // "then hook that same foot across the right shin"
                put.Reference ??= put.Feet.Count > 0 ? put.Feet[0].Foot : null;
                put.Feet.Clear();
                put.Feet.Add(fetch.Feet[^1]);
            }

            if (fetch.Head?.Verb is ActionKind.Bounce && Lowers(put))
            {
                // "lift both heels and put them down": one bounce
                fetch.Times = put.TimesStated ? put.Times : fetch.Times;
                fetch.TimesStated |= put.TimesStated;
                fetch.Cover(put.Span);
                fetch.LinkAfter = put.LinkAfter;
                _clauses.RemoveAt(i);
                i--;
                continue;
            }

            if (put is { SaysIt: true, Head.Verb: ActionKind.Step, Feet.Count: 0, Dir: null, Amount: null, IsAmp: false }
                && fetch is
                {
                    Head: null or { Verb: ActionKind.Step }, Dir.Direction: Direction.CrossFront or Direction.CrossBehind
                or Direction.Together or Direction.Forward or Direction.Back or Direction.Side
                }
                && (fetch.Feet.Count > 0 || (fetch.SaysIt && put.HeadText.StartsWith("stand", StringComparison.OrdinalIgnoreCase)))
                && put.HeadText.StartsWith("st", StringComparison.OrdinalIgnoreCase) && put.Link is Link.Soft or Link.None)
            {
                // "bring R across L and step on it", "tap it at the back, close it and stand on it"
                fetch.Cover(put.Span);
                fetch.LinkAfter = put.LinkAfter;
                fetch.WeightNote ??= put.WeightNote ?? (fetch.Feet.Count == 0 ? TermKind.WeightTakes : null);
                _clauses.RemoveAt(i);
                i--;
                continue;
            }

            bool swung = fetch is { HasTurnWord: true, Head: null, Dir: not null, Amount: null, WeightNote: null, Detail.Count: 0, Part.Length: 0 }
                && put is { Head.Verb: ActionKind.Kick or ActionKind.Point, Dir: null, Link: Link.Soft, Feet.Count: 0 }
                && (fetch.TurnSide is null || fetch.Feet.Count == 0 || fetch.Feet[0].Foot == fetch.TurnSide);
            if (swung && fetch is { TurnSide: Foot swinging, Feet.Count: 0 })
            {
                fetch.Feet.Add(new FootWord(swinging, true, false));
            }

            if (put is { Head.Verb: ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig or ActionKind.Kick, Link: Link.Soft }
                && (put.SaysIt || swung) && put.Feet.Count == 0 && fetch is { Feet.Count: 1, Amount: null, Detail.Count: 0, WeightNote: null }
                    and ({ Head: null, Part.Length: 0 } or { Head.Verb: ActionKind.Slide or ActionKind.Drag })
                && fetch.Dir?.Direction is null or Direction.Out or Direction.Side or Direction.Forward or Direction.Back or Direction.Up
                    or Direction.CrossFront)
            {
                // "swing your right foot out and point it to the side", "swing R forward and kick": the way to the point
                put.Feet.AddRange(fetch.Feet);
                put.Dir ??= fetch.Dir;
                put.Link = fetch.Link;
                put.IsWith = fetch.IsWith;
                put.Cover(fetch.Span);
                _clauses.RemoveAt(i - 1);
                i--;
                continue;
            }

            bool fetches = fetch is { Head.Verb: ActionKind.Step or ActionKind.Drag, Amount: null, TimesStated: false, Feet.Count: < 2 }
                && fetch.Dir?.Direction is null or Direction.Back or Direction.In or Direction.Home or Direction.Up or Direction.Together
                && IsFetching(fetch.HeadText);
            List<FootWord> own = [.. put.Feet.Where(f => !f.MayBeReference)];
            bool puts = put.SaysIt || (fetch.SaysIt && put.Head?.Verb is ActionKind.Touch or ActionKind.Tap)
                || put.WeightNote is TermKind.WeightTakes;
            puts |= fetch.WeightNote is TermKind.WeightTakes && put is { Head: null, Dir.Direction: Direction.Together };
            puts |= fetch.SaysIt && put.Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Touch or ActionKind.Tap }] }, ..] };
            puts |= put is
            {
                Link: Link.None, Head: { Verb: ActionKind.Touch or ActionKind.Tap }
                or { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Touch or ActionKind.Tap }] }, ..] }
            }
                && put.Feet.TrueForAll(f => f.MayBeReference) && fetch.Dir?.Direction is Direction.In or Direction.Up or Direction.Back;
            bool places = put.Head is { Verb: ActionKind.Step or ActionKind.Touch or ActionKind.Tap or ActionKind.Shift or ActionKind.Recover }
                or { Verb: null, Figures: [{ Rows.Count: 1 }, ..] }
                or null;
            if (!fetches || !puts || !places || own.Count > 0 || put.Amount is not null || put.IsAmp)
            {
                continue;
            }

            if (put.Feet.Count == 1)
            {
                put.Reference = put.Feet[0].Foot;
            }

            put.Feet.Clear();
            put.Feet.AddRange(fetch.Feet);
            if (put.Feet.Count == 0 && fetch.SaysIt && i > 1)
            {
                put.Feet.AddRange(_clauses[i - 2].Feet);
            }

            put.Dir ??= fetch.Dir;
            put.Reference ??= fetch.Reference;
            if (put.Head is null or { Verb: ActionKind.Shift or ActionKind.Recover })
            {
                put.Head = fetch.Head;
                put.HeadText = fetch.HeadText;
            }

            put.WeightNote ??= fetch.WeightNote;
            put.Link = fetch.Link;
            put.IsWith = fetch.IsWith;
            put.Cover(fetch.Span);
            _clauses.RemoveAt(i - 1);
            i--;
        }
    }

    private static bool NamesPart(Clause clause) => clause.Part is "toe" or "toes" or "heel" or "heels"
        || clause.HeadText.Contains("toe", StringComparison.OrdinalIgnoreCase) || clause.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase);

    /// <summary>"Pivot 1/4 left taking weight onto L": where the turn ends, no move of its own.</summary>
    private void JoinWeights()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            Clause note = _clauses[i];
            Clause owner = _clauses[i - 1];
            bool ofFoot = owner is { Feet.Count: 1, WeightNote: null } && note.Feet.Count == 1 && owner.Feet[0].Foot == note.Feet[0].Foot
                && owner.Head is null or
                {
                    Verb: ActionKind.Slide or ActionKind.Drag or ActionKind.Step or ActionKind.Touch or ActionKind.Stomp
                or ActionKind.Press
                };
            if (ofFoot && note is { Head.Verb: ActionKind.Shift, Amount: null, Dir: null, Detail.Count: 0 }
                && note.HeadText.Split(' ')[0].EndsWith("ing", StringComparison.OrdinalIgnoreCase))
            {
                // "slide R up beside it, taking the weight on the right"
                owner.WeightNote = TermKind.WeightTakes;
                owner.Cover(note.Span);
                owner.LinkAfter = note.LinkAfter;
                _clauses.RemoveAt(i);
                continue;
            }

            bool ofTurn = ClauseBuilder.IsTurnVerb(owner.Head) || owner.IsTurnOnly;
            if (ofTurn && note is { Link: Link.None, Head: { Verb: ActionKind.Shift, IsIng: true }, Feet.Count: 1, Amount: null }
                && owner.WeightNote is null)
            {
                owner.WeightNote = TermKind.WeightOn;
                owner.WeightFoot = note.Feet[0].Foot;
                owner.Cover(note.Span);
                owner.LinkAfter = note.LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"Turn 3/4 left: step R back making 1/2, step L side making 1/4": the heading says which way, the steps how far.</summary>
    private void ShareTurn()
    {
        if (_clauses.Count < 3 || _clauses[0] is not { IsTurnOnly: true, Amount: int whole, TurnSide: Foot side, SaysEach: false } heading)
        {
            return;
        }

        if (heading.OverSteps is int many && whole % many == 0 && _clauses.Count > many && _clauses.GetRange(1, many).TrueForAll(c => c is
            {
                Head: null or { Verb: ActionKind.Step }, Feet.Count: 1, Dir: not null, Amount: null, HasTurnWord: false, Detail.Count: 0, Times: 1
            }))
        {
            // "turn a full 360 degrees left over two steps, stepping back on R and forward on L": as much on each of them
            foreach (Clause step in _clauses.GetRange(1, many))
            {
                step.Amount = whole / many;
                step.TurnSide = side;
                step.HasTurnWord = true;
                step.OverSteps = many;
            }

            _clauses[1].Cover(heading.Span);
            _clauses.RemoveAt(0);
            return;
        }

        List<Clause> turning = _clauses.FindAll(c => !ReferenceEquals(c, heading) && c.Amount is not null);
        if (turning.Count >= 2 && turning.TrueForAll(c => c.TurnSide is null || c.TurnSide == side) && turning.Sum(c => c.Amount!.Value) == whole)
        {
            foreach (Clause clause in turning)
            {
                clause.TurnSide = side;
            }

            _clauses.RemoveAt(0);
        }
    }

    private static bool IsFetching(string verb) => verb.Length > 3
        && verb[..4].ToLowerInvariant() is "brin" or "brou" or "take" or "draw" or "pull" or "retu" or "coll";
}
