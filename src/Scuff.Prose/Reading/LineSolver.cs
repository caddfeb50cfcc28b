using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>
/// Shares the counts of a line out to its moves. Every way the words can be meant is tried in order of cost with a bounded
/// beam; the cheapest that comes out even wins, and a close second that dances differently makes a question.
/// </summary>
internal sealed class LineSolver(Lexicon lexicon, bool isWaltz = false)
{
    private const int BeamWidth = 48;

    // A line of more moves than this is no line of a sheet; the rest is kept as unknown words by the caller.
    private const int MaximumClauses = 48;

    private readonly VariantMaker _maker = new(lexicon, isWaltz);

    private sealed record State(PlacedRow? Last, int Label, Weight Weight, double Cost, Ratio? PendingTurn, bool PendingHard, int Overflow, int Actions, int Moves);

    /// <summary>The readings of the clauses over the places, best first; empty when no clause could be read.</summary>
    public List<LineReading> Solve(List<Clause> clauses, IReadOnlyList<LabelPlace> places, Weight weight)
    {
        List<State> beam = [new State(null, 0, weight, 0, null, false, 0, 0, 0)];
        int count = Math.Min(clauses.Count, MaximumClauses);
        for (int i = 0; i < count; i++)
        {
            List<State> next = [];
            foreach (State state in beam)
            {
                Extend(next, state, clauses, i, places);
            }

            if (next.Count == 0)
            {
                // a clause that means nothing by itself is passed over; the caller asks about it
                continue;
            }

            beam = Prune(next);
        }

        List<LineReading> readings = [];
        foreach (State state in beam)
        {
            State done = state;
            if (done.PendingTurn is Ratio turn)
            {
                done = AttachBack(done, turn, 0.1) ?? done;
            }

            int left = places.Count - done.Label;
            bool fits = left == 0 && done.Overflow == 0;
            double cost = done.Cost + (fits ? 0 : 10 + Math.Abs(left) + done.Overflow);
            readings.Add(new LineReading(Unchain(done.Last), cost, fits, done.Actions, done.Weight));
        }

        readings.Sort((a, b) => a.Cost.CompareTo(b.Cost));
        return readings;
    }

    private static List<PlacedRow> Unchain(PlacedRow? last)
    {
        List<PlacedRow> rows = [];
        for (PlacedRow? row = last; row is not null; row = row.Previous)
        {
            rows.Add(row);
        }

        rows.Reverse();
        return rows;
    }

    private static List<State> Prune(List<State> states)
    {
        states.Sort((a, b) => a.Cost.CompareTo(b.Cost));
        if (states.Count <= BeamWidth)
        {
            return states;
        }

        return states.GetRange(0, BeamWidth);
    }

    private void Extend(List<State> next, State state, List<Clause> clauses, int index, IReadOnlyList<LabelPlace> places)
    {
        Clause clause = clauses[index];
        if (clause.IsAmp)
        {
            ExtendAmp(next, state, clauses, index, places);
            return;
        }

        if (clause.IsTurnOnly)
        {
            ExtendTurn(next, state, clauses, index, places);
            return;
        }

        if (clause.SaysFinish)
        {
            Finish(next, state, clause);
        }

        if (clause.Link is Link.Soft && !clause.IsWith && StepBetween(state, clause, places) is Variant between)
        {
            // "R heel and L heel" on 1&2: the and is danced
            List<State> stepped = [];
            Place(stepped, state, between, Math.Max(0, index - 1), places);
            foreach (State after in stepped)
            {
                foreach (Variant variant in _maker.Make(clause, clauses[Math.Max(0, index - 1)], index + 1 < clauses.Count ? clauses[index + 1] : null, new Situation(after.Weight, after.Last)))
                {
                    if (!variant.Accompanies && variant.Rows.Count > 0 && variant.Beside is null)
                    {
                        Place(next, after, variant, index, places);
                    }
                }
            }
        }

        Clause? previous = index > 0 ? clauses[index - 1] : null;
        if (previous is { IsAmp: true })
        {
            previous = index > 1 ? clauses[index - 2] : null;
        }

        foreach (Variant variant in _maker.Make(clause, previous, index + 1 < clauses.Count ? clauses[index + 1] : null, new Situation(state.Weight, state.Last)))
        {
            if (variant.Accompanies)
            {
                Accompany(next, state, variant, index);
                continue;
            }

            if (variant.Rows.Count == 0)
            {
                // a remark: nothing of its own is danced
                next.Add(state with { Cost = state.Cost + variant.Cost });
                continue;
            }

            if (variant.Beside is VariantRow beside)
            {
                if (state.Last is { } on)
                {
                    PlacedRow riding = new(on, beside.Action, on.Label, on.Place, index, state.Moves, variant, true, true, true) { LastLabel = on.LastLabel };
                    Place(next, state with { Last = riding }, variant, index, places);
                }

                continue;
            }

            variant.Lasts = clause.Lasts;
            if (clause is { WeightNote: TermKind.WeightOn, WeightFoot: Foot ends } && variant.Rows.Aggregate(state.Weight, (w, r) => r.Action.WeightAfter(w)) == ends.Other().ToWeight())
            {
                // the words say that it ends on the other foot
                variant.Cost += 0.5;
            }

            Place(next, state, variant, index, places);
        }
    }

