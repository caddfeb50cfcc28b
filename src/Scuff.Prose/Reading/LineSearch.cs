using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>
/// Looks for the reading of a line's clauses: the detail of a figure before its name, the whole line repeated, remarks left out,
/// and the same thing said twice, each only where the plainer way does not come out even.
/// </summary>
internal sealed class LineSearch(ReaderState state, FigureComparison comparison)
{
    // Two readings nearer to each other than this are both meant as likely; a teacher would ask.
    private const double CloseCall = 0.13;

    /// <summary>The best reading over the places, a close second that dances otherwise, the clauses it dances, and the figures told with their
    /// detail.</summary>
    public (LineReading? Best, LineReading? Other, List<Clause> Clauses, List<(Clause Figure, int From, int To)> Figures) Solve(List<Clause> clauses,
        IReadOnlyList<LabelPlace> places)
    {
        LineSolver solver = new(state.Lexicon)
        {
            Before = state.Swung,
            // a pivot or an unwind turns from where the line before it left the feet, and so does "7-8 1/2 turn left, hold" after "5-6 step R forward, hold"
            Carried = (places.Count == 1 || clauses is [{ Head.Verb: ActionKind.Pivot or ActionKind.Unwind }, ..] or [{ IsTurnOnly: true }, ..])
                && state.LastAction is StepAction action
                ? new PlacedRow(null, action, "", Counts.Zero, -1, -1, null, false, false, false) : null,
        };
        List<(Clause, int, int)> figures = [];
        ClosesInTurn(clauses, null);
        if (clauses.Any(c => c.Detail.Count > 0))
        {
            List<Clause> detailed = [];
            foreach (Clause clause in clauses)
            {
                if (clause.Detail.Count == 0)
                {
                    detailed.Add(clause);
                    continue;
                }

                int? named = clause.Amount ?? (clause.Head is { NamesAmount: true, Figures: [{ Rows.Count: 2 } figure, ..] }
                    ? figure.TotalTurn.Amount.Floor : null);
                if (named is > 0 && clause.Detail.FindAll(d => d.HasTurnWord
                    || d.Amount is not null) is [{ Head: null, HasTurnWord: true, Amount: null, TurnTo: null, Dir: null, Feet.Count: < 2 } bare]
                    && (bare.IsTurnOnly || (clause.TurnSide ?? clause.DirSide) is not null))
                {
                    // "pivot half left (R forward, turn)", "paddle a quarter left: R forward and turn onto L": the name says how far
                    bare.Amount = named;
                    bare.TurnSide ??= clause.TurnSide ?? clause.DirSide;
                }

                if (clause.Head is { Figures: [{ TotalTurn.Sign: not 0 } turns, ..] }
                    && clause.Detail.FindAll(d => d.HasTurnWord || d.Amount is not null) is [{ IsTurnOnly: true, Amount: int told } said]
                    && told == turns.TotalTurn.Amount.Floor && clause.Detail[0].IsFeetOnly && clause.Detail.Count(d => d.IsFeetOnly) == turns.Rows.Count(r => !r.IsFinish)
                    && clause.Detail.TrueForAll(d => d.IsFeetOnly || ReferenceEquals(d, said) || d.Head?.Verb is not null))
                {
                    // "rolling vine left: L, R, L, a full turn, touch R": the turn that the name has
                    clause.Detail.Remove(said);
                }

                foreach (Clause turned in clause.Detail.Where(d => d is { Amount: not null, TurnSide: null, TurnTo: null }))
                {
                    // "jazz box 1/4 R: ... step R to side (turning 1/4)": the name says which way
                    bool sideIsWay = ClauseBuilder.IsTurnVerb(clause.Head) && clause is { FootFirst: false, Feet: [{ IsCertain: false }] };
                    turned.TurnSide = clause.TurnSide ?? (sideIsWay ? clause.Feet[0].Foot : null);
                }

                ClosesInTurn(clause.Detail, clause);
                FansOn(clause);

                if (clause is { IsFigure: true, Dir: { Direction: Direction.Forward or Direction.Back } onward }
                    && clause.Detail[0] is
                    {
                        Dir: null, Diagonal: false, Feet.Count: 1, Head: { Verb: ActionKind.Step }
                    or { Figures: [{ Rows.Count: 1 }, ..] }
                    } opening
                    && opening.Head.Verb is null or ActionKind.Step && !opening.BothFeet)
                {
                    // "waltz basic going forward: a big step on the right foot, then close ..."
                    opening.Dir = onward;
                    opening.DirText = clause.DirText;
                }

                if (clause.IsFigure && clause.Detail[0] is { Dir: null, Diagonal: false, Amount: null, BothFeet: false, Head.Verb: ActionKind.Rock } rocked
                    && (clause.Dir ?? WayOfRock(clause)) is Meaning rocks)
                {
                    // "right mambo to side (rocks, weight back on left, closes)": the name says where it rocks
                    rocked.Dir = rocks;
                    rocked.DirText = clause.Dir is null ? rocked.DirText : clause.DirText;
                    rocked.DirSide ??= clause.Dir is null ? null : clause.DirSide;
                    rocked.Diagonal = clause.Diagonal;
                }

                bool turnsFirst = clause is { Amount: not null, TurnSide: not null } && (clause.TurnsInto || clause.TurnFirst)
                    && !clause.Detail.Exists(d => d.Amount is not null || d.HasTurnWord);
                if (turnsFirst)
                {
                    // "quarter turn right into a rumba box: R side, ...": the turn is made before all that is told
                    Clause turn = new() { Amount = clause.Amount, TurnSide = clause.TurnSide, HasTurnWord = true, LinkAfter = Link.None };
                    turn.Cover(new TextSpan(clause.Start, 0));
                    detailed.Add(turn);
                }

                figures.Add((clause, detailed.Count, detailed.Count + clause.Detail.Count));
                detailed.AddRange(clause.Detail);
                if (!turnsFirst && clause.Amount is not null && !clause.Detail.Any(d => d.Amount is not null))
                {
                    // the turn stands with the name only: the figure says where it goes
                    figures.Clear();
                    break;
                }
            }

            if (figures.Count > 0)
            {
                (LineReading? best, LineReading? other) = Best(solver.Solve(detailed, places, state.Weight));
                List<Clause> once = detailed;
                bool saysTimes = once[^1] is { IsTurnOnly: true, TimesStated: true };
                foreach (List<Clause> repeated in LineRepeats.Of(once))
                {
                    (LineReading? again, LineReading? third) = Best(solver.Solve(repeated, places, state.Weight));
                    bool first = saysTimes && ReferenceEquals(detailed, once);
                    if (again is { Fits: true } && (first || best is not { Fits: true } || again.Cost < best.Cost))
                    {
                        (best, other, detailed) = (again, third, repeated);
                        figures = figures.ConvertAll(f => f.Item3 >= once.Count ? (f.Item1, f.Item2, repeated.Count) : f);
                    }
                }

                if (best is { Fits: true } && Best(solver.Solve(clauses, places, state.Weight)).Best is { Fits: true } named
                    && named.Rows.TrueForAll(r => r.Variant is null or { TurnAmountMissing: false, TurnDirectionMissing: false })
                    && named.DancesLike(best) && SamePlaces(named, best))
                {
                    // the detail says just what the name says: the name stays
                    return (named, null, clauses, []);
                }

                if (figures.Exists(f => f.Item1.DetailAfterDash)
                    && InsteadOfDetail(solver, clauses, places) is (LineReading listed, var listedOther, List<Clause> list)
                    && (best is not { Fits: true } || listed.Cost + 0.3 < best.Cost || !figures.TrueForAll(f => comparison.IsDetailOf(f, best))))
                {
                    return (listed, listedOther, list, []);
                }

                if (best is not { Fits: true } && figures is [(Clause told, _, _)] && ReferenceEquals(told, clauses[^1]) && clauses.Count > 1
                    && clauses.Take(clauses.Count - 1).All(c => c is { IsFigure: true, Detail.Count: 0 })
                    && Best(solver.Solve(clauses, places, state.Weight)).Best is { Fits: true } names
                    && Best(solver.Solve(told.Detail, places, state.Weight)) is ({ Fits: true, Cost: < 1.2 } all, var allOther) && names.SameFeet(all))
                {
                    // "sailor step, sailor 1/4 left: R behind L, L to side, R to side, L behind R ...": the steps of all the names before them
                    return (all with { SaidTwice = true }, allOther, told.Detail, []);
                }

                bool impossible = best is { Cost: > 2.5 };
                if (best is { Fits: true } && !(impossible && Best(solver.Solve(clauses, places, state.Weight)).Best is { Fits: true, Cost: < 1 }))
                {
                    return (best, other, detailed, figures);
                }

                if (best is { Fits: true })
                {
                    return (best, other, detailed, figures);
                }
            }

            figures.Clear();
        }

        (LineReading? plain, LineReading? second) = Best(solver.Solve(clauses, places, state.Weight));
        foreach (List<Clause> repeated in LineRepeats.Of(clauses))
        {
            (LineReading? again, LineReading? third) = Best(solver.Solve(repeated, places, state.Weight));
            if (again is not null && (plain is null || again.Cost < plain.Cost))
            {
                (plain, second, clauses) = (again, third, repeated);
            }
        }

        if (plain is not { Fits: true } && AsFirstSteps(clauses) is List<Clause> firsts)
        {
            (LineReading? spelled, LineReading? spelledOther) = Best(solver.Solve(firsts, places, state.Weight));
            if (spelled is { Fits: true, Cost: < 1.2 })
            {
                return (spelled, spelledOther, firsts, figures);
            }
        }

        foreach (List<Clause>? meant in plain is { Fits: true } ? default(ReadOnlySpan<List<Clause>?>)
            : [RocksAlone(clauses), WithoutToldSteps(clauses), WithoutToldFirst(clauses), WithoutToldLast(clauses)])
        {
            if (meant is not null && Best(solver.Solve(meant, places, state.Weight)) is ({ Fits: true, Cost: < 1.2 } told, LineReading or null) and var read)
            {
                return (told, read.Other, meant, figures);
            }
        }

        if (plain is { Fits: true, Cost: > 1.2 } && WithoutToldFirst(clauses) is List<Clause> begun
            && Best(solver.Solve(begun, places, state.Weight)) is ({ Fits: true } whole, var wholeOther) && whole.Cost < plain.Cost - 0.7)
        {
            // "1-4 weave, R over L": no foot crosses twice in a row
            return (whole, wholeOther, begun, figures);
        }

        if (plain is not { Fits: true } && places.Count == 2 && places[1].Place.IsWhole
            && clauses is [{ Head: null or { Verb: ActionKind.Step }, Feet.Count: 1, Size: > 0, Lasts: null, Times: 1, Amount: null } wide])
        {
            // "1-2 take a nice long step to the left with the left foot": it takes the counts of its line
            Clause slowly = wide.Copy(mirrored: false);
            slowly.Lasts = 2;
            (LineReading? stretched, LineReading? stretchedOther) = Best(solver.Solve([slowly], places, state.Weight));
            if (stretched is { Fits: true, Cost: < 1.2 })
            {
                return (stretched, stretchedOther, [slowly], figures);
            }
        }

        if (plain is not { Fits: true } && LiftedBeside(clauses) is List<Clause> lifted)
        {
            (LineReading? beside, LineReading? besideOther) = Best(solver.Solve(lifted, places, state.Weight));
            if (beside is { Fits: true, Cost: < 1.2 })
            {
                return (beside, besideOther, lifted, figures);
            }
        }

        if (plain is not { Fits: true } && clauses.Exists(c => c is { IsSlow: true, Feet.Count: > 0, IsFigure: false, Lasts: null }))
        {
            // "slow walks R, L" on four counts
            List<Clause> slow = [.. clauses.SelectMany(EachSlow)];
            (LineReading? slowly, LineReading? slowlyOther) = Best(solver.Solve(slow, places, state.Weight));
            if (slowly is { Fits: true, Cost: < 1.2 })
            {
                return (slowly, slowlyOther, slow, figures);
            }
        }

        if (plain is not { Fits: true } && clauses.Exists(c => c.DetailAfterDash)
            && InsteadOfDetail(solver, clauses, places) is (LineReading parted, var partedOther, List<Clause> parts))
        {
            return (parted, partedOther, parts, figures);
        }

        if (plain is not { Fits: true } && clauses.Count is > 1 and < 17
            && WithoutRemarks(solver, clauses, places) is (LineReading clear, var clearOther, List<Clause> kept))
        {
            return (clear, clearOther, kept, figures);
        }

        if (plain is not { Fits: true } && clauses.Count is > 1 and < 13)
        {
            // the same thing said twice: "R back, L together, R forward, which is a coaster step"
            for (int cut = 1; cut < clauses.Count; cut++)
            {
                (LineReading? first, LineReading? firstOther) = Best(solver.Solve(clauses.GetRange(0, cut), places, state.Weight));
                if (first is not { Fits: true, Cost: < 2 })
                {
                    continue;
                }

                (LineReading? rest, LineReading? restOther) = Best(solver.Solve(clauses.GetRange(cut, clauses.Count - cut), places, state.Weight));
                // "make a quarter turn left and shuffle to the right, R side, L close, R side"
                bool turnFirst = cut == 2 && clauses[0].IsTurnOnly && clauses[1].IsFigure && rest is { Turns: false } && first.Turns
                    && clauses.GetRange(cut, clauses.Count - cut).TrueForAll(c => !c.IsFigure);
                if (turnFirst && rest is { Fits: true, Cost: < 2 } && first.SameFeet(rest))
                {
                    return (first with { SaidTwice = true }, firstOther, clauses.GetRange(0, cut), figures);
                }

                bool nameFirst = cut == 1 && clauses[0].IsFigure;
                bool nameLast = cut == clauses.Count - 1 && clauses[^1].IsFigure;
                bool mayTurn = (nameFirst ? clauses[0] : clauses[^1]).Head is { Figures: var named }
                    && named.Any(f => f.Amounts.Count > 0 || f.TurnedForms.Count > 0);
                bool detailTurns = !mayTurn && rest is not null && (nameLast ? first.Turns && !rest.Turns : nameFirst && rest.Turns && !first.Turns);
                if (rest is { Fits: true, Cost: < 2 } && first.SameFeet(rest) && !detailTurns
                    && (nameFirst || nameLast || clauses.GetRange(cut, clauses.Count - cut).TrueForAll(c => c.IsFeetOnly || c.HasStyle
                    || c.Times > 1)))
                {
                    bool detailLast = cut < clauses.Count - cut;
                    return detailLast && !first.Turns || rest.Turns && !first.Turns
                        ? (rest with { SaidTwice = true }, restOther, clauses.GetRange(cut, clauses.Count - cut), figures)
                        : (first with { SaidTwice = true }, firstOther, clauses.GetRange(0, cut), figures);
                }
            }
        }

        return (plain, second, clauses, figures);
    }

