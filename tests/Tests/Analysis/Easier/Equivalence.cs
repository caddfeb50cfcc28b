using Scuff;
using Scuff.Analysis.Easier;
using Scuff.Analysis.Floor;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Tests.Analysis.Easier;

/// <summary>
/// Whether an option drops in, found out without the finder: the dance is danced on all its walls and tracks with the option in place of what
/// it replaces, and before and after it everybody must be on the same foot, at the same wall, and near each other.
/// </summary>
internal static class Equivalence
{
    /// <summary>What is wrong with an option; null when it drops in.</summary>
    public static string? Fault(Dance dance, Section section, StepOption option)
    {
        Dance with = Taken(dance, section, option);
        foreach ((Plan plan, Plan other) in PlansOf(dance).Zip(PlansOf(with)))
        {
            Timeline original = Unroller.Unroll(dance, plan);
            Timeline easier = Unroller.Unroll(with, other);
            if (original.Length != easier.Length || original.Walls != easier.Walls)
            {
                return "another length";
            }

            TimedStep[] here = [.. original.Steps.Where(step => !IsIn(step, section, option))];
            TimedStep[] there = [.. easier.Steps.Where(step => !step.Written.Span.Equals(Marked))];
            if (here.Length != there.Length)
            {
                return $"{there.Length} actions beside it instead of {here.Length}";
            }

            for (int i = 0; i < here.Length; i++)
            {
                if (here[i].At != there[i].At || here[i].Action != there[i].Action || here[i].WeightBefore != there[i].WeightBefore
                    || here[i].FacingBefore != there[i].FacingBefore)
                {
                    return $"count {here[i].At} of wall {here[i].Wall} is begun otherwise";
                }
            }

            foreach (TimedStep step in easier.Steps.Where(step => step.Written.Span.Equals(Marked)))
            {
                if (step.Action.Foot.ToFoot() is { } foot && step.Action.Traits.FootRule == FootRule.Free && step.WeightBefore.StandingFoot() == foot)
                {
                    return $"{step.Action} with the weight on that foot";
                }
            }
        }

        double away = Away(dance, section, option);
        return away > EasierFinder.MostAway + 0.01 ? $"ends {away:0.00} m away" : null;
    }

    // spans tell the option's actions from the others
    private static TextSpan Marked { get; } = new(int.MaxValue - 1, 1);

    private static bool IsIn(TimedStep step, Section section, StepOption option)
        => section.Steps.Any(written => ReferenceEquals(written, step.Written)) && option.Replaces.Contains(step.Written.Count.Place);

    private static IEnumerable<Plan> PlansOf(Dance dance) => dance.Tracks
        .Select(track => PlanBuilder.ForTrack(dance, track, withEnding: true))
        .Prepend(PlanBuilder.Plain(dance))
        .Prepend(Once(dance));

    // every tag too, though no wall may lead into it
    private static Plan Once(Dance dance)
    {
        Plan wall = PlanBuilder.OneWall(dance);
        return wall with
        {
            Stretches =
            [
                .. wall.Stretches,
                .. dance.Tags.Select(tag => new PlanStretch(StretchKind.Tag, wall.Walls, [tag.Body], tag.Name, new CountSpan(Counts.Zero, tag.Body.Length), default, false)),
            ],
        };
    }

    private static Dance Taken(Dance dance, Section section, StepOption option)
    {
        WrittenMove[] moves = [.. option.Moves.Select(move => move with { Steps = move.Steps.Select(step => step with { Span = Marked }).ToValueList() })];
        Section taken = section with
        {
            Lines =
            [
                .. section.Lines.Select(line => line with
                {
                    Moves = line.Moves.Where(move => move.Steps.Count == 0 || !option.Replaces.Contains(move.Steps[0].Count.Place)).ToValueList(),
                }),
                section.Lines[0] with { Moves = moves.ToValueList() },
            ],
        };
        taken = taken with
        {
            // in the order of their places
            Lines = taken.Lines.Where(line => line.Moves.Any(move => move.Steps.Count > 0))
                .SelectMany(line => line.Moves.Where(move => move.Steps.Count > 0).Select(move => line with { Moves = [move] }))
                .OrderBy(line => line.Moves[0].Steps[0].Count.Place).ToValueList(),
        };
        return dance with
        {
            Parts = dance.Parts.Select(part => part with { Sections = part.Sections.Select(s => ReferenceEquals(s, section) ? taken : s).ToValueList() }).ToValueList(),
            Tags = dance.Tags.Select(tag => ReferenceEquals(tag.Body, section) ? tag with { Body = taken } : tag).ToValueList(),
        };
    }

    // Two dancers side by side: how far apart are they when the option is over? Each from where she stood when it began.
    private static double Away(Dance dance, Section section, StepOption option)
    {
        Dance with = Taken(dance, section, option);
        FloorPoint here = Way(dance, step => IsIn(step, section, option));
        FloorPoint there = Way(with, step => step.Written.Span.Equals(Marked));
        return (here - there).Length;
    }

    private static FloorPoint Way(Dance dance, Func<TimedStep, bool> isIn)
    {
        Timeline timeline = Unroller.Unroll(dance, Once(dance));
        FloorPath path = FloorSimulator.Simulate(timeline, DancerSize.Default);
        int first = timeline.Steps.ToList().FindIndex(step => isIn(step));
        int last = timeline.Steps.ToList().FindLastIndex(step => isIn(step));
        FloorPoint start = first == 0 ? path.Start.Body : path.Keys[first - 1].Body;
        return path.Keys[last].Body - start;
    }
}