    /// <summary>"Coaster step, finishing with a cross": the last action of the figure, danced as said.</summary>
    private static void Finish(List<State> next, State state, Clause clause)
    {
        bool says = clause is { Amount: null, HasTurnWord: false, Feet.Count: < 2, Times: 1 } && (clause.Dir is not null || clause.Head?.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Brush or ActionKind.Scuff or ActionKind.Hitch or ActionKind.Kick or ActionKind.Flick);
        if (!says || state.Last is not { IsWith: false, Variant.Definition.Rows.Count: > 2 } last || last.Action.Foot.ToFoot() is not Foot foot || (clause.Feet.Count == 1 && clause.Feet[0].Foot != foot && !clause.Feet[0].MayBeReference))
        {
            return;
        }

        StepAction action = last.Action with { Direction = clause.Dir?.Direction ?? Direction.Together };
        if (clause.Head?.Verb is ActionKind gesture and not ActionKind.Step)
        {
            action = action with { Kind = gesture, Effect = WeightEffect.Keeps, Contact = Contact.Ball };
        }

        PlacedRow changed = last with { Action = action };
        Weight weight = action.Effect == WeightEffect.Keeps ? foot.Other().ToWeight() : state.Weight;
        next.Add(state with { Last = changed, Weight = weight, Cost = state.Cost + 0.05 });
    }

    private static void Accompany(List<State> next, State state, Variant variant, int index)
    {
        if (state.Last is null)
        {
            return;
        }

        PlacedRow on = state.Last;

        // "sweep L round and clap" on two counts: the clap has the second
        double crowded = on.IsStretched && variant.Rows[0].Action.Kind is ActionKind.Clap or ActionKind.Snap && on.Action.Kind is not ActionKind.Hold ? 0.4 : 0;
        PlacedRow row = new(on, variant.Rows[0].Action, on.Label, on.Place, index, state.Moves, variant, true, true, true) { LastLabel = on.LastLabel };
        next.Add(state with { Last = row, Cost = state.Cost + variant.Cost + crowded, Moves = state.Moves + 1 });
    }

    /// <summary>An &amp; sign: nothing, or a quick step together on an &amp; count.</summary>
    private void ExtendAmp(List<State> next, State state, List<Clause> clauses, int index, IReadOnlyList<LabelPlace> places)
    {
        next.Add(state);
        bool onLetter = state.Label < places.Count && !places[state.Label].Place.IsWhole;
        bool afterGesture = state.Last is { Action.Effect: WeightEffect.Keeps };
        if (onLetter && state.Weight.FreeFoot() is Foot free && afterGesture)
        {
            Place(next, state, Together(free), index, places);
        }
    }

