using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>Steps that come faster than feet can go at the stated tempo.</summary>
public sealed class QuickFeet : ICheck
{
    /// <summary>The most weight changes a second over six counts below advanced.</summary>
    public static Ratio MostBelowAdvanced { get; } = new(7, 2);

    /// <summary>The most weight changes a second over two counts, whoever dances.</summary>
    public static Ratio MostOfAll { get; } = 5;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "feet/too-quick",
        Severity.Warning,
        "Count {count}: from here on there are {rate} weight changes a second{tempo}; {most}.",
        "Running locks at 120 beats a minute make four a second, and for a few beats only. Beyond five nobody keeps the feet under the body, and below advanced more than three and a half is too much for more than four beats.",
        """
        Sprint

        section 1
        1&2&3&4& run R, L, R, L, R, L, R, L
        5-6  step R to side, step L together
        7-8  step R to side, step L together

        track: "Downhill" by The Ferry Queue, 200 bpm, intro 32
        """,
        """
        Sprint

        section 1
        1&2  run R, L, R
        3-4  rock L forward, recover
        5-6  step L back, hold
        7-8  touch R together, hold

        track: "Downhill" by The Ferry Queue, 200 bpm, intro 32
        """,
        "trade: body and floor, 3 (design value)");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (context.Tempo is not { } tempo)
        {
            yield break;
        }

        if (context.Load.StepsInTwo is { } burst && tempo.PerSecond(burst.Amount, burst.Counts) is var fast && fast > MostOfAll)
        {
            if (!context.IsDoubtful(burst.At.Written.Span))
            {
                yield return Tell(burst, fast, tempo, "nobody dances more than 5");
            }
        }
        else if (context.Dance.ClaimedLevel != Level.Advanced
            && context.Load.StepsInSix is { } run
            && tempo.PerSecond(run.Amount, run.Counts) is var rate && rate > MostBelowAdvanced
            && !context.IsDoubtful(run.At.Written.Span))
        {
            yield return Tell(run, rate, tempo, "for six counts in a row 3.5 is the most below advanced");
        }
    }

    private static Diagnostic Tell(LoadPeak peak, Ratio rate, DancedTempo tempo, string most) => TheRule
        .At(peak.At.Written.Span, ("count", peak.At.CountLabel), ("rate", Words.Tenths(rate)), ("tempo", Words.Of(tempo)), ("most", most))
        .OnCount(peak.At.CountLabel);
}
