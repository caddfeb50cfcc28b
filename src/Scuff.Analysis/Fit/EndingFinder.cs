using System.Globalization;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>
/// Finds how a plan finishes at the front with the music: with the ending the dance has, where that comes out, or else by leaving the last wall between two
/// sections and turning to the front in the plainest way, the last step on the last beat.
/// </summary>
internal static class EndingFinder
{
    // An ending is a section at most, or the rest of one and the last chord.
    private const int LongestEnding = 12;

    private const int SectionCounts = 8;

    public static FitEnding? Find(FitPlan plan, CountedMusic music, FitActs acts)
    {
        if (plan.Walls.Count == 0)
        {
            return null;
        }

        if (Hers(plan, music) is { } hers)
        {
            return hers;
        }

        if (plan.EndsAtFront)
        {
            return null;
        }

        // in the last wall, or if that has hardly begun, in the one before it
        return plan.Walls.Reverse().Take(2).Select(w => Made(plan, w, music, acts)).FirstOrDefault(e => e is not null);
    }

    /// <summary>A plan with an ending danced.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="wall">The wall that it ends in; nothing interrupts that one before.</param>
    /// <param name="counts">After so many counts of it.</param>
    /// <param name="body">The ending.</param>
    public static Timeline Danced(FitPlan plan, int wall, int counts, Section body)
        => Unroller.Unroll(plan.Dance, plan.Plan with { Stretches = [.. plan.Plan.Stretches.Where(s => s.Wall < wall), .. LastStretches(plan, wall, counts, body)] });

    private static FitEnding? Made(FitPlan plan, FitWall wall, CountedMusic music, FitActs acts)
    {
        DancedPart? part = acts.Danced.FirstOrDefault(p => string.Equals(p.Part.Name, wall.Part, StringComparison.OrdinalIgnoreCase));
        if (part is null || wall.Facing is not { } start || plan.Breaks.Any(b => b.Wall == wall.Number))
        {
            return null;
        }

        // the latest place from which there is still time to turn
        for (int after = Math.Min(wall.Danced, part.Length); after >= 0; after--)
        {
            int begins = wall.Begins + after;
            int left = music.Counts - begins;
            LeavingPlace place = part.Places[after];
            if (left is < 1 or > LongestEnding || !place.MayLeave || place.CutsFigure)
            {
                continue;
            }

            Foot free = place.Weight.FreeFoot() ?? place.Next ?? Foot.Right;
            Facing facing = start + place.Turn!.Value;
            Turn turn = Facing.Front - facing;
            if (Steps(turn, free, left) is { } actions)
            {
                // a half turn may go either way: what is told is the way it is danced
                Turn danced = actions.Aggregate(Turn.None, (sum, a) => sum + a.Turn);
                return new FitEnding(
                    wall.Number, after, begins, music.SecondsOf(begins), facing, danced, EndingOf(wall.Number, after, left, actions), IsHers: false);
            }
        }

        return null;
    }

    // Her own ending holds when it finishes at the front no later than the music, and no more than a section before.
    private static FitEnding? Hers(FitPlan plan, CountedMusic music)
    {
        if ((plan.Track.Ending ?? plan.Dance.Ending) is not { AfterCounts: { IsWhole: true } after, Body: { } body } ending)
        {
            return null;
        }

        FitWall? wall = ending.Wall is { } number ? plan.Walls.FirstOrDefault(w => w.Number == number) : plan.Walls[^1];
        int counts = after.Value.Floor;
        if (wall is null || wall.Number != plan.Walls[^1].Number || plan.Breaks.Any(b => b.Wall == wall.Number) || wall.Danced < counts)
        {
            return null;
        }

        Timeline danced = Danced(plan, wall.Number, counts, body);
        int over = plan.Begins + (int)Math.Ceiling(danced.Length.Value.ToDouble());
        if (over > music.Counts || over < music.Counts - SectionCounts || (danced.FacingAfter != Facing.Front && !ending.SaysFront))
        {
            return null;
        }

        TimedStretch end = danced.Stretches[^1];
        int begins = plan.Begins + end.Span.Start.Value.Floor;
        Turn turn = end.Facing is { } from ? Facing.Front - from : Turn.None;
        return new FitEnding(wall.Number, counts, begins, music.SecondsOf(begins), end.Facing, turn, ending, IsHers: true);
    }