    /// <summary>The quick step together between the gestures of two feet that are joined by "and", when an &amp; count is next; else null.</summary>
    private Variant? StepBetween(State state, Clause clause, IReadOnlyList<LabelPlace> places)
    {
        bool onLetter = state.Label < places.Count && !places[state.Label].Place.IsWhole;
        bool gestures = state.Last is { IsWith: false, Action.Effect: WeightEffect.Keeps } && state.Weight.FreeFoot() is Foot free && state.Last.Action.Foot.ToFoot() == free
            && clause.Feet.Count == 1 && clause.Feet[0].Foot == free.Other();
        return onLetter && gestures ? Together(state.Weight.FreeFoot()!.Value) : null;
    }

    private Variant Together(Foot free)
    {
        StepAction step = new(ActionKind.Step, free.ToActingFoot(), Direction.Together, Contact.Ball, WeightEffect.Takes);
        return new() { Definition = lexicon.Catalogue.Find("step_together") ?? lexicon.Verbs.Definition(ActionKind.Step), Named = free, Rows = [new VariantRow(step, Counts.Zero, false)], Cost = 0.2 };
    }

    private void ExtendTurn(List<State> next, State state, List<Clause> clauses, int index, IReadOnlyList<LabelPlace> places)
    {
        Clause clause = clauses[index];
        bool missing = clause.TurnSide is null;
        int amount = clause.Amount ?? 0;
        Foot side = clause.TurnSide ?? Foot.Right;
        Ratio eighths = side == Foot.Right ? amount : -amount;
        bool softBefore = index > 0 && (clause.Link is Link.None || (clause.Link is Link.Soft && !(clause.LinkAfter is Link.None && index + 1 < clauses.Count)));
        bool softAfter = clause.LinkAfter is Link.None or Link.Soft && index + 1 < clauses.Count;
        double unsure = missing || clause.Amount is null ? 0.01 : 0;

        if (clause.SaysEach && !missing && amount > 0 && state.PendingTurn is null && AttachEach(state, eighths) is State each)
        {
            next.Add(each with { Cost = each.Cost + unsure });
            return;
        }

        if (clause.OnCount is int count && !missing && state.PendingTurn is null && AttachOn(state, eighths, count) is State placed)
        {
            next.Add(placed with { Cost = placed.Cost + unsure });
            return;
        }

        if (clause.OnStep is int step && !missing && state.PendingTurn is null && AttachOnStep(state, eighths, step) is State stepped)
        {
            next.Add(stepped with { Cost = stepped.Cost + unsure });
            return;
        }

        if (clause.SaysCircle && !missing && state.PendingTurn is null && AttachRound(state, eighths.Floor) is State round)
        {
            next.Add(round with { Cost = round.Cost + unsure });
            return;
        }

        // "1/4 right, weight R" is no turn of a step onto the L
        bool otherFoot = clause.WeightFoot is Foot weightedFoot && state.Last is { Action.Effect: WeightEffect.Takes } taken && taken.Action.Foot.ToFoot() == weightedFoot.Other();

        // with the move before
        if (!otherFoot && state.Last is not null && state.PendingTurn is null && AttachBack(state, eighths, softBefore ? 0 : index + 1 < clauses.Count ? 0.5 : 0.15) is State back)
        {
            back = clause.WeightFoot is Foot ends ? EndOn(back, ends) : back;
            next.Add(back with { Cost = back.Cost + unsure });
        }

        // with the move after
        if (index + 1 < clauses.Count && !softBefore)
        {
            next.Add(state with { PendingTurn = (state.PendingTurn ?? 0) + eighths, PendingHard = !softAfter, Cost = state.Cost + unsure + (softAfter ? 0 : 0.05) + (clause.WeightFoot is null || clause.WeightFoot == state.Weight.StandingFoot() ? 0 : 0.4) });
        }
        else if (index + 1 < clauses.Count)
        {
            next.Add(state with { PendingTurn = (state.PendingTurn ?? 0) + eighths, PendingHard = true, Cost = state.Cost + unsure + 0.45 });
        }

        // on a count of its own
        Foot? standing = state.Weight.StandingFoot();
        Foot? on = clause.WeightFoot;
        Turn turn = Turn.FromEighths(eighths);
        PlacedRow? lastStep = state.Last;
        while (lastStep is { Action.Foot: ActingFoot.None })
        {
            lastStep = lastStep.Previous;
        }

        bool steppedForward = lastStep is { Action: { Effect: WeightEffect.Takes, Direction: Direction.Forward or Direction.Unstated, Kind: ActionKind.Step or ActionKind.Rock } };
        bool away = standing is Foot s && (s == Foot.Right ? eighths.Sign < 0 : eighths.Sign > 0);
        if (steppedForward && away && amount is 1 or 2 or 3 or 4 or 6 && (on is null || on == standing!.Value.Other()))
        {
            StepAction pivot = new(ActionKind.Pivot, standing!.Value.Other().ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn);
            Place(next, state, TurnVariant(pivot, 0.2, missing, "pivot", on is not null), index, places);
        }

        bool touchedBack = lastStep is { Action: { Effect: WeightEffect.Keeps, Direction: Direction.Back or Direction.CrossBehind, Kind: ActionKind.Touch or ActionKind.Tap or ActionKind.Point } };
        if (touchedBack && lastStep!.Action.Foot.ToFoot() is Foot behind && behind == standing?.Other() && eighths.Sign > 0 == (behind == Foot.Right) && amount is 2 or 4 or 6 && (on is null || on == behind))
        {
            // "touch L back, 1/2 left": mostly onto the foot that touched
            StepAction reverse = new(ActionKind.Pivot, behind.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn);
            Place(next, state, TurnVariant(reverse, 0.2, missing, "pivot", on is not null), index, places);
        }

        ActingFoot acting = standing?.ToActingFoot() ?? ActingFoot.None;
        StepAction inPlace = new(ActionKind.Turn, acting, Direction.InPlace, Contact.Ball, WeightEffect.Keeps, turn);
        if (on is Foot weighted && weighted != standing)
        {
            inPlace = inPlace with { Foot = weighted.ToActingFoot(), Effect = WeightEffect.Takes };
            if (lastStep is { Action.Direction: Direction.CrossBehind or Direction.CrossFront or Direction.Side or Direction.Together } && amount == 2 && eighths.Sign > 0 == (weighted == Foot.Right))
            {
                // "side R, L behind, 1/4 right on R": the step that turns out of the vine
                inPlace = inPlace with { Kind = ActionKind.Step, Direction = Direction.Forward, Contact = Contact.Flat };
            }
        }

        Place(next, state, TurnVariant(inPlace, steppedForward && away ? 0.5 : 0.3, missing, "turn_in_place", on is not null), index, places);
    }