    /// <summary>
    /// Whether the detail that stands with a move says what is danced for it. A detail may be passed over only where the name says the same.
    /// </summary>
    public bool AgreesWithDetail(LineReading best, int index, Clause clause)
    {
        List<PlacedRow> rows = best.Rows.FindAll(r => r.Clause == index && !r.IsWith);
        int first = best.Rows.FindIndex(r => r.Clause == index && !r.IsWith);
        Weight weight = best.Rows.Take(Math.Max(0, first)).Where(r => !r.IsWith).Aggregate(state.Weight, (w, r) => r.Action.WeightAfter(w));
        List<PlacedRow> feet = rows.FindAll(r => r.Action.Foot != ActingFoot.None);
        if (feet.Exists(r => r.Action.Foot == ActingFoot.Both))
        {
            // "swivet: R toes right and L heel left": parts of feet, not steps; but the way is the same
            Foot? named = clause.Feet.Count > 0 ? clause.Feet[0].Foot : clause.DirSide;
            return named is null || clause.Detail.Find(d => d.DirSide is not null && d.Part.Length == 0)?.DirSide is not Foot told0 || told0 == named;
        }

        if (ClauseBuilder.IsFan(clause.Head) && clause.Detail.Count(d => d.HasContent && !d.IsAmp) > feet.Count)
        {
            // "1-2 R toe fan: out, in, out, in": the counts hold half of what is told
            return false;
        }

        foreach (int count in (ReadOnlySpan<int>)[feet.Count, rows.Count])
        {
            LabelPlace[] places = [.. Enumerable.Range(0, count).Select(i => new LabelPlace("", i + 1, Counts.FromWhole(i), i > 0))];
            List<PlacedRow>? told = new LineSolver(state.Lexicon).Solve(clause.Detail, places, weight).FirstOrDefault()?.Rows.FindAll(r => !r.IsWith
                && r.Action.Foot != ActingFoot.None);
            bool even = told?.Count == feet.Count;
            if (told is null || Holds(told, feet, places: true) || Holds(feet, told, places: even || (feet.Count == 1 && clause.Head?.Verb is ActionKind.Step)))
            {
                // the one says all that the other says, and perhaps more
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// "Coaster: R, L, R", "vine right: R, L, R, kick L": steps that are told by their feet alone go where those of the figure go, as far as the feet are its
    /// own.
    /// </summary>
    public LineReading WithPlaces(LineReading best, List<(Clause Figure, int From, int To)> figures)
    {
        List<PlacedRow> rows = [.. best.Rows];
        foreach ((Clause figure, int from, int to) in figures)
        {
            List<PlacedRow> told = rows.FindAll(r => r.Clause >= from && r.Clause < to && !r.IsWith && r.Action.Foot != ActingFoot.None);
            if (!figure.IsFigure || told.Count < 2 || !IsUnplaced(told[0]) || !told.TrueForAll(r => r.Action.Turn.Sign == 0))
            {
                continue;
            }

            Clause bare = figure.Copy(mirrored: false);
            bare.Detail = [];
            LabelPlace[] places = [.. told.Select((r, i) => new LabelPlace(r.Label, i + 1, r.Place, i > 0))];
            Weight weight = rows.TakeWhile(r => !ReferenceEquals(r, told[0])).Where(r => !r.IsWith).Aggregate(state.Weight, (w, r) => r.Action.WeightAfter(w));
            if (new LineSolver(state.Lexicon).Solve([bare], places, weight).FirstOrDefault() is not { Fits: true } named)
            {
                continue;
            }

            List<PlacedRow> own = named.Rows.FindAll(r => !r.IsWith && r.Action.Foot != ActingFoot.None);
            for (int i = 0; i < Math.Min(told.Count, own.Count) && IsUnplaced(told[i]) && Steps(own[i], told[i]); i++)
            {
                rows[rows.FindIndex(r => ReferenceEquals(r, told[i]))] = told[i] with { Action = own[i].Action };
            }
        }

        return best with { Rows = rows };

        static bool IsUnplaced(PlacedRow row) => row.Action is { Kind: ActionKind.Step, Direction: Direction.Unstated, Effect: WeightEffect.Takes };

        static bool Steps(PlacedRow own, PlacedRow told)
            => own.Action is { Kind: ActionKind.Step, Effect: WeightEffect.Takes } && own.Action.Foot == told.Action.Foot;
    }

    /// <summary>
    /// "Monterey 1/2 R (point R, turn, point L, together)": between the points of two feet the one that pointed first closes in the turn, or the other could
    /// not point. The turn is made a step of that foot.
    /// </summary>
    /// <param name="clauses">The clauses, changed in place.</param>
    /// <param name="owner">The figure whose detail they are, or null.</param>
    private static void ClosesInTurn(List<Clause> clauses, Clause? owner)
    {
        bool monterey = owner is { IsFigure: true } && owner.Head!.Figures[0].Id.StartsWith("monterey", StringComparison.Ordinal);
        Foot? named = monterey ? owner!.TurnSide ?? (owner.Feet.Count == 1 ? owner.Feet[0].Foot : null) : null;
        for (int i = 0; i + 2 < clauses.Count; i++)
        {
            if (!PointsOut(clauses[i]) || !PointsOut(clauses[i + 2]) || clauses[i + 1] is not
                {
                    IsTurnOnly: true, Amount: not null, WeightNote: null, Times: 1, SaysEach: false, IsWith: false, Link: Link.Hard, LinkAfter: Link.Hard
                } turn)
            {
                continue;
            }

            Foot? first = clauses[i].Feet.Count == 1 ? clauses[i].Feet[0].Foot : named;
            Foot? second = clauses[i + 2].Feet.Count == 1 ? clauses[i + 2].Feet[0].Foot : monterey ? first?.Other() : null;
            if (first is not Foot closing || second != closing.Other() || (turn.TurnSide ?? named) is not Foot way || (way != closing && !monterey))
            {
                continue;
            }

            turn.TurnSide = way;
            turn.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Step, Special = "step" };
            turn.HeadText = "step";
            turn.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Together };
            turn.Feet.Add(new FootWord(closing, true, false));
            if (clauses[i].Feet.Count == 0)
            {
                clauses[i].Feet.Add(new FootWord(closing, true, false));
            }

            if (clauses[i + 2].Feet.Count == 0)
            {
                clauses[i + 2].Feet.Add(new FootWord(closing.Other(), true, false));
            }
        }
    }

    /// <summary>"R toe fan: out, in, out, in", "heel splits (out, in)": what goes there is said once for all.</summary>
    private static void FansOn(Clause owner)
    {
        if (!ClauseBuilder.IsFan(owner.Head) || owner.Feet.Count > 1)
        {
            return;
        }

        ActionKind fan = owner.Head!.Figures[0].Rows[0].Action.Kind;
        foreach (Clause way in owner.Detail.TakeWhile((d, i) => d is
        {
            Head: null, Part.Length: 0, Amount: null, HasTurnWord: false, IsAmp: false, IsRepeat: false, BothFeet: false,
            Dir.Direction: Direction.Out or Direction.In or Direction.Home or Direction.Centre or Direction.Together
        }
            && (d.Feet.Count == 0 || (i == 0 && d.Feet.Count + owner.Feet.Count == 1))))
        {
            way.Head = new Meaning(TermKind.Move) { Verb = fan };
            way.Feet.AddRange(way.Feet.Count == 0 ? owner.Feet.Count > 0 ? owner.Feet : owner.Detail[0].Feet : []);
            way.Dir = way.Dir! with { Direction = way.Dir.Direction is Direction.Out ? Direction.Out : Direction.In };
        }
    }

    /// <summary>Whether a foot points or touches to its side.</summary>
    private static bool PointsOut(Clause clause) => clause is
    {
        Feet.Count: < 2, Amount: null, HasTurnWord: false, Times: 1, Detail.Count: 0, WeightNote: null or TermKind.WeightNone,
        Dir: null or { Direction: Direction.Side or Direction.Out }
    }
        && (clause.Head?.Verb is ActionKind.Point || (clause.Head?.Verb is ActionKind.Touch or ActionKind.Tap && clause.Dir is not null)
            || clause.Head is { Verb: null, Figures: [{ Rows: [{ Action: { Kind: ActionKind.Point or ActionKind.Touch, Direction: Direction.Side } }] }, ..] });

    /// <summary>
    /// "Vine R, L behind, R side, touch L": the name stands for its first step, and the others follow with the feet of the figure. The clauses with the first
    /// steps in the place of such names; null where there is none.
    /// </summary>
    private static List<Clause>? AsFirstSteps(List<Clause> clauses)
    {
        List<Clause>? made = null;
        for (int i = 0; i < clauses.Count; i++)
        {
            if (clauses[i] is not { IsFigure: true, Feet: [{ } lead], Amount: null, Times: 1, Detail.Count: 0, TurnSide: null } named
                || FirstOf(named, lead.Foot, clauses, i) is not Direction way)
            {
                continue;
            }

            made ??= [.. clauses];
            Clause first = named.Copy(mirrored: false);
            first.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Step, Special = "step" };
            first.HeadText = "step";
            first.Dir = new Meaning(TermKind.Dir) { Direction = way };
            first.DirSide = null;
            made[i] = first;
        }

        return made;
    }

