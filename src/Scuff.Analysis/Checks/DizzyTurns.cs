using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>More turning in eight counts than easy dances should have.</summary>
public sealed class DizzyTurns : ICheck
{
    private static readonly Ratio Most = 8;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "turn/dizzy",
        Severity.Hint,
        "Count {count}: from here on {turn} full turns in eight counts make dancers dizzy; give an option without them.",
        "Below intermediate one full turn in eight counts is enough. Who feels dizzy stops, or falls; an option without the turn lets them stay in the line.",
        """
        Whirl

        level: improver

        section 1
        1-2  step R forward, pivot 1/2 left
        3-4  step R forward, pivot 1/2 left
        5-6  step R forward, pivot 1/2 left
        7-8  step R to side, step L together
        """,
        """
        Whirl

        level: improver

        section 1
        1-2  step R forward, pivot 1/2 left
        3-4  step R forward, pivot 1/2 left
        5-6  step R to side, step L together
        7-8  step R to side, step L together
        """,
        "trade: body and floor, 3 (common practice)");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (context.Dance.ClaimedLevel is < Level.Intermediate
            && context.Load.TurnInEight is { } peak
            && peak.Amount > Most
            && !context.IsDoubtful(peak.At.Written.Span)
            && !HasOption(peak.At))
        {
            yield return TheRule
                .At(peak.At.Written.Span, ("count", peak.At.CountLabel), ("turn", Words.Turns(peak.Amount)))
                .OnCount(peak.At.CountLabel);
        }
    }

    private static bool HasOption(TimedStep at) => at.Section.Lines.Any(line =>
        line.Steps.Any(step => step.Action.Turn.Sign != 0) && line.Options.Any(option => option.Steps.All(step => step.Action.Turn.Sign == 0)));
}