    private Variant TurnVariant(StepAction action, double cost, bool missing, string entry, bool stated) => new()
    {
        Definition = lexicon.Catalogue.Find(entry),
        Named = null,
        Rows = [new VariantRow(action, Counts.Zero, action.Kind == ActionKind.Turn)],
        Cost = cost,
        FootNamed = true,
        StatedTurn = action.Turn,
        TurnDirectionMissing = missing,
        WeightStated = stated,
    };

    private static State? AttachBack(State state, Ratio eighths, double cost)
    {
        PlacedRow? target = state.Last;
        List<PlacedRow> above = [];
        while (target is { IsWith: true } || target is { Action.Kind: ActionKind.Hold })
        {
            above.Add(target);
            target = target.Previous;
        }

        if (target is null)
        {
            return null;
        }

        double extra = target.Action.Turn.Sign != 0 ? 0.3 : 0;
        PlacedRow turned = target with { Action = Turned(target, eighths) };
        for (int i = above.Count - 1; i >= 0; i--)
        {
            turned = above[i] with { Previous = turned };
        }

        return state with { Last = turned, Cost = state.Cost + cost + extra, PendingTurn = null };
    }

    /// <summary>"Touch R to side four times turning 1/8 left each time": the turn on every action of the last move, or null when it has only one.</summary>
    private static State? AttachEach(State state, Ratio eighths)
    {
        List<PlacedRow> move = [];
        PlacedRow? row = state.Last;
        for (; row is not null && row.MoveIndex == state.Moves - 1; row = row.Previous)
        {
            move.Add(row);
        }

        if (move.Count < 2 || move.Exists(r => r.IsWith || r.Action.Turn.Sign != 0))
        {
            return null;
        }

        PlacedRow? last = row;
        for (int i = move.Count - 1; i >= 0; i--)
        {
            last = move[i] with { Previous = last, Action = move[i].Action with { Turn = Turn.FromEighths(eighths) } };
        }

        return state with { Last = last };
    }