    /// <summary>
    /// Where the foot goes that stands with a figure's name, when the other steps of the figure follow the name: where it is said ("weave R over L, L side"),
    /// and else where the figure has it; null where what follows is not the figure.
    /// </summary>
    private static Direction? FirstOf(Clause named, Foot lead, List<Clause> clauses, int at)
    {
        Direction? told = named.Dir?.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Forward or Direction.Back
            ? named.Dir.Direction : null;
        Direction? usual = null;
        foreach (StepDefinition figure in named.Head!.Figures.Where(f => f.Rows.Count > 2 && f.TotalTurn.Sign == 0))
        {
            // "weave in front R": named by the way it goes, and told by the foot that begins
            Foot side = figure.Rows[0].For(lead).Foot.ToFoot() == lead ? lead : lead.Other();
            List<PatternRow> rows = [.. figure.Rows.Where(r => !r.IsFinish)];
            bool follow = rows.Count > 2 && at + rows.Count <= clauses.Count && Enumerable.Range(1, rows.Count - 1).All(n =>
                clauses[at + n] is { Link: Link.Hard, IsFigure: false, Feet: [{ } foot], Amount: null, IsAmp: false }
                    && rows[n].For(side).Foot.ToFoot() == foot.Foot);
            if (!follow || rows[0].For(side).Foot.ToFoot() != lead || rows[0].Action.Kind != ActionKind.Step)
            {
                continue;
            }

            bool ways = Enumerable.Range(1, rows.Count - 1).All(n => clauses[at + n].Dir is not { } way
                || FigureComparison.Family(way.Direction) == FigureComparison.Family(rows[n].Action.Direction));
            if (ways && (told is null || FigureComparison.Family(told.Value) == FigureComparison.Family(rows[0].Action.Direction)))
            {
                return told ?? rows[0].Action.Direction;
            }

            usual ??= told ?? (side == lead ? rows[0].Action.Direction : null);
        }

        return usual;
    }

