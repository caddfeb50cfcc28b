using Scuff.Analysis.Loads;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.Analysis.Effort;

/// <summary>
/// What a dance asks of a body, in METs: multiples of what the body spends at rest. Equal by value.
/// </summary>
/// <remarks>
/// The anchors are of the 2011 Compendium of Physical Activities (Ainsworth and others, Med Sci Sports Exerc 43:1575–1581): 3.0 for slow ballroom dances (code
/// 03040), 5.0 for low impact aerobic dance (03020), 7.3 for high impact (03021), and no more than the 7.8 it gives vigorous folk, line and country dances (03031).
/// How a dance lies between them is ours: by what its feet do in a minute, and by its landings. It is an average of adults, never one person's figure, and meant to
/// put dances in order; the 2024 Compendium measured anew, and has a table of its own for people of 60 and more.
/// </remarks>
/// <param name="Tenths">Tenths of a MET.</param>
public sealed record DanceEffort(int Tenths)
{
    private const int Slow = 30;
    private const int LowImpact = 50;
    private const int HighImpact = 73;
    private const int Most = 78;

    // A slow waltz has about one weight change a count at 90 counts a minute and few dances have less than 60; low impact classes go to music of 120 to 130
    // beats a minute with one a beat (trade: music, tempo table; the pairing is ours).
    private const double SlowChanges = 70;
    private const double LowImpactChanges = 125;

    // a touch, a kick or a lifted knee moves one leg and not the body (ours)
    private const double FreeFoot = 0.6;

    // a landing on every fourth count is what makes a class one of high impact (ours)
    private const double HighImpactLandings = 0.25;

    // counts a minute where nobody states a tempo, as lessons take it
    private const double AssumedTempo = Lessons.LessonLimits.AssumedTempo;

    /// <summary>The effort of a dance at its fastest stated tempo; at a usual one where it states none.</summary>
    /// <param name="analysis">The dance.</param>
    public static DanceEffort Of(DanceAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        Timeline timeline = analysis.WallTimeline;
        double counts = Math.Max(1, timeline.Length.Value.ToDouble());
        double tempo = analysis.Tempo?.CountsPerMinute.ToDouble() ?? AssumedTempo;
        double changes = timeline.Steps.Sum(Work) / counts * tempo;
        double landings = timeline.Steps.Count(s => s.Action.Kind is ActionKind.Jump or ActionKind.Leap or ActionKind.Hop or ActionKind.Scoot) / counts;
        double walked = Slow + ((LowImpact - Slow) * (changes - SlowChanges) / (LowImpactChanges - SlowChanges));
        double jumped = (HighImpact - LowImpact) * Math.Min(1, landings / HighImpactLandings);
        return new DanceEffort((int)Math.Round(Math.Clamp(walked + jumped, Slow, Most)));
    }

    private static double Work(TimedStep step)
        => LoadMeter.ChangesWeight(step) ? 1 : step.Action.Kind is ActionKind.Hold or ActionKind.Unknown ? 0 : FreeFoot;
}