    /// <summary>An action with a turn added. In a figure that goes sideways a turn into its way makes the step one forward.</summary>
    private static StepAction Turned(PlacedRow row, Ratio eighths)
    {
        StepAction action = row.Action;
        bool sideways = action is { Kind: ActionKind.Step, Direction: Direction.Side, Turn.Sign: 0 } && row.Variant?.Definition is { Rows.Count: > 1 } && (eighths == 2 || eighths == -2);
        Direction way = !sideways || action.Foot.ToFoot() is not Foot foot ? action.Direction
            : eighths.Sign > 0 == (foot == Foot.Right) ? Direction.Forward : Direction.Back;
        return action with { Turn = action.Turn + Turn.FromEighths(eighths), Direction = way };
    }

    /// <summary>"Bounce heels making a 1/2 turn left, weight on L": where a move of both feet ends.</summary>
    private static State EndOn(State state, Foot foot) => state.Last is { IsWith: false, Action.Foot: ActingFoot.Both } last
        ? state with
        {
            Last = last with { Action = last.Action with { Effect = foot == Foot.Left ? WeightEffect.ToLeft : WeightEffect.ToRight }, WeightStated = true },
            Weight = foot.ToWeight(),
        }
        : state;

    /// <summary>The turn on the move that stands on a count, or null when none does.</summary>
    private static State? AttachOn(State state, Ratio eighths, int count)
    {
        List<PlacedRow> above = [];
        PlacedRow? target = state.Last;
        while (target is not null && (target.IsWith || target.Place.Value != count - 1))
        {
            above.Add(target);
            target = target.Previous;
        }

        if (target is null || target.Action.Turn.Sign != 0)
        {
            return null;
        }

        PlacedRow turned = target with { Action = Turned(target, eighths) };
        for (int i = above.Count - 1; i >= 0; i--)
        {
            turned = above[i] with { Previous = turned };
        }

        return state with { Last = turned };
    }

    /// <summary>The turn on a step of the last move, by its number or (-1) the last that takes the weight; null when there is none.</summary>
    private static State? AttachOnStep(State state, Ratio eighths, int number)
    {
        List<PlacedRow> move = [];
        for (PlacedRow? row = state.Last; row is not null && row.MoveIndex == state.Moves - 1; row = row.Previous)
        {
            move.Add(row);
        }

        move.Reverse();
        PlacedRow? target = number > 0 ? move.ElementAtOrDefault(number - 1) : move.LastOrDefault(r => r.Action.Effect == WeightEffect.Takes);
        if (target is null || target.Action.Turn.Sign != 0 || move.Count < 2)
        {
            return null;
        }

        PlacedRow? last = move[0].Previous;
        foreach (PlacedRow row in move)
        {
            last = ReferenceEquals(row, target) ? row with { Previous = last, Action = Turned(row, eighths) } : row with { Previous = last };
        }

        return state with { Last = last };
    }

    /// <summary>A circle shared out evenly to the steps that walk it, or null when it does not come out in eighths.</summary>
    private static State? AttachRound(State state, int eighths)
    {
        List<PlacedRow> walked = [];
        PlacedRow? row = state.Last;
        while (row is { IsWith: false, Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes, Turn.Sign: 0, Direction: Direction.Forward or Direction.Back or Direction.Unstated } })
        {
            walked.Add(row);
            row = row.Previous;
        }

        if (walked.Count < 2 || eighths % walked.Count != 0)
        {
            return null;
        }

        PlacedRow? turned = row;
        for (int i = walked.Count - 1; i >= 0; i--)
        {
            turned = walked[i] with { Previous = turned, Action = walked[i].Action with { Turn = Turn.FromEighths(eighths / walked.Count) } };
        }