    /// <summary>
    /// "5 rock step R forward" over "6 recover L": the name of both for the rock alone. The clauses with rocks, or null where there is no such name.
    /// </summary>
    private static List<Clause>? RocksAlone(List<Clause> clauses)
    {
        List<Clause>? made = null;
        for (int i = 0; i < clauses.Count; i++)
        {
            if (clauses[i] is
                {
                    IsFigure: true, Detail.Count: 0, Times: 1, Head.Figures: [
                    {
                        Rows: [{ Action.Kind: ActionKind.Rock },
                        { Action.Kind: ActionKind.Recover }]
                    }, ..]
                })
            {
                made ??= [.. clauses];
                made[i] = clauses[i].Copy(mirrored: false);
                made[i].Head = new Meaning(TermKind.Move) { Verb = ActionKind.Rock, Special = "rock" };
                made[i].HeadText = "rock";
                Direction way = clauses[i].Head!.Figures[0].Rows[0].Action.Direction;
                made[i].Dir ??= way is Direction.Unstated ? null : new Meaning(TermKind.Dir) { Direction = way };
            }
        }

        return made;
    }

    /// <summary>
    /// "Waltz box, left forward, right back": steps of the figure said once more after its name, each where the figure has it. The clauses without them, the
    /// figure with the first of their feet; null where there are none.
    /// </summary>
    private static List<Clause>? WithoutToldSteps(List<Clause> clauses)
    {
        for (int i = 0; i + 2 < clauses.Count; i++)
        {
            if (clauses[i] is not { IsFigure: true, Amount: null, Times: 1, Detail.Count: 0, Feet.Count: < 2, IsRepeat: false } named
                || named.Head!.Figures[0] is not { Rows.Count: > 3 } figure || clauses[i + 1] is not { Feet: [{ } first] })
            {
                continue;
            }

            Foot lead = named.Feet.Count > 0 ? named.Feet[0].Foot : first.Foot;
            int row = 0;
            int end = i + 1;
            while (end < clauses.Count && clauses[end] is { Head: null, Feet: [{ } foot], Dir: { } way, Amount: null, IsAmp: false, Detail.Count: 0, Times: 1 })
            {
                int found = Enumerable.Range(row, figure.Rows.Count - row).FirstOrDefault(r => figure.Rows[r].For(lead) is var danced
                    && danced.Foot.ToFoot() == foot.Foot && FigureComparison.Family(danced.Direction) == FigureComparison.Family(way.Direction), -1);
                if (found < 0)
                {
                    break;
                }

                row = found + 1;
                end++;
            }

            if (end - i - 1 is >= 2 and int told && told < figure.Rows.Count - 1)
            {
                Clause whole = named.Copy(mirrored: false);
                if (whole.Feet.Count == 0)
                {
                    whole.Feet.Add(first);
                }

                whole.Cover(clauses[end - 1].Span);
                return [.. clauses.Take(i), whole, .. clauses.Skip(end)];
            }
        }

        return null;
    }

