using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Timelines;

/// <summary>Dances a plan: every action at its count, with weight and facing carried through. Cost grows with the danced actions.</summary>
public static class Unroller
{
    /// <summary>
    /// The dance as danced. Words that could not be read make weight and facing unknown: the weight is known again after the next
    /// action that settles it, the facing never.
    /// </summary>
    public static Timeline Unroll(Dance dance, Plan plan)
    {
        List<Place> places = Lay(plan, out CountSpan[] spans);
        State[] before = new State[spans.Length];
        State[] after = new State[spans.Length];
        bool[] isDanced = new bool[spans.Length];
        State state = new(dance.Start, Facing.Front);
        TimedStep[] steps = new TimedStep[places.Count];
        for (int i = 0; i < steps.Length; i++)
        {
            Place place = places[i];
            State next = state.After(place.Line.Step.Action);
            if (!isDanced[place.Stretch])
            {
                isDanced[place.Stretch] = true;
                before[place.Stretch] = state;
            }

            after[place.Stretch] = next;
            steps[i] = ToStep(plan, place, state, next, spans[place.Stretch]);
            state = next;
        }

        TimedStretch[] stretches = new TimedStretch[spans.Length];
        State carried = new(dance.Start, Facing.Front);
        for (int i = 0; i < stretches.Length; i++)
        {
            State from = isDanced[i] ? before[i] : carried;
            carried = isDanced[i] ? after[i] : carried;
            stretches[i] = new TimedStretch(plan.Stretches[i], spans[i], from.Weight, from.Facing, carried.Weight, carried.Facing);
        }

        Counts length = spans.Length == 0 ? Counts.Zero : spans[^1].End;
        return new Timeline(new ValueList<TimedStep>(steps), new ValueList<TimedStretch>(stretches), length, plan.Walls);
    }

    // Every action at its danced place, in danced order: a pick-up slips in among the last actions of the stretch before it.
    private static List<Place> Lay(Plan plan, out CountSpan[] spans)
    {
        StretchScript script = new();
        spans = new CountSpan[plan.Stretches.Count];
        List<Place> places = new(plan.Stretches.Sum(s => script.CountOf(s.Sections)));
        Counts start = Counts.Zero;
        bool isOrdered = true;
        for (int i = 0; i < spans.Length; i++)
        {
            PlanStretch stretch = plan.Stretches[i];
            spans[i] = new CountSpan(start, start + stretch.Counts.Length);
            Counts shift = start - stretch.Counts.Start;
            foreach (StretchScript.Line line in script.LinesOf(stretch))
            {
                Counts at = line.Place + shift;
                isOrdered = isOrdered && (places.Count == 0 || places[^1].At <= at);
                places.Add(new Place(line, i, at, line.End + shift));
            }

            start = spans[i].End;
        }

        return isOrdered ? places : [.. places.OrderBy(p => p.At)];
    }

    private static TimedStep ToStep(Plan plan, Place place, State before, State after, CountSpan stretch)
    {
        Counts wholeEnd = place.At + place.Line.Step.Duration;
        Counts end = Counts.Max(place.At, Counts.Min(place.End, stretch.End));
        return new TimedStep
        {
            At = place.At,
            Whole = new CountSpan(place.At, Counts.Max(place.At, wholeEnd)),
            Part = new CountSpan(place.At, end),
            Stretch = place.Stretch,
            Wall = plan.Stretches[place.Stretch].Wall,
            Section = place.Line.Section,
            CountLabel = place.Line.Label,
            Written = place.Line.Step,
            Action = place.Line.Step.Action,
            WeightBefore = before.Weight,
            WeightAfter = after.Weight,
            FacingBefore = before.Facing,
            FacingAfter = after.Facing,
        };
    }

    /// <summary>Weight and facing between two actions.</summary>
    /// <param name="Weight">Where the weight is.</param>
    /// <param name="Facing">Where the dance faces; null when unknown.</param>
    internal readonly record struct State(Weight Weight, Facing? Facing)
    {
        /// <summary>Weight and facing after an action.</summary>
        public State After(StepAction action) => new(
            action.WeightAfter(Weight),
            action.Kind == ActionKind.Unknown ? null : Facing + action.Turn);
    }

    private readonly record struct Place(StretchScript.Line Line, int Stretch, Counts At, Counts End);
}