        return state with { Last = turned };
    }

    /// <summary>Puts the rows of a variant on the next labels.</summary>
    private static void Place(List<State> next, State state, Variant variant, int index, IReadOnlyList<LabelPlace> places)
    {
        double cost = state.Cost + variant.Cost;
        List<VariantRow> rows = variant.Rows;
        Ratio? pending = state.PendingTurn;

        // one row a label
        State labelled = state;
        double rhythm = RhythmCost(rows, places, state.Label);
        if (rows[0].Action.Kind is ActionKind.Arms or ActionKind.Hold && state.Label < places.Count && !places[state.Label].Place.IsWhole)
        {
            // nothing but a step is worth a count between two beats
            rhythm += 0.5;
        }

        if (pending is not null && rows[0].Action.Kind is ActionKind.Hold or ActionKind.Clap or ActionKind.Snap)
        {
            // nobody turns by holding
            rhythm += 1;
        }

        for (int i = 0; i < rows.Count; i++)
        {
            labelled = Put(labelled, variant, rows[i], i == 0 ? pending : null, index, places);
        }

        labelled = labelled with { Cost = cost + rhythm, PendingTurn = null, Moves = state.Moves + 1 };
        if (variant.Lasts is > 1 and int lasting && rows.Count == 1 && labelled.Overflow == 0)
        {
            Last(next, labelled, lasting, places);
            labelled = labelled with { Cost = labelled.Cost + 0.3 };
        }

        next.Add(labelled);
        Stretch(next, labelled, rows, variant, places);
        if (rows.Count > 1)
        {
            StretchInside(next, state, variant, index, places, pending, cost);
        }

        // its own quick counts inside a range: "1-4 shuffle, rock, recover"
        if (rows.Count > 1 && Native(state, variant, index, places, pending) is State native)
        {
            State own = native with { Cost = cost + (rhythm > 0 ? 0.2 : 0.25), PendingTurn = null, Moves = state.Moves + 1 };
            next.Add(own);
            Stretch(next, own, rows, variant, places);
        }
    }

    /// <summary>A row in the middle of a figure that stretches (the sweep of a step, sweep).</summary>
    private static void StretchInside(List<State> next, State state, Variant variant, int index, IReadOnlyList<LabelPlace> places, Ratio? pending, double cost)
    {
        int spare = places.Count - state.Label - variant.Rows.Count;
        if (spare <= 0 || spare > 6)
        {
            return;
        }

        for (int stretched = 0; stretched < variant.Rows.Count - 1; stretched++)
        {
            if (!variant.Rows[stretched].Stretches)
            {
                continue;
            }

            State placed = state;
            for (int i = 0; i < variant.Rows.Count; i++)
            {
                placed = Put(placed, variant, variant.Rows[i], i == 0 ? pending : null, index, places);
                if (i == stretched)
                {
                    placed = placed with { Label = placed.Label + spare, Last = placed.Last! with { LastLabel = placed.Label + spare - 1 } };
                }
            }

            next.Add(placed with { Cost = cost + 0.2 + (0.05 * spare), PendingTurn = null, Moves = state.Moves + 1 });
        }
    }

    /// <summary>A move of so many counts, as her words say: all places that begin within them are its own.</summary>
    private static void Last(List<State> next, State state, int lasting, IReadOnlyList<LabelPlace> places)
    {
        Counts end = state.Last!.Place + Counts.FromWhole(lasting);
        int label = state.Label;
        while (label < places.Count && places[label].Place < end)
        {
            label++;
        }

        if (label > state.Label)
        {
            next.Add(state with { Label = label, Cost = state.Cost + 0.01, Last = state.Last with { LastLabel = label - 1, IsStretched = true } });
        }
    }

    private static void Stretch(List<State> next, State state, List<VariantRow> rows, Variant variant, IReadOnlyList<LabelPlace> places)
    {
        if (rows.Count == 0 || !rows[^1].Stretches || state.Last is null || state.Overflow > 0)
        {
            return;
        }

        PlacedRow? before = state.Last.Previous;
        double crowded = before is { IsWith: true, Action.Kind: ActionKind.Clap or ActionKind.Snap } && state.Last.Action.Kind is not ActionKind.Hold ? 0.4 : 0;
        for (int more = 1; state.Label + more <= places.Count && more <= 8; more++)
        {
            next.Add(state with
            {
                Label = state.Label + more,
                Cost = state.Cost + crowded + ((state.Last.Action.Kind is ActionKind.Turn or ActionKind.Slide ? 0.2 : 0.02) * more),
                Last = state.Last with { LastLabel = state.Label + more - 1, IsStretched = true },
            });
        }
    }

    private static State Put(State state, Variant variant, VariantRow row, Ratio? pending, int index, IReadOnlyList<LabelPlace> places)
    {
        StepAction action = pending is Ratio turn ? row.Action with { Turn = row.Action.Turn + Turn.FromEighths(turn) } : row.Action;
        bool over = state.Label >= places.Count;
        (string label, Counts place) = over
            ? (places.Count > 0 ? places[^1].Label : "1", places.Count > 0 ? places[^1].Place : Counts.Zero)
            : (places[state.Label].Label, places[state.Label].Place);
        PlacedRow placed = new(state.Last, action, label, place, index, state.Moves, variant, variant.FootNamed, variant.WeightStated, false) { LastLabel = state.Label };
        return state with
        {
            Last = placed,
            Label = over ? state.Label : state.Label + 1,
            Weight = action.WeightAfter(state.Weight),
            Overflow = state.Overflow + (over ? 1 : 0),
            Actions = state.Actions + 1,
        };
    }

    private static State? Native(State state, Variant variant, int index, IReadOnlyList<LabelPlace> places, Ratio? pending)
    {
        if (state.Label >= places.Count || !places[state.Label].Place.IsWhole || variant.Rows[0].At < Counts.Zero)
        {
            return null;
        }

        Counts start = places[state.Label].Place;
        State placed = state;
        bool inserted = false;
        for (int i = 0; i < variant.Rows.Count; i++)
        {
            VariantRow row = variant.Rows[i];
            Counts at = start + row.At;
            StepAction action = i == 0 && pending is Ratio turn ? row.Action with { Turn = row.Action.Turn + Turn.FromEighths(turn) } : row.Action;
            if (at.IsWhole)
            {
                if (placed.Label >= places.Count || places[placed.Label].Place != at)
                {
                    return null;
                }

                placed = Put(placed, variant, row with { Action = action }, null, index, places);
                continue;
            }

            // an unprinted & needs a range around it
            if (placed.Label < places.Count && places[placed.Label].Place < at)
            {
                return null;
            }

            if (placed.Label < places.Count && places[placed.Label].Place == at)
            {
                return null;
            }

            bool range = placed.Label < places.Count ? places[placed.Label].AfterDash : placed.Label > 0 && places[placed.Label - 1].AfterDash;
            if (!range)
            {
                return null;
            }

            inserted = true;
            PlacedRow free = new(placed.Last, action, CountGrid.LabelOf(at), at, index, placed.Moves, variant, variant.FootNamed, variant.WeightStated, false) { LastLabel = placed.Label - 1 };
            placed = placed with { Last = free, Weight = action.WeightAfter(placed.Weight), Actions = placed.Actions + 1 };
        }

        return inserted ? placed : null;
    }

    /// <summary>How much the labels differ from the figure's own rhythm.</summary>
    private static double RhythmCost(List<VariantRow> rows, IReadOnlyList<LabelPlace> places, int label)
    {
        if (rows.Count < 2 || label + rows.Count > places.Count)
        {
            return 0;
        }

        bool same = true;
        bool whole = true;
        Counts start = places[label].Place;
        for (int i = 0; i < rows.Count; i++)
        {
            Counts offset = places[label + i].Place - start;
            same &= offset == rows[i].At - rows[0].At;
            whole &= places[label + i].Place.IsWhole;
        }

        return same ? 0 : whole ? 0.15 : 0.2;
    }
}