    /// <summary>
    /// "Cross shuffle, R over L", "sailor step, R behind L": how the figure begins, said once more after its name. The clauses without it, the figure with its
    /// foot; null where there is none.
    /// </summary>
    private static List<Clause>? WithoutToldFirst(List<Clause> clauses)
    {
        for (int i = 0; i + 1 < clauses.Count; i++)
        {
            if (clauses[i] is not { IsFigure: true, Times: 1, Detail.Count: 0, Feet.Count: < 2, IsRepeat: false } named
                || clauses[i + 1] is not
                {
                    Head: null or { Verb: ActionKind.Step }, Feet: [{ } foot], Dir: { } way, Amount: null, HasTurnWord: false, IsAmp: false, Detail.Count: 0,
                    Times: 1, WeightNote: null, Part.Length: 0, Link: Link.Hard or Link.None
                } first
                || (i + 2 < clauses.Count && clauses[i + 2].Link is not Link.Hard)
                || named.Head!.Figures.FirstOrDefault(f => Begins(f, foot.Foot, way.Direction)) is not StepDefinition figure)
            {
                continue;
            }

            Foot side = figure.Rows[0].For(foot.Foot).Foot.ToFoot() == foot.Foot ? foot.Foot : foot.Foot.Other();
            if ((named.Feet.Count > 0 && named.Feet[0].Foot != side && named.Feet[0].Foot != foot.Foot) || (named.DirSide is Foot goes && goes != side))
            {
                continue;
            }

            Clause whole = named.Copy(mirrored: false);
            whole.Head = named.Head with { Figures = [figure] };
            whole.Feet.Clear();
            whole.Feet.Add(new FootWord(side, true, false));
            whole.Cover(first.Span);
            return [.. clauses.Take(i), whole, .. clauses.Skip(i + 2)];
        }

        return null;
    }

