using Scuff.Analysis.Loads;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Cautions;

/// <summary>Finds what to take care of, in the order of <see cref="CautionKind"/>, at most one of each kind.</summary>
internal static class CautionFinder
{
    /// <summary>The cautions of a dance; none for a dance that walks.</summary>
    public static ValueList<Caution> Of(DanceAnalysis analysis)
    {
        DanceLoad load = analysis.Load;
        Timeline timeline = analysis.OnceTimeline;
        List<Caution> found = [];
        AddMany(CautionKind.KneeTwist, load.Twists, CautionLimits.Twists);
        AddPeak(CautionKind.OneFootSpin, load.TurnOnOneFoot, CautionLimits.OneFoot);
        AddPeak(CautionKind.ManyTurns, load.TurnInEight, CautionLimits.InEight);
        AddMany(CautionKind.Jumps, load.Landings, CautionLimits.Landings);
        AddMany(CautionKind.Kneel, load.Bends, CautionLimits.Bends);
        AddMany(CautionKind.Stomps, load.Stomps, CautionLimits.Stomps);
        if (analysis.Tempo is { } tempo && load.StepsInSix is { } steps
            && tempo.PerSecond(steps.Amount, steps.Counts) is var rate && rate > CautionLimits.StepsInSecond)
        {
            found.Add(new Caution(CautionKind.FastFeet, rate, DancePlace.Of(steps.At, timeline)));
        }

        if (analysis.FloorUse is { IsCertain: true, Farthest: { IsTooFar: true } reach })
        {
            Timeline danced = analysis.Dance.IsPhrased ? analysis.PlainTimeline : analysis.WallTimeline;
            Ratio metres = new((int)Math.Round(reach.Metres * 10), 10);
            found.Add(new Caution(CautionKind.SharedFloor, metres, DancePlace.Of(reach.At, danced)) { Way = reach.Way });
        }

        return found.ToValueList();

        void AddMany(CautionKind kind, ValueList<TimedStep> steps, int least)
        {
            if (steps.Count >= least)
            {
                found.Add(new Caution(kind, steps.Count, DancePlace.Of(steps[0], timeline)));
            }
        }

        void AddPeak(CautionKind kind, LoadPeak? peak, Ratio most)
        {
            if (peak is not null && peak.Amount > most)
            {
                found.Add(new Caution(kind, peak.Amount, DancePlace.Of(peak.At, timeline)));
            }
        }
    }
}
