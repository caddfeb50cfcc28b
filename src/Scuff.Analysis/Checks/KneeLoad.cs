using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.Analysis.Checks;

/// <summary>Many landings and deep bends close together.</summary>
public sealed class KneeLoad : ICheck
{
    /// <summary>The most landings and deep bends within eight counts below advanced. Design value: one every other count.</summary>
    public const int Most = 4;

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "body/knee-load",
        Severity.Hint,
        "Count {count}: from here on the knees take {number} jumps, hops, lunges or dips within eight counts; give an option without them.",
        "Each of them is several times the weight of a step. Many dancers are past the age for it, and will stand out instead of dancing.",
        """
        Hopscotch

        section 1
        1-4  jump forward, jump back, jump forward, jump back
        5-6  jump forward, jump back
        7-8  step R to side, step L together
        """,
        """
        Hopscotch

        section 1
        1-4  jump forward, jump back, jump forward, jump back
        5-6  step R to side, step L together
        7-8  step R to side, step L together
        """,
        "trade: body and floor, 3 and 6 (design value)");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (context.Dance.ClaimedLevel != Level.Advanced
            && context.Load.KneesInEight is { } peak
            && peak.Amount > Most
            && !context.IsDoubtful(peak.At.Written.Span)
            && !HasOption(peak.At))
        {
            yield return TheRule
                .At(peak.At.Written.Span, ("count", peak.At.CountLabel), ("number", Words.Of(peak.Amount.Floor)))
                .OnCount(peak.At.CountLabel);
        }
    }

    private static bool HasOption(TimedStep at) => at.Section.Lines.Any(line => line.Options.Any(option =>
        !option.Steps.Any(step => step.Action.Kind is ActionKind.Jump or ActionKind.Leap or ActionKind.Hop or ActionKind.Scoot or ActionKind.Lunge or ActionKind.Dip)));
}
