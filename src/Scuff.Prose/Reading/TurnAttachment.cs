using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Gives a turn that is told by itself to moves that are placed already.</summary>
internal static class TurnAttachment
{
    public static SolverState? Back(SolverState state, Ratio eighths, double cost)
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

        // "step R, hold, turn 1/4 left": hardly made before the hold
        double extra = (target.Action.Turn.Sign != 0 ? 0.3 : 0) + (cost > 0 && above.Exists(r => r is { IsWith: false }) ? 0.4 : 0);
        if (above.Count == 0 && target.Action is { Kind: ActionKind.Bounce, Foot: ActingFoot.Both } && Shared(state, eighths) is SolverState bounced)
        {
            // "bounce both heels three times making a 1/2 turn left": the heels turn with every bounce
            return bounced with { Cost = state.Cost + cost, PendingTurn = null };
        }

        PlacedRow turned = target with { Action = Turned(target, eighths) };
        for (int i = above.Count - 1; i >= 0; i--)
        {
            turned = above[i] with { Previous = turned };
        }

        return state with { Last = turned, Cost = state.Cost + cost + extra, PendingTurn = null };
    }

    /// <summary>"Touch R to side four times turning 1/8 left each time": the turn on every action of the last move, or null when it has only
    /// one.</summary>
    public static SolverState? Each(SolverState state, Ratio eighths)
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

    /// <summary>A turn shared out evenly to the actions of the last move, or null when it has only one or turns already.</summary>
    private static SolverState? Shared(SolverState state, Ratio eighths)
    {
        int actions = 0;
        for (PlacedRow? row = state.Last; row is not null && row.MoveIndex == state.Moves - 1; row = row.Previous)
        {
            actions++;
        }

        return actions > 1 ? Each(state, eighths / actions) : null;
    }

    /// <summary>An action with a turn added. In a figure that goes sideways a turn into its way makes the step one forward.</summary>
    private static StepAction Turned(PlacedRow row, Ratio eighths)
    {
        StepAction action = row.Action;
        bool sideways = action is { Kind: ActionKind.Step, Direction: Direction.Side, Turn.Sign: 0 }
            && row.Variant?.Definition is { Rows.Count: > 1 } && (eighths == 2 || eighths == -2);
        Direction way = !sideways || action.Foot.ToFoot() is not Foot foot ? action.Direction
            : eighths.Sign > 0 == (foot == Foot.Right) ? Direction.Forward : Direction.Back;
        return action with { Turn = action.Turn + Turn.FromEighths(eighths), Direction = way };
    }

    /// <summary>"Bounce heels making a 1/2 turn left, weight on L": where a move of both feet ends.</summary>
    public static SolverState EndOn(SolverState state, Foot foot) => state.Last is { IsWith: false, Action.Foot: ActingFoot.Both } last
        ? state with
        {
            Last = last with
            {
                Action = last.Action with { Effect = foot == Foot.Left ? WeightEffect.ToLeft : WeightEffect.ToRight },
                WeightStated = true
            },
            Weight = foot.ToWeight(),
        }
        : state;

    /// <summary>The turn on the move that stands on a count, or null when none does.</summary>
    public static SolverState? OnCount(SolverState state, Ratio eighths, int count)
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
    public static SolverState? OnStep(SolverState state, Ratio eighths, int number)
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
    public static SolverState? Round(SolverState state, int eighths)
    {
        List<PlacedRow> walked = [];
        PlacedRow? row = state.Last;
        while (row is
            {
                IsWith: false,
                Action:
                {
                    Kind: ActionKind.Step, Effect: WeightEffect.Takes, Turn.Sign: 0, Direction: Direction.Forward or Direction.Back
            or Direction.Unstated
                }
            })
        {
            walked.Add(row);
            row = row.Previous;
        }

        if (walked.Count < 2)
        {
            return null;
        }

        int own = walked.FindIndex(r => r.MoveIndex != walked[0].MoveIndex);
        if (own > 1)
        {
            // the walks that were listed together, and no step before them
            row = walked[own];
            walked.RemoveRange(own, walked.Count - own);
        }

        PlacedRow? turned = row;
        for (int i = walked.Count - 1; i >= 0; i--)
        {
            turned = walked[i] with { Previous = turned, Action = walked[i].Action with { Turn = Turn.FromEighths((Ratio)eighths / walked.Count) } };
        }

        return state with { Last = turned };
    }
}