    /// <summary>"Mambo forward R, bringing R next to L": how the figure ends, said once more after its name. The clauses without it; null where there is none.</summary>
    private static List<Clause>? WithoutToldLast(List<Clause> clauses)
    {
        for (int i = 0; i + 1 < clauses.Count; i++)
        {
            if (clauses[i] is { IsFigure: true, Times: 1, Detail.Count: 0, Feet.Count: < 2, IsRepeat: false, Head.Figures: [{ Rows.Count: > 2 } figure, ..] } named
                && clauses[i + 1] is
                {
                    Head: null or { Verb: ActionKind.Step }, Feet: [{ } foot], Dir: { } way, Amount: null, HasTurnWord: false, IsAmp: false, Detail.Count: 0,
                    Times: 1, WeightNote: null or TermKind.WeightTakes, Part.Length: 0
                } last
                && (named.Feet.Count > 0 ? named.Feet[0].Foot : named.DirSide) is Foot lead
                && figure.Rows[^1].For(lead) is { Effect: WeightEffect.Takes } ends && ends.Foot.ToFoot() == foot.Foot
                && FigureComparison.Family(ends.Direction) == FigureComparison.Family(way.Direction))
            {
                Clause whole = named.Copy(mirrored: false);
                whole.Cover(last.Span);
                return [.. clauses.Take(i), whole, .. clauses.Skip(i + 2)];
            }
        }

        return null;
    }

