using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;
using Scuff.Stance;

namespace Scuff.Analysis.Checks;

/// <summary>An unwind, swivel, twist, split or roll after which nobody knows where the weight is.</summary>
public sealed class EndWeightUnstated : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/end-unstated",
        Severity.Warning,
        "Count {count}: after {what} the weight could be on either foot; {foot} moves next, so say (weight on {standing}).",
        "These moves are made with both feet on the floor. Unless the sheet says where the weight ends, half the room starts the next section on the wrong foot.",
        """
        Unwind

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, step L together
        7-8  cross R over L, unwind 1/2 left
        """,
        """
        Unwind

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, step L together
        7-8  cross R over L, unwind 1/2 left (weight on L)
        """,
        "trade rule R19");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (WeightFinding finding in context.Weights.Where(f => f.Trouble == WeightTrouble.EndUnstated))
        {
            yield return TheRule
                .At(
                    finding.Step.Written.Span,
                    ("count", finding.Step.Label),
                    ("what", "the " + finding.Step.Action.Traits.Word.Replace('-', ' ')),
                    ("foot", Words.Of(finding.Foot)),
                    ("standing", Words.Of(finding.Foot.Other())))
                .OnCount(finding.Step.Label);
        }
    }
}
