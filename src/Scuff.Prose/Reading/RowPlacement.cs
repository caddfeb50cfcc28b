using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Puts the rows of a way to dance a clause on the next places of a line.</summary>
internal static class RowPlacement
{
    // "R chasse, L back rock, L chasse": within a line such figures are all danced quick, or all of them slow
    private const double Mixed = 0.5;

    /// <summary>Puts the rows of a variant on the next labels.</summary>
    public static void Place(List<SolverState> next, SolverState state, Variant variant, int index, IReadOnlyList<LabelPlace> places)
    {
        double cost = state.Cost + variant.Cost;
        List<VariantRow> rows = variant.Rows;
        Ratio? pending = state.PendingTurn;

        // one row a label
        SolverState labelled = state;
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

        cost += variant.SaidCount is int said && places.Any(p => p.Number == said) && !IsOn(labelled, rows.Count, said) ? 0.8 : 0;
        bool slowed = rows.Count > 2 && rhythm > 0 && rows.Exists(r => !r.At.IsWhole) && labelled.Overflow == 0
            && Enumerable.Range(state.Label, Math.Min(rows.Count, places.Count - state.Label)).All(l => places[l].Place.IsWhole);
        labelled = labelled with
        {
            Cost = cost + rhythm + (slowed && state.HasQuick ? Mixed : 0),
            PendingTurn = null,
            Moves = state.Moves + 1,
            HasSlowed = state.HasSlowed || slowed,
        };
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
        if (rows.Count > 1 && Native(state, variant, index, places, pending) is SolverState native)
        {
            SolverState own = native with
            {
                Cost = cost + (rhythm > 0 ? 0.2 : 0.25) + (state.HasSlowed ? Mixed : 0),
                PendingTurn = null,
                Moves = state.Moves + 1,
                HasQuick = true,
            };
            next.Add(own);
            Stretch(next, own, rows, variant, places);
        }
    }

    /// <summary>Whether one of the last rows is on a count.</summary>
    public static bool IsOn(SolverState state, int rows, int count)
    {
        PlacedRow? row = state.Last;
        for (int i = 0; i < rows && row is not null; i++, row = row.Previous)
        {
            if (row.Place.IsWhole && row.Label == count.ToString(System.Globalization.CultureInfo.InvariantCulture))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>A row in the middle of a figure that stretches (the sweep of a step, sweep).</summary>
    private static void StretchInside(List<SolverState> next, SolverState state, Variant variant, int index, IReadOnlyList<LabelPlace> places,
        Ratio? pending, double cost)
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

            SolverState placed = state;
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
    private static void Last(List<SolverState> next, SolverState state, int lasting, IReadOnlyList<LabelPlace> places)
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

    private static void Stretch(List<SolverState> next, SolverState state, List<VariantRow> rows, Variant variant, IReadOnlyList<LabelPlace> places)
    {
        if (rows.Count == 0 || !rows[^1].Stretches || state.Last is null || state.Overflow > 0)
        {
            return;
        }

        if (rows[^1].Action is { Kind: ActionKind.Turn } short0 && short0.Turn.Amount <= 2 && variant.Lasts is null && state.Moves > 1)
        {
            // "step, step and quarter turn" on four counts: something is missing, nobody turns a quarter for so long
            return;
        }

        PlacedRow? before = state.Last.Previous;
        double crowded = before is { IsWith: true, Action.Kind: ActionKind.Clap or ActionKind.Snap } && state.Last.Action.Kind is not ActionKind.Hold
            ? 0.4 : 0;
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

    private static SolverState Put(SolverState state, Variant variant, VariantRow row, Ratio? pending, int index, IReadOnlyList<LabelPlace> places)
    {
        StepAction action = pending is Ratio turn ? row.Action with { Turn = row.Action.Turn + Turn.FromEighths(turn) } : row.Action;
        bool over = state.Label >= places.Count;
        (string label, Counts place) = over
            ? (places.Count > 0 ? places[^1].Label : "1", places.Count > 0 ? places[^1].Place : Counts.Zero)
            : (places[state.Label].Label, places[state.Label].Place);
        PlacedRow placed = new(state.Last, action, label, place, index, state.Moves, variant, variant.FootNamed, variant.WeightStated,
            false)
        { LastLabel = state.Label };
        return state with
        {
            Last = placed,
            Label = over ? state.Label : state.Label + 1,
            Weight = action.WeightAfter(state.Weight),
            Overflow = state.Overflow + (over ? 1 : 0),
            Actions = state.Actions + 1,
        };
    }

    private static SolverState? Native(SolverState state, Variant variant, int index, IReadOnlyList<LabelPlace> places, Ratio? pending)
    {
        if (state.Label >= places.Count || !places[state.Label].Place.IsWhole || variant.Rows[0].At < Counts.Zero)
        {
            return null;
        }

        Counts start = places[state.Label].Place;
        SolverState placed = state;
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
            PlacedRow free = new(placed.Last, action, CountGrid.LabelOf(at), at, index, placed.Moves, variant, variant.FootNamed,
                variant.WeightStated, false)
            { LastLabel = placed.Label - 1 };
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

        // what begins on the & before the beat does not begin on the beat: "1&2& polka" hops last
        double late = !rows[0].At.IsWhole && start.IsWhole ? 0.7 : 0;
        for (int i = 0; i < rows.Count; i++)
        {
            Counts offset = places[label + i].Place - start;
            same &= offset == rows[i].At - rows[0].At;
            whole &= places[label + i].Place.IsWhole;
        }

        return (same ? 0 : whole ? 0.15 : 0.2) + late;
    }
}
