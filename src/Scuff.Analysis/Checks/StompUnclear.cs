using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;
using Scuff.Steps;

namespace Scuff.Analysis.Checks;

/// <summary>A stomp without "up" whose foot moves next.</summary>
public sealed class StompUnclear : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/stomp-unclear",
        Severity.Warning,
        "Count {count}: a stomp takes the weight, but {foot} moves again on count {next}: write stomp up if it stays free.",
        "In some rooms a stomp takes the weight and in some it does not, so the sheet has to say it.",
        """
        Stomp

        section 1
        1-2  stomp R together, kick R forward
        3-4  step R together, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        """
        Stomp

        section 1
        1-2  stomp up R together, kick R forward
        3-4  step R together, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        "trade rule R18");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (WeightFinding finding in context.Weights.Where(f => f.Trouble == WeightTrouble.StompUnclear && f.Giver is not null))
        {
            WalkedStep stomp = finding.Giver!;
            yield return TheRule
                .At(stomp.Written.Span, ("count", stomp.Label), ("foot", Words.Of(finding.Foot)), ("next", finding.Step.Label))
                .OnCount(stomp.Label)
                .WithRelated(finding.Step.Written.Span, "the same foot moves here")
                .WithFixes(WeightComplaint.Replace(stomp, stomp.Action with { Effect = WeightEffect.Keeps }));
        }
    }
}
