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

    /// <summary>What both feet did last before the line, which bare words of place at its start go on with ("then to the right, and back"); or null.</summary>
    public ActionKind? Before { get; init; }

    /// <summary>The last action of the line before, where each count has a line of its own ("2  pivot 1/2 left" after "1  step R forward"); or null.</summary>
    public PlacedRow? Carried { get; init; }

    /// <summary>The readings of the clauses over the places, best first; empty when no clause could be read.</summary>
    public List<LineReading> Solve(List<Clause> clauses, IReadOnlyList<LabelPlace> places, Weight weight)
    {
        List<SolverState> beam = [new SolverState(null, 0, weight, 0, null, false, 0, 0, 0)];
        int count = Math.Min(clauses.Count, MaximumClauses);
        for (int i = 0; i < count; i++)
        {
            List<SolverState> next = [];
            foreach (SolverState state in beam)
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
        foreach (SolverState state in beam)
        {
            SolverState done = state;
            if (done.PendingTurn is Ratio turn)
            {
                done = TurnAttachment.Back(done, turn, 0.1) ?? done;
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

    private static List<SolverState> Prune(List<SolverState> states)
    {
        states.Sort((a, b) => a.Cost.CompareTo(b.Cost));
        if (states.Count <= BeamWidth)
        {
            return states;
        }

        return states.GetRange(0, BeamWidth);
    }

    private void Extend(List<SolverState> next, SolverState state, List<Clause> clauses, int index, IReadOnlyList<LabelPlace> places)
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

        int onward = clauses.FindIndex(index + 1, c => c.Head is not { Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] });
        _maker.Onward = onward < 0 ? null : clauses[onward];
        if (clause.SaysFinish)
        {
            Finish(next, state, clause);
        }

        if (clause.Link is Link.Soft && !clause.IsWith && StepBetween(state, clause, places) is Variant between)
        {
            // "R heel and L heel" on 1&2: the and is danced
            List<SolverState> stepped = [];
            RowPlacement.Place(stepped, state, between, Math.Max(0, index - 1), places);
            foreach (SolverState after in stepped)
            {
                foreach (Variant variant in _maker.Make(clause, clauses[Math.Max(0, index - 1)], index + 1 < clauses.Count ? clauses[index + 1]
                    : null, new Situation(after.Weight, after.Last)))
                {
                    if (!variant.Accompanies && variant.Rows.Count > 0 && variant.Beside is null)
                    {
                        RowPlacement.Place(next, after, variant, index, places);
                    }
                }
            }
        }

        if (clause is { IsSpiral: true, Link: not Link.Hard, TimesStated: false }
            && state is { PendingTurn: null, Last: { Action.Effect: WeightEffect.Takes } stood }
            && stood.Action.Foot.ToFoot() is Foot spiralling && (clause.Feet.Count == 0 || clause.Feet[0].Foot == spiralling))
        {
            // "R forward into a full spiral L" on one count: the turn is made on the step
            int round = clause.Amount ?? clause.Head!.Figures[0].TotalTurn.Amount.Floor;
            Ratio about = (clause.TurnSide ?? spiralling.Other()) == Foot.Right ? round : -round;
            if (TurnAttachment.Back(state, about, 0.25) is SolverState spun)
            {
                next.Add(spun);
            }
        }

        Clause? previous = index > 0 ? clauses[index - 1]
            : Before is ActionKind went && state.Weight == Weight.Shared ? new Clause { Inherited = went } : null;
        if (previous is { IsAmp: true })
        {
            previous = index > 1 ? clauses[index - 2] : null;
        }

        foreach (Variant variant in _maker.Make(clause, previous, index + 1 < clauses.Count ? clauses[index + 1]
            : null, new Situation(state.Weight, state.Last ?? Carried)))
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
                    PlacedRow riding = new(on, beside.Action, on.Label, on.Place, index, state.Moves, variant, true, true,
                        true)
                    { LastLabel = on.LastLabel };
                    RowPlacement.Place(next, state with { Last = riding }, variant, index, places);
                }

                continue;
            }

            variant.Lasts = clause.Lasts;
            variant.SaidCount = clause.SaidCount;
            if (clause is { WeightNote: TermKind.WeightOn, WeightFoot: Foot ends }
                && variant.Rows.Aggregate(state.Weight, (w, r) => r.Action.WeightAfter(w)) == ends.Other().ToWeight())
            {
                // the words say that it ends on the other foot
                variant.Cost += 0.5;
            }

            RowPlacement.Place(next, state, variant, index, places);
        }
    }

    /// <summary>"Coaster step, finishing with a cross": the last action of the figure, danced as said.</summary>
    private static void Finish(List<SolverState> next, SolverState state, Clause clause)
    {
        bool says = clause is { Amount: null, HasTurnWord: false, Feet.Count: < 2, Times: 1 }
            && (clause.Dir is not null || clause.Head?.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Brush
            or ActionKind.Scuff or ActionKind.Hitch or ActionKind.Kick or ActionKind.Flick);
        if (!says || state.Last is not { IsWith: false, Variant.Definition.Rows.Count: > 2 } last || last.Action.Foot.ToFoot() is not Foot foot
            || (clause.Feet.Count == 1 && clause.Feet[0].Foot != foot && !clause.Feet[0].MayBeReference))
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

    private static void Accompany(List<SolverState> next, SolverState state, Variant variant, int index)
    {
        if (state.Last is null)
        {
            return;
        }

        PlacedRow on = state.Last;

        // "sweep L round and clap" on two counts: the clap has the second
        double crowded = on.IsStretched && variant.Rows[0].Action.Kind is ActionKind.Clap or ActionKind.Snap && on.Action.Kind is not ActionKind.Hold
            ? 0.4 : 0;
        PlacedRow row = new(on, variant.Rows[0].Action, on.Label, on.Place, index, state.Moves, variant, true, true,
            true)
        { LastLabel = on.LastLabel };
        next.Add(state with { Last = row, Cost = state.Cost + variant.Cost + crowded, Moves = state.Moves + 1 });
    }

    /// <summary>An &amp; sign: nothing, or a quick step together on an &amp; count.</summary>
    private void ExtendAmp(List<SolverState> next, SolverState state, List<Clause> clauses, int index, IReadOnlyList<LabelPlace> places)
    {
        next.Add(state);
        bool onLetter = state.Label < places.Count && !places[state.Label].Place.IsWhole;
        bool afterGesture = state.Last is { Action.Effect: WeightEffect.Keeps };
        if (onLetter && state.Weight.FreeFoot() is Foot free && afterGesture)
        {
            RowPlacement.Place(next, state, Together(free), index, places);
        }
    }

    /// <summary>The quick step together between the gestures of two feet that are joined by "and", when an &amp; count is next; else null.</summary>
    private Variant? StepBetween(SolverState state, Clause clause, IReadOnlyList<LabelPlace> places)
    {
        bool onLetter = state.Label < places.Count && !places[state.Label].Place.IsWhole;
        bool gestures = state.Last is { IsWith: false, Action.Effect: WeightEffect.Keeps } && state.Weight.FreeFoot() is Foot free
            && state.Last.Action.Foot.ToFoot() == free
            && clause.Feet.Count == 1 && clause.Feet[0].Foot == free.Other();
        return onLetter && gestures ? Together(state.Weight.FreeFoot()!.Value) : null;
    }

    private Variant Together(Foot free)
    {
        StepAction step = new(ActionKind.Step, free.ToActingFoot(), Direction.Together, Contact.Ball, WeightEffect.Takes);
        return new()
        {
            Definition = lexicon.Catalogue.Find("step_together") ?? lexicon.Verbs.Definition(ActionKind.Step),
            Named = free,
            Rows = [new VariantRow(step, Counts.Zero, false)],
            Cost = 0.2
        };
    }

    private void ExtendTurn(List<SolverState> next, SolverState state, List<Clause> clauses, int index, IReadOnlyList<LabelPlace> places)
    {
        Clause clause = clauses[index];
        bool missing = clause.TurnSide is null;
        int amount = clause.Amount ?? 0;
        Foot side = clause.TurnSide ?? Foot.Right;
        Ratio eighths = side == Foot.Right ? amount : -amount;
        bool softBefore = index > 0 && (clause.Link is Link.None
            || (clause.Link is Link.Soft && !(clause.LinkAfter is Link.None && index + 1 < clauses.Count)));
        bool softAfter = clause.LinkAfter is Link.None or Link.Soft && index + 1 < clauses.Count;
        double unsure = missing || clause.Amount is null ? 0.01 : 0;

        if (clause.SaysEach && !missing && amount > 0 && state.PendingTurn is null && TurnAttachment.Each(state, eighths) is SolverState each)
        {
            next.Add(each with { Cost = each.Cost + unsure });
            return;
        }

        if (clause.OnCount is int count && !missing && state.PendingTurn is null
            && TurnAttachment.OnCount(state, eighths, count) is SolverState placed)
        {
            next.Add(placed with { Cost = placed.Cost + unsure });
            return;
        }

        if (clause.OnStep is int step && !missing && state.PendingTurn is null && TurnAttachment.OnStep(state, eighths, step) is SolverState stepped)
        {
            next.Add(stepped with { Cost = stepped.Cost + unsure });
            return;
        }

        if (clause.SaysCircle && !missing && state.PendingTurn is null && TurnAttachment.Round(state, eighths.Floor) is SolverState round)
        {
            next.Add(round with { Cost = round.Cost + unsure });
            return;
        }

        // "1/4 right, weight R" is no turn of a step onto the L
        bool otherFoot = clause.WeightFoot is Foot weightedFoot && state.Last is { Action.Effect: WeightEffect.Takes } taken
            && taken.Action.Foot.ToFoot() == weightedFoot.Other();

        // with the move before
        if (!otherFoot && state.Last is not null && state.PendingTurn is null
            && TurnAttachment.Back(state, eighths, softBefore ? 0 : index + 1 < clauses.Count ? 0.5 : 0.15) is SolverState back)
        {
            back = clause.WeightFoot is Foot ends ? TurnAttachment.EndOn(back, ends) : back;
            next.Add(back with { Cost = back.Cost + unsure });
        }

        if (clause.WithBefore && state is { Last: not null, PendingTurn: null })
        {
            return;
        }

        // with the move after
        if (index + 1 < clauses.Count && !softBefore)
        {
            next.Add(state with
            {
                PendingTurn = (state.PendingTurn ?? 0) + eighths,
                PendingHard = !softAfter,
                Cost = state.Cost + unsure + (softAfter
                ? 0 : 0.05) + (clause.WeightFoot is null || clause.WeightFoot == state.Weight.StandingFoot() ? 0 : 0.4)
            });
        }
        else if (index + 1 < clauses.Count)
        {
            next.Add(state with { PendingTurn = (state.PendingTurn ?? 0) + eighths, PendingHard = true, Cost = state.Cost + unsure + 0.45 });
        }

        // on a count of its own
        Foot? standing = state.Weight.StandingFoot();
        Foot? on = clause.WeightFoot;
        Turn turn = Turn.FromEighths(eighths);
        PlacedRow? lastStep = state.Last ?? Carried;
        while (lastStep is { Action.Foot: ActingFoot.None })
        {
            lastStep = lastStep.Previous;
        }

        bool steppedForward = lastStep
            is
        {
            Action:
            {
                Effect: WeightEffect.Takes, Direction: Direction.Forward or Direction.Unstated,
                Kind: ActionKind.Step or ActionKind.Rock
            }
        };
        bool away = standing is Foot s && (s == Foot.Right ? eighths.Sign < 0 : eighths.Sign > 0);
        if (steppedForward && away && amount is 1 or 2 or 3 or 4 or 6 && (on is null || on == standing!.Value.Other()))
        {
            StepAction pivot = new(ActionKind.Pivot, standing!.Value.Other().ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes,
                turn);
            RowPlacement.Place(next, state, TurnVariant(pivot, 0.2, missing, "pivot", on is not null), index, places);
        }

        bool touchedBack = lastStep is
        {
            Action:
            {
                Effect: WeightEffect.Keeps, Direction: Direction.Back or Direction.CrossBehind,
                Kind: ActionKind.Touch or ActionKind.Tap or ActionKind.Point
            }
        };
        if (touchedBack && lastStep!.Action.Foot.ToFoot() is Foot behind && behind == standing?.Other() && eighths.Sign > 0 == (behind == Foot.Right)
            && amount is 2 or 4 or 6 && (on is null || on == behind))
        {
            // "touch L back, 1/2 left": mostly onto the foot that touched
            StepAction reverse = new(ActionKind.Pivot, behind.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn);
            RowPlacement.Place(next, state, TurnVariant(reverse, 0.1, missing, "pivot", on is not null), index, places);
        }

        bool outOfVine = on is null && amount == 2 && standing is Foot stands && eighths.Sign > 0 == (stands == Foot.Left)
            && (lastStep is { Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes, Direction: Direction.CrossBehind } }
                || lastStep is
                {
                    Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes, Direction: Direction.Together }, Place.IsWhole: false,
                    Previous.Action: { Kind: ActionKind.Step, Direction: Direction.Side, Turn.Sign: 0 }
                });
        if (outOfVine)
        {
            // "side R, behind, 1/4 right, scuff", "3&4 side R, together, 1/4 right": the step that turns out of the vine, said by its turn alone
            StepAction onward = new(ActionKind.Step, standing!.Value.Other().ToActingFoot(), Direction.Forward, Contact.Flat, WeightEffect.Takes, turn);
            RowPlacement.Place(next, state, TurnVariant(onward, 0.1, missing, "step_forward", false), index, places);
        }

        ActingFoot acting = standing?.ToActingFoot() ?? ActingFoot.None;
        StepAction inPlace = new(ActionKind.Turn, acting, Direction.InPlace, Contact.Ball, WeightEffect.Keeps, turn);
        if (on is Foot weighted && weighted != standing)
        {
            inPlace = inPlace with { Foot = weighted.ToActingFoot(), Effect = WeightEffect.Takes };
            if (lastStep is { Action.Direction: Direction.CrossBehind or Direction.CrossFront or Direction.Side or Direction.Together }
                && amount == 2 && eighths.Sign > 0 == (weighted == Foot.Right))
            {
                // "side R, L behind, 1/4 right on R": the step that turns out of the vine
                inPlace = inPlace with { Kind = ActionKind.Step, Direction = Direction.Forward, Contact = Contact.Flat };
            }
        }

        RowPlacement.Place(next, state, TurnVariant(inPlace, steppedForward && away ? 0.5 : 0.3, missing, "turn_in_place", on is not null), index,
            places);
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
}
