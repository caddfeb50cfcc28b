using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Loads;

/// <summary>Measures the load of a timeline. Cost grows with its actions.</summary>
internal static class LoadMeter
{
    private static readonly Ratio Two = 2;
    private static readonly Ratio Six = 6;
    private static readonly Ratio Eight = 8;

    /// <summary>The load of a timeline.</summary>
    public static DanceLoad Of(Timeline timeline)
    {
        List<Part> turns = [];
        List<Part> shares = [];
        List<Part> changes = [];
        List<Part> knees = [];
        List<TimedStep> jumps = [];
        List<TimedStep> landings = [];
        List<TimedStep> bends = [];
        List<TimedStep> twists = [];
        List<TimedStep> stomps = [];
        LoadPeak? single = null;
        foreach (TimedStep step in timeline.Steps)
        {
            Ratio turn = step.Action.Turn.Amount;
            if (turn.Sign > 0)
            {
                Ratio lasts = Lasts(step);
                turns.Add(new Part(turn, step));
                shares.Add(new Part(lasts > Two ? turn * Two / lasts : turn, step));
                single = Higher(single, turn / lasts, 1, step);
            }

            if (ChangesWeight(step))
            {
                changes.Add(new Part(1, step));
            }

            switch (step.Action.Kind)
            {
                case ActionKind.Jump or ActionKind.Leap:
                    jumps.Add(step);
                    landings.Add(step);
                    knees.Add(new Part(1, step));
                    break;
                case ActionKind.Hop or ActionKind.Scoot:
                    landings.Add(step);
                    knees.Add(new Part(1, step));
                    break;
                case ActionKind.Lunge or ActionKind.Dip:
                    bends.Add(step);
                    knees.Add(new Part(1, step));
                    break;
                case ActionKind.Stomp:
                    stomps.Add(step);
                    break;
                case var kind when IsTwist(kind):
                    twists.Add(step);
                    break;
                default:
                    break;
            }
        }

        return new DanceLoad
        {
            TurnInOne = single,
            TurnInTwo = OneWay(shares, Two),
            TurnInEight = OneWay(turns, Eight),
            TurnOnOneFoot = Spin(timeline),
            StepsInTwo = Peak(changes, Two),
            StepsInSix = Peak(changes, Six),
            KneesInEight = Peak(knees, Eight),
            Jumps = jumps.ToValueList(),
            Landings = landings.ToValueList(),
            Bends = bends.ToValueList(),
            Twists = twists.ToValueList(),
            Stomps = stomps.ToValueList(),
        };
    }

    /// <summary>Whether the body turns on the foot that bears the weight, and nothing on the floor helps it (as a paddle's press does).</summary>
    public static bool TurnsOnOneFoot(TimedStep step) => step.Action.Turn.Sign != 0
        && step.WeightAfter == step.WeightBefore
        && step.WeightBefore.StandingFoot() is { } standing
        && step.Action.Kind switch
        {
            ActionKind.Pivot or ActionKind.Turn => step.Action.Foot.ToFoot() is not { } foot || foot == standing,
            ActionKind.Hitch or ActionKind.Hook or ActionKind.Flick or ActionKind.Kick or ActionKind.Ronde => true,
            _ => false,
        };

    /// <summary>How long a turn may take: an action between two counts still has the beat it stands in.</summary>
    private static Ratio Lasts(TimedStep step) => step.Part.Length.Value < 1 ? 1 : step.Part.Length.Value;

    /// <summary>Whether a step moves the weight from one foot to the other, or shares it.</summary>
    public static bool ChangesWeight(TimedStep step) => step.WeightAfter != step.WeightBefore
        && step.WeightAfter != Weight.Unknown
        && step.WeightBefore != Weight.Unknown;

    private static bool IsTwist(ActionKind kind) => kind is ActionKind.Swivel or ActionKind.SwivelHeels or ActionKind.SwivelToes
        or ActionKind.SwivelHeel or ActionKind.SwivelToe or ActionKind.Swivet or ActionKind.Applejack or ActionKind.Twist
        or ActionKind.Grind or ActionKind.Unwind;

    // What turns back makes nobody dizzy: each way is summed by itself, so that more turn is never less.
    private static LoadPeak? OneWay(List<Part> parts, Ratio counts)
    {
        LoadPeak? right = Peak(parts.FindAll(part => part.At.Action.Turn.Sign > 0), counts);
        LoadPeak? left = Peak(parts.FindAll(part => part.At.Action.Turn.Sign < 0), counts);
        return right is null || left?.Amount > right.Amount ? left : right;
    }

    // The most within so many counts, from each action on.
    private static LoadPeak? Peak(List<Part> parts, Ratio counts)
    {
        LoadPeak? peak = null;
        Ratio sum = 0;
        int end = 0;
        for (int i = 0; i < parts.Count; i++)
        {
            Counts until = parts[i].At.At + Counts.FromRatio(counts);
            while (end < parts.Count && parts[end].At.At < until)
            {
                sum += parts[end].Amount;
                end++;
            }

            peak = Higher(peak, sum, counts, parts[i].At);
            sum -= parts[i].Amount;
        }

        return peak;
    }

    private static LoadPeak Higher(LoadPeak? peak, Ratio amount, Ratio counts, TimedStep at)
        => peak is null || amount > peak.Amount ? new LoadPeak(amount, counts, at) : peak;

    // Turns on the same foot with no weight change between them are one spin.
    private static LoadPeak? Spin(Timeline timeline)
    {
        LoadPeak? peak = null;
        TimedStep? first = null;
        Ratio sum = 0;
        foreach (TimedStep step in timeline.Steps)
        {
            if (TurnsOnOneFoot(step))
            {
                first ??= step;
                sum += step.Action.Turn.Amount;
                peak = Higher(peak, sum, step.At.Value - first.At.Value + Lasts(step), first);
            }
            else if (step.WeightAfter != step.WeightBefore || step.Action.Traits.MovesFoot)
            {
                first = null;
                sum = 0;
            }
        }

        return peak;
    }

    private readonly record struct Part(Ratio Amount, TimedStep At);
}
