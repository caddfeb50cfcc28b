using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>The ways to dance a turn that both feet make: pivots, unwinds, full turns.</summary>
internal sealed class TurnVariants(Lexicon lexicon)
{
    /// <summary>A pivot: on the standing foot, onto the other, or with the step before it.</summary>
    public void AddPivot(List<Variant> variants, Clause clause, Situation situation)
    {
        Foot? standing = situation.Weight.StandingFoot();
        Foot? named = clause.Feet.Count > 0 ? clause.Feet[^1].Foot : null;
        bool onStanding = named is Foot on && on == standing && clause.WeightNote is null;
        Foot? side = clause.TurnSide;
        (Ratio? eighths, bool missing) = VariantParts.StatedTurn(clause, null);
        bool amountMissing = clause.Amount is null;
        StepDefinition? definition = lexicon.Catalogue.Find("pivot");
        PlacedRow? stepped = situation.Last;
        while (stepped is { Action.Foot: ActingFoot.None })
        {
            // "step R forward, hold, pivot": the hold changes nothing
            stepped = stepped.Previous;
        }

        bool afterStep = stepped is { Action.Effect: WeightEffect.Takes } && stepped.Action.Kind is not (ActionKind.Pivot or ActionKind.Unwind);

        if (onStanding)
        {
            Turn turn = Turn.FromEighths(eighths ?? 0);
            StepAction spin = new(ActionKind.Pivot, standing!.Value.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Keeps, turn);
            variants.Add(new Variant
            {
                Definition = definition,
                Named = standing,
                Rows = [new VariantRow(spin, Counts.Zero, false)],
                Cost = 0.05,
                FootNamed = true,
                StatedTurn = turn,
                TurnDirectionMissing = missing,
                TurnAmountMissing = amountMissing,
                WeightStated = true
            });
        }

        if (standing is Foot from)
        {
            Ratio amount = eighths ?? ((clause.Amount ?? 4) * (side is Foot s ? (s == Foot.Right ? 1 : -1) : from == Foot.Right ? -1 : 1));
            Turn turn = Turn.FromEighths(amount);
            StepAction switchTurn = new(ActionKind.Pivot, from.Other().ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn);
            bool keeps = clause.WeightNote == TermKind.WeightOn && clause.WeightFoot == from;
            if (keeps)
            {
                switchTurn = switchTurn with { Foot = from.ToActingFoot(), Effect = WeightEffect.Keeps };
            }

            bool stated = clause.WeightNote is not null || (named is Foot n && n == from.Other());
            double cost = afterStep ? 0 : keeps || stated ? 0.1 : 0.25;
            if (onStanding)
            {
                cost += 0.5;
            }

            variants.Add(new Variant
            {
                Definition = definition,
                Named = null,
                Rows = [new VariantRow(switchTurn, Counts.Zero, false)],
                Cost = cost,
                FootNamed = true,
                StatedTurn = turn,
                TurnDirectionMissing = missing,
                TurnAmountMissing = amountMissing,
                WeightStated = stated
            });
            AddStepPivot(variants, clause, situation, from, turn, missing, amountMissing, afterStep);
            if (!afterStep && !keeps && !stated && !onStanding)
            {
                // after a touch a pivot may stay on the standing foot as well: two readings
                StepAction stay = switchTurn with { Foot = from.ToActingFoot(), Effect = WeightEffect.Keeps };
                variants.Add(new Variant
                {
                    Definition = definition,
                    Named = null,
                    Rows = [new VariantRow(stay, Counts.Zero, false)],
                    Cost = 0.3,
                    FootNamed = true,
                    StatedTurn = turn,
                    TurnDirectionMissing = missing,
                    TurnAmountMissing = amountMissing,
                    Words = "turning on the standing foot"
                });
            }
        }
        else
        {
            Turn turn = Turn.FromEighths(eighths ?? 0);
            StepAction lost = new(ActionKind.Pivot, ActingFoot.None, Direction.InPlace, Contact.Ball, clause.WeightFoot is not null
                ? WeightEffect.Takes : WeightEffect.Unknown, turn);
            if (clause.WeightFoot is Foot w || named is not null && (w = named.Value) == named.Value)
            {
                lost = lost with { Foot = (clause.WeightFoot ?? named)!.Value.ToActingFoot(), Effect = WeightEffect.Takes };
            }

            variants.Add(new Variant
            {
                Definition = definition,
                Named = null,
                Rows = [new VariantRow(lost, Counts.Zero, false)],
                Cost = 0.2,
                StatedTurn = turn,
                TurnDirectionMissing = missing,
                TurnAmountMissing = amountMissing
            });
        }

    }