    /// <summary>Whether a figure of several steps begins with that foot going there.</summary>
    private static bool Begins(StepDefinition figure, Foot foot, Direction way) => figure.Rows.Count > 2
        && figure.Rows[0] is { Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes } action } row && row.For(foot).Foot.ToFoot() is not null
        && FigureComparison.Family(action.Direction) == FigureComparison.Family(way);

    /// <summary>"Hitch L and scoot forward on R" on one count: the knee is up while the other foot scoots. Null where there is no such pair.</summary>
    private static List<Clause>? LiftedBeside(List<Clause> clauses)
    {
        List<Clause>? made = null;
        for (int i = 0; i + 1 < clauses.Count; i++)
        {
            if (clauses[i] is { Head.Verb: ActionKind.Hitch or ActionKind.Hook, Feet: [{ } lifted], Amount: null, Times: 1 } lift
                && clauses[i + 1] is { Head.Verb: ActionKind.Scoot or ActionKind.Hop, Link: Link.Soft, Amount: null } scoot
                && (scoot.Feet.Count == 0 || (scoot.Feet.Count == 1 && scoot.Feet[0].Foot != lifted.Foot)))
            {
                made ??= [.. clauses];
                made[i] = scoot.Copy(mirrored: false);
                made[i].Link = lift.Link;
                made[i].LinkAfter = Link.Soft;
                made[i + 1] = lift.Copy(mirrored: false);
                made[i + 1].Link = Link.Soft;
                made[i + 1].IsWith = true;
                made[i + 1].LinkAfter = scoot.LinkAfter;
            }
            else if (clauses[i] is { Head: { } jumps, Feet.Count: < 2, Amount: null, Times: 1, IsWith: false } hop
                && KindOf(jumps) is ActionKind.Scoot or ActionKind.Hop or ActionKind.Jump or ActionKind.Leap
                && (hop.Feet.Count == 1 ? hop.Feet[0].Foot : hop.WeightFoot) is Foot hopped
                && clauses[i + 1] is { Head: { } up, Feet: [{ } other], Amount: null, Times: 1, IsWith: false, IsAmp: false } raised
                && KindOf(up) is ActionKind.Hitch or ActionKind.Hook or ActionKind.Flick or ActionKind.Kick
                && other.Foot != hopped && (up.IsIng || raised.HeadText.EndsWith("ing", StringComparison.OrdinalIgnoreCase) || raised.Link == Link.Soft))
            {
                // "hop on R hitching L", "hop on R and hitch L"
                made ??= [.. clauses];
                made[i + 1] = raised.Copy(mirrored: false);
                made[i + 1].Link = Link.Soft;
                made[i + 1].IsWith = true;
                made[i + 1].SameTime = true;
            }
        }

        return made;

        static ActionKind? KindOf(Meaning move) => move.Verb ?? (move.Figures is [{ Rows: [{ } once] }, ..] ? once.Action.Kind : null);
    }

    private static IEnumerable<Clause> EachSlow(Clause clause)
    {
        if (clause is not { IsSlow: true, Feet.Count: > 0, IsFigure: false, Lasts: null })
        {
            yield return clause;
            yield break;
        }

        foreach (FootWord foot in clause.Feet)
        {
            Clause one = clause.Copy(mirrored: false);
            one.Feet.Clear();
            one.Feet.Add(foot);
            one.Lasts = 2;
            yield return one;
        }
    }

    /// <summary>Whether the second list has the actions of the first in their order.</summary>
    private static bool Holds(List<PlacedRow> some, List<PlacedRow> all, bool places)
    {
        int found = 0;
        foreach (PlacedRow row in all)
        {
            if (found < some.Count && some[found].Action.Foot == row.Action.Foot && (!places || SamePlace(some[found].Action, row.Action)))
            {
                found++;
            }
        }

        return found == some.Count;
    }

    private static bool SamePlace(StepAction a, StepAction b)
        => a.Direction == Direction.Unstated || b.Direction == Direction.Unstated || a.Turn.Sign != 0 || b.Turn.Sign != 0
            || FigureComparison.Family(a.Direction) == FigureComparison.Family(b.Direction);

    /// <summary>"Heel strut R - L back - R out": the dash parts moves, and what follows the figure is no detail of it.</summary>
    private (LineReading Best, LineReading? Other, List<Clause> Clauses)? InsteadOfDetail(LineSolver solver, List<Clause> clauses,
        IReadOnlyList<LabelPlace> places)
    {
        List<Clause> list = [];
        foreach (Clause clause in clauses)
        {
            if (!clause.DetailAfterDash)
            {
                list.Add(clause);
                continue;
            }

            Clause figure = clause.Copy(mirrored: false);
            figure.Detail = [];
            list.Add(figure);
            list.AddRange(clause.Detail);
        }

        (LineReading? best, LineReading? other) = Best(solver.Solve(list, places, state.Weight));
        return best is { Fits: true, Cost: < 1.2 } ? (best, other, list) : null;
    }

    /// <summary>
    /// When there are more moves than counts: the reading without one or two remarks ("and put your weight on it", "feet apart").
    /// A remark on the weight must agree with where the weight is then.
    /// </summary>
    private (LineReading Best, LineReading? Other, List<Clause> Clauses)? WithoutRemarks(LineSolver solver, List<Clause> clauses,
        IReadOnlyList<LabelPlace> places)
    {
        List<int> weak = Enumerable.Range(0, clauses.Count).Where(i => clauses[i].IsWeak).ToList();
        (LineReading Best, LineReading? Other, List<Clause> Clauses)? found = null;
        int tries = 0;
        for (int size = 1; size <= 3 && found is null; size++)
        {
            foreach (List<int> dropped in Choose(weak, size))
            {
                if (++tries > 24)
                {
                    return found;
                }

                List<Clause> kept = [];
                bool agrees = true;
                for (int i = 0; i < clauses.Count; i++)
                {
                    if (!dropped.Contains(i))
                    {
                        kept.Add(clauses[i]);
                        continue;
                    }

                    Clause remark = clauses[i];
                    if (remark.Head?.Verb is ActionKind.Shift or ActionKind.Recover && remark.Feet.Count > 0 && kept.Count > 0)
                    {
                        // the weight is then on that foot: the move before must bring it there, not to the other
                        agrees &= kept[^1] is not { Head.Verb: ActionKind.Rock, Feet.Count: 1 } || kept[^1].Feet[0].Foot == remark.Feet[^1].Foot;
                        Clause owner = kept[^1].Copy(mirrored: false);
                        owner.WeightNote ??= TermKind.WeightOn;
                        owner.WeightFoot ??= remark.Feet[^1].Foot;
                        kept[^1] = owner;
                    }

                    if (remark.Head?.Verb is ActionKind.Shift or ActionKind.Recover && remark.Feet.Count == 0 && kept.Count > 0)
                    {
                        Clause owner = kept[^1].Copy(mirrored: false);
                        owner.WeightNote ??= TermKind.WeightTakes;
                        kept[^1] = owner;
                    }

                    if (remark is { WeightNote: TermKind.WeightOn, WeightFoot: Foot noted } && kept.Count > 0 && kept[^1].WeightNote is null)
                    {
                        // "swivet left, centre, weight on left"
                        Clause owner = kept[^1].Copy(mirrored: false);
                        owner.WeightNote = TermKind.WeightOn;
                        owner.WeightFoot = noted;
                        kept[^1] = owner;
                    }

                    if (remark is { Head: null, Feet.Count: 0, BothFeet: false, HasStyle: false, Part.Length: 0, HasTurnWord: false, Dir: { } way }
                        && kept.Count > 0
                        && way.Direction is Direction.Forward or Direction.Back or Direction.InPlace && !kept[^1].HasStyle)
                    {
                        // "walk right then left, backwards": where the moves before go; another way than theirs is no remark
                        Clause owner = kept[^1].Copy(mirrored: false);
                        bool goesOn = owner is { Dir: null, Head: { Special: "walk" or "run" } or { Verb: null, Figures.Count: > 0 } };
                        agrees &= way.Direction is Direction.InPlace || owner.Dir?.Direction is not (Direction.Forward or Direction.Back)
                            || FigureComparison.Family(owner.Dir.Direction) == FigureComparison.Family(way.Direction);
                        agrees &= goesOn || owner.Dir is null || remark.Link is not Link.Hard
                            || !remark.DirText.EndsWith("wards", StringComparison.OrdinalIgnoreCase)
                            || FigureComparison.Family(owner.Dir.Direction) == FigureComparison.Family(way.Direction);
                        if (goesOn)
                        {
                            owner.Dir = way;
                            owner.DirText = remark.DirText;
                            kept[^1] = owner;
                        }
                    }

                    // "both heels swivel right and back to centre": the way back is danced, and wants a count
                    agrees &= remark is not { Head: null, Feet.Count: 0, Dir.Direction: Direction.Centre or Direction.Home } || kept.Count == 0
                        || kept[^1].Head?.Verb is not (ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Swivel or ActionKind.Twist
                            or ActionKind.FanToe or ActionKind.FanHeel or ActionKind.SplitHeels or ActionKind.SplitToes);

                    // "R toe fan out in out in": every way of a toe that fans is danced, as are those of heels and toes that part
                    agrees &= remark is not { Head: null, Feet.Count: 0, Dir.Direction: Direction.In or Direction.Out } || kept.Count == 0
                        || kept.FindLast(c => !IsWayOut(c)) is not Clause parting || !(ClauseBuilder.PartsOut(parting) || ClauseBuilder.IsFan(parting.Head));
                    agrees &= remark.Unknown.Count == 0;

                    // "L heel, together", "recover R, close L": after a gesture or a recover a foot that closes is danced
                    agrees &= remark is not { Head: null, Dir.Direction: Direction.Together, Feet.Count: < 2, BothFeet: false } || kept.Count == 0
                        || !(kept[^1].Head?.Verb is ActionKind.Recover ? remark.Feet.Count == 1 : IsGesture(kept[^1]) && remark.Feet.Count == 0);
                }

                (LineReading? best, LineReading? other) = Best(solver.Solve(kept, places, state.Weight));
                if (agrees && best is { Fits: true, Cost: < 1.5 } && (found is null || best.Cost + 0.5 < found.Value.Best.Cost - 0.001))
                {
                    found = (best with { Cost = best.Cost + 0.5 }, other, kept);
                }
            }
        }

        return found;
    }

    /// <summary>Whether it is a bare "out" or "in", which goes on with the move before.</summary>
    private static bool IsWayOut(Clause clause) => clause is { Head: null, Feet.Count: 0, Part.Length: 0, Dir.Direction: Direction.In or Direction.Out };

    private static bool IsGesture(Clause clause) => clause.Head?.Verb is ActionKind.Dig or ActionKind.Touch or ActionKind.Point or ActionKind.Tap
        or ActionKind.Kick || clause is { Head: null, Part: "heel" or "toe", Feet.Count: 1 }
        || clause.Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Dig or ActionKind.Touch or ActionKind.Point }] }, ..] };

    private static IEnumerable<List<int>> Choose(List<int> items, int size, int from = 0)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (int i = from; i < items.Count; i++)
        {
            foreach (List<int> rest in Choose(items, size - 1, i + 1))
            {
                yield return [items[i], .. rest];
            }
        }
    }

    private static (LineReading? Best, LineReading? Other) Best(List<LineReading> readings)
    {
        if (readings.Count == 0)
        {
            return (null, null);
        }

        LineReading best = readings[0];
        foreach (LineReading other in readings.Skip(1))
        {
            if (other.Cost > best.Cost + CloseCall || !other.Fits)
            {
                break;
            }

            if (!other.DancesLike(best))
            {
                return (best, other);
            }
        }

        return (best, null);
    }

    // "cross point: cross R over L, kick L to side" is no point
    private static bool SameGesture(ActionKind a, ActionKind b) => Gesture(a) is not int first || Gesture(b) is not int second || first == second;

    private static int? Gesture(ActionKind kind) => kind switch
    {
        ActionKind.Kick or ActionKind.Flick => 1,
        ActionKind.Hitch => 2,
        ActionKind.Hook => 3,
        ActionKind.Scuff or ActionKind.Brush => 4,
        ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig => 5,
        _ => null,
    };

    private static bool SamePlaces(LineReading name, LineReading detail)
    {
        List<StepAction> a = [.. name.Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None).Select(r => r.Action)];
        List<StepAction> b = [.. detail.Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None).Select(r => r.Action)];
        return a.Zip(b).All(p => SameGesture(p.First.Kind, p.Second.Kind)) && a.Zip(b).All(p => p.Second.Direction == Direction.Unstated
            || FigureComparison.Family(p.First.Direction) == FigureComparison.Family(p.Second.Direction));
    }

    /// <summary>Where the rock goes that a figure begins with by its name alone ("side mambo", "back rock"), or null where its forms differ.</summary>
    private static Meaning? WayOfRock(Clause clause)
    {
        List<Direction> ways = [.. clause.Head!.Figures.Where(f => f.Rows[0].Action.Kind is ActionKind.Rock)
            .Select(f => f.Rows[0].Action.Direction).Distinct()];
        return ways is [var only] && only is not Direction.Unstated ? new Meaning(TermKind.Dir) { Direction = only } : null;
    }
}
