using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>
/// Says on which counts of which wall the music stops, what is danced there, and what would meet it: a stomp on the hit before the silence where a foot is
/// set down together anyway, a hold in place of a touch or another gesture that bears no weight. Such a change leaves feet, weight and facing as they were.
/// </summary>
public static class AccentFinder
{
    /// <summary>The stops of a plan's music, in order.</summary>
    public static ValueList<FitAccent> Find(CountedMusic music, FitPlan plan)
    {
        ArgumentNullException.ThrowIfNull(music);
        ArgumentNullException.ThrowIfNull(plan);
        List<FitAccent> accents = [];
        for (int at = plan.Begins; at < music.Counts; at++)
        {
            if (music.IsStop(at) && (at == 0 || !music.IsStop(at - 1)))
            {
                int counts = 1;
                while (at + counts < music.Counts && music.IsStop(at + counts))
                {
                    counts++;
                }

                if (Over(music, plan, at, counts) is { } accent)
                {
                    accents.Add(accent);
                }
            }
        }

        return accents.ToValueList();
    }

    private static FitAccent? Over(CountedMusic music, FitPlan plan, int at, int counts)
    {
        Counts place = Counts.FromWhole(at - plan.Begins);
        TimedStretch? stretch = plan.Timeline.Stretches.FirstOrDefault(s => s.Span.Contains(place));
        if (stretch is null)
        {
            return null;
        }

        ValueList<TimedStep> danced = [.. plan.Timeline.Steps.Where(s => s.At >= place && s.At < place + Counts.One)];
        bool meets = stretch.Plan.Kind == StretchKind.Wait || danced.All(s => IsStill(s.Action) || IsHit(s.Action));
        (TimedStep Step, StepAction Action)? instead = meets ? null : Instead(danced, place);
        TimedStep? first = danced.Count > 0 ? danced[0] : null;
        return new FitAccent(
            stretch.Plan.Wall,
            stretch.Plan.Kind == StretchKind.Wall ? stretch.Plan.Name : "",
            stretch.Plan.Kind == StretchKind.Wall ? first?.Section.Number ?? 0 : 0,
            first?.CountLabel ?? "",
            at,
            music.SecondsOf(at),
            counts,
            danced,
            meets,
            instead?.Action,
            instead?.Step);
    }

    private static bool IsStill(StepAction action) => action.Kind is ActionKind.Hold or ActionKind.Arms;

    private static bool IsHit(StepAction action) => action.Kind is ActionKind.Stomp or ActionKind.Clap or ActionKind.Snap or ActionKind.Slap;

    // Only where there is one action on the count: figures are not taken apart.
    private static (TimedStep Step, StepAction Action)? Instead(ValueList<TimedStep> danced, Counts place)
    {
        if (danced.Count != 1 || danced[0].At != place || danced[0].Action.Turn.Sign != 0)
        {
            return null;
        }

        StepAction action = danced[0].Action;
        bool isTogether = action.Direction is Direction.Together or Direction.InPlace;
        return action.Kind switch
        {
            ActionKind.Step when isTogether => (danced[0], action with { Kind = ActionKind.Stomp, Contact = Contact.Flat }),
            ActionKind.Touch or ActionKind.Tap or ActionKind.Brush or ActionKind.Scuff => (danced[0], StepAction.Hold),
            _ => null,
        };
    }
}