    /// <summary>An unwind from the cross before it.</summary>
    public void AddUnwind(List<Variant> variants, Clause clause, Situation situation)
    {
        if (clause.Feet is [{ IsCertain: false } again] && again.Foot == clause.TurnSide)
        {
            // "unwind right 1/2 right": the way round, said twice
            clause.Feet.Clear();
        }

        Foot? crossing = null;
        bool behind = false;
        bool sharing = false;
        for (PlacedRow? row = situation.Last; row is not null; row = row.Previous)
        {
            if (row.Action.FootInFront is Foot landed)
            {
                // jumped onto both feet, the weight stays on both
                crossing = landed;
                sharing = true;
                break;
            }

            if (row.Action.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Across or Direction.Behind or Direction.LockBehind
                or Direction.LockFront)
            {
                crossing = row.Action.Foot.ToFoot();
                behind = row.Action.Direction is Direction.CrossBehind or Direction.Behind or Direction.LockBehind;
                break;
            }

            if (row.Action.Foot is ActingFoot.Left or ActingFoot.Right)
            {
                break;
            }
        }

        (Ratio? eighths, bool missing) = VariantParts.StatedTurn(clause, null);
        if (missing && crossing is Foot c)
        {
            // the feet allow only one way round
            bool toRight = behind ? c == Foot.Right : c == Foot.Left;
            eighths = toRight ? clause.Amount!.Value : -clause.Amount!.Value;
        }

        bool amountMissing = clause.Amount is null;
        if (amountMissing)
        {
            bool toRight = clause.TurnSide is Foot side ? side == Foot.Right : crossing is Foot f && (behind ? f == Foot.Right : f == Foot.Left);
            eighths = crossing is null ? 0 : toRight ? 4 : -4;
        }

        Turn turn = Turn.FromEighths(eighths ?? 0);
        bool stated = clause.WeightNote is not null || clause.Feet.Count > 0;
        Foot? touched = situation.Last
            is
        {
            Action:
            {
                Effect: WeightEffect.Keeps, Direction: Direction.Back, Kind: ActionKind.Touch or ActionKind.Tap
            or ActionKind.Point
            } laid
        }
            ? laid.Foot.ToFoot() : null;
        if (touched is Foot back && crossing is null && !stated && turn.Sign > 0 == (back == Foot.Right))
        {
            // "toe back, unwind 1/2": the sources leave open on which foot it ends
            foreach ((Foot on, double cost) in (ReadOnlySpan<(Foot, double)>)[(back, 0), (back.Other(), 0.05)])
            {
                StepAction either = new(ActionKind.Unwind, on.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn);
                variants.Add(new Variant
                {
                    Definition = lexicon.Catalogue.Find("unwind"),
                    Named = null,
                    Rows = [new VariantRow(either, Counts.Zero, true)],
                    Cost = cost,
                    FootNamed = true,
                    StatedTurn = turn,
                    TurnDirectionMissing = missing,
                    TurnAmountMissing = amountMissing,
                });
            }

            return;
        }

        Foot? end = clause.WeightFoot ?? (clause.Feet.Count > 0 ? clause.Feet[^1].Foot : sharing ? null : crossing?.Other());
        StepAction action = clause.WeightNote == TermKind.WeightBoth || end is null
            ? new StepAction(ActionKind.Unwind, ActingFoot.Both, Direction.InPlace, Contact.Ball, WeightEffect.Shares, turn)
            : end is Foot foot
                ? new StepAction(ActionKind.Unwind, foot.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn)
                : new StepAction(ActionKind.Unwind, ActingFoot.Both, Direction.InPlace, Contact.Ball, WeightEffect.Unknown, turn);
        variants.Add(new Variant
        {
            Definition = lexicon.Catalogue.Find("unwind"),
            Named = null,
            Rows = [new VariantRow(action, Counts.Zero, true)],
            FootNamed = true,
            StatedTurn = turn,
            TurnDirectionMissing = missing && crossing is null,
            TurnAmountMissing = amountMissing,
            WeightStated = stated,
        });
    }

    /// <summary>A full turn in two steps, half on each.</summary>
    public static void AddFullTurn(List<Variant> variants, Clause clause, StepDefinition figure, Foot round, Situation situation)
    {
        List<VariantRow> rows = [];
        Weight weight = situation.Weight;
        double cost = 0;
        for (int i = 0; i < 2; i++)
        {
            StepAction action = figure.Rows[i].For(round) with { Foot = clause.Feet[i].Foot.ToActingFoot() };
            cost += VariantParts.FootCost(weight, action.Foot, FootRule.Free) * 0.5;
            weight = action.WeightAfter(weight);
            rows.Add(new VariantRow(action, figure.Rows[i].At, false));
        }

        variants.Add(new Variant
        {
            Definition = figure,
            Named = round,
            Rows = rows,
            Cost = cost,
            FootNamed = true,
            StatedTurn = Turn.FromEighths(round == Foot.Right ? 8 : -8)
        });
    }

    /// <summary>"pivot 1/2 left" on two counts: a step of the free foot and the turn.</summary>
    private void AddStepPivot(List<Variant> variants, Clause clause, Situation situation, Foot from, Turn turn, bool missing, bool amountMissing,
        bool afterStep)
    {
        Foot stepping = from.Other();
        if (clause.TurnSide is null && clause.Amount is not null)
        {
            turn = Turn.FromEighths(stepping == Foot.Right ? -clause.Amount.Value : clause.Amount.Value);
        }

        List<VariantRow> rows = [];
        for (int i = 0; i < Math.Max(1, clause.Times); i++)
        {
            rows.Add(new VariantRow(new StepAction(ActionKind.Step, stepping.ToActingFoot(), Direction.Forward, Contact.Ball, WeightEffect.Takes),
                Counts.FromWhole(2 * i), false));
            rows.Add(new VariantRow(new StepAction(ActionKind.Pivot, from.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn),
                Counts.FromWhole((2 * i) + 1), false));
        }

        string entry = turn.Amount == 2 ? "pivot_quarter" : turn.Amount == 6 ? "pivot_three_quarter" : "pivot_half";
        variants.Add(new Variant
        {
            Definition = lexicon.Catalogue.Find(entry),
            Named = stepping,
            Rows = rows,
            Cost = afterStep ? 0.4
            : 0.1,
            FootNamed = clause.Feet.Count > 0,
            StatedTurn = turn,
            TurnDirectionMissing = missing,
            TurnAmountMissing = amountMissing
        });
    }
}
