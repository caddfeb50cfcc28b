using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>A step before its time is known: the ways to do it, the shortest first.</summary>
/// <param name="Step">The step as it usually would be.</param>
/// <param name="Choices">The ways, the shortest first.</param>
internal sealed record LessonDemand(LessonStep Step, ValueList<LessonChoice> Choices)
{
    // A second at the usual length is worth so much, so that whole numbers are fine enough.
    private const int Worth = 60;

    /// <summary>The shortest that is possible, in units.</summary>
    public int Least => Choices[0].Units;

    /// <summary>
    /// A step with its choices. A second more is worth the less, the longer the step is against its usual length, so that short time shortens everything alike;
    /// a step that may be left out is worth <see cref="LessonLimits.Importance"/> times its seconds.
    /// </summary>
    /// <param name="step">The step; times and lengths are filled in.</param>
    /// <param name="usual">How often it usually is; zero for what comes only with time left over.</param>
    /// <param name="ways">Times and seconds, the shortest first.</param>
    public static LessonDemand Of(LessonStep step, int usual, IEnumerable<(int Times, int Seconds)> ways)
    {
        (int Times, int Units)[] all = [.. ways.Select(w => (w.Times, UnitsOf(w.Seconds)))];
        int usualUnits = usual == 0 ? 0 : all.First(w => w.Times >= usual).Units;
        Ratio importance = LessonLimits.Importance(step.Kind);
        List<LessonChoice> choices = [];
        if (importance.Sign > 0)
        {
            choices.Add(new LessonChoice(0, 0, 0));
        }

        long value = 0;
        int before = 0;
        foreach ((int times, int units) in all)
        {
            value += before == 0
                ? (long)units * Worth * importance.Numerator / importance.Denominator
                : (long)(units - before) * Worth * usualUnits / units;
            before = units;
            choices.Add(new LessonChoice(times, units, value));
        }

        return new LessonDemand(
            step with { Times = usual, Usual = usual, Seconds = usualUnits * LessonLimits.Unit, UsualSeconds = usualUnits * LessonLimits.Unit, IsNeeded = importance.Sign == 0 },
            choices.ToValueList());
    }

    /// <summary>The step with one of its choices.</summary>
    public LessonStep With(LessonChoice choice) => Step with { Times = choice.Times, Seconds = choice.Units * LessonLimits.Unit };

    private static int UnitsOf(int seconds) => Math.Max(1, (seconds + LessonLimits.Unit - 1) / LessonLimits.Unit);
}