    private static IEnumerable<PlanStretch> LastStretches(FitPlan plan, int wall, int counts, Section body)
    {
        if (counts > 0)
        {
            PlanStretch first = plan.Plan.Stretches.First(s => s.Wall == wall && s.StartsWall);
            yield return first with { Counts = new CountSpan(Counts.Zero, Counts.FromWhole(counts)) };
        }

        yield return new PlanStretch(StretchKind.Ending, wall, [body], "", new CountSpan(Counts.Zero, body.Length), default, StartsWall: false);
    }

    // The last of it falls on the last count; what is left before it is danced in place. Null when there are too few counts.
    private static StepAction[]? Steps(Turn turn, Foot free, int left)
    {
        Foot other = free.Other();
        bool isTowards = turn.Sign != 0 && (turn.Sign > 0) == (free == Foot.Right);
        Ratio amount = turn.Amount;
        StepAction[]? steps = (amount.Sign, isTowards) switch
        {
            (0, _) => [Step(free, Direction.Forward)],

            // less than a half to the side of the free foot is turned on the step; a half, and any to the other side, by step and pivot
            (_, true) when amount < 4 => [Step(free, Direction.Forward, turn)],

            // with two counts left, the pivot is what the music ends on
            _ when left == 2 => [Step(free, Direction.Forward), Pivot(free, other, amount)],
            _ => [Step(free, Direction.Forward), Pivot(free, other, amount), Stomp(free)],
        };
        int spare = left - steps.Length;
        if (spare < 0)
        {
            return null;
        }

        // sways in pairs keep the same foot free
        List<StepAction> before = [];
        while (before.Count + 2 <= spare)
        {
            before.AddRange([Sway(free), Sway(other)]);
        }

        before.AddRange(steps);
        while (before.Count < left)
        {
            before.Insert(0, StepAction.Hold);
        }

        return [.. before];
    }

    private static StepAction Step(Foot foot, Direction way, Turn turn = default)
        => new(ActionKind.Step, foot.ToActingFoot(), way, Contact.Flat, WeightEffect.Takes, turn);

    private static StepAction Sway(Foot foot) => new(ActionKind.Sway, foot.ToActingFoot(), Direction.Side, Contact.Flat, WeightEffect.Takes);

    // away from the foot that stepped
    private static StepAction Pivot(Foot stepped, Foot other, Ratio amount) => new(
        ActionKind.Pivot,
        other.ToActingFoot(),
        Direction.InPlace,
        Contact.Ball,
        WeightEffect.Takes,
        Turn.FromEighths(stepped == Foot.Right ? -amount : amount));

    private static StepAction Stomp(Foot foot) => new(ActionKind.Stomp, foot.ToActingFoot(), Direction.Together, Contact.Flat, WeightEffect.Takes);

    private static Ending EndingOf(int wall, int after, int left, StepAction[] actions)
    {
        WrittenMove[] moves = [.. actions.Select((a, i) => TagIdeas.Instead(Counts.FromWhole(i), a))];
        WrittenLine line = new()
        {
            Label = left == 1 ? "1" : string.Create(CultureInfo.InvariantCulture, $"1-{left}"),
            Counts = new CountSpan(Counts.Zero, Counts.FromWhole(left)),
            Moves = [.. moves],
            Span = default,
            Number = 0,
        };
        return new Ending
        {
            Wall = wall,
            AfterCounts = Counts.FromWhole(after),
            Body = new Section { Number = 1, Length = Counts.FromWhole(left), Lines = [line], Span = default },
            Claim = new FacingClaim(Facing.Front, Counts.FromWhole(left), default),
            Span = default,
            Line = 0,
            Verbatim = "",
        };
    }
}
