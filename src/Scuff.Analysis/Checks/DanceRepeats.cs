using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A dance that ends on the foot it begins with.</summary>
public sealed class DanceRepeats : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/does-not-repeat",
        Severity.Error,
        "The dance does not repeat: it ends with the weight on {foot} ({since}), and count {count} of section 1 begins with {foot}.",
        "The last count leads into the first of the next wall. Whoever has danced one wall stands on the wrong foot for the second.",
        """
        Round

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, step R together
        """,
        """
        Round

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        "trade rule R07");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (WeightFinding finding in context.Weights.Where(f => f.Trouble == WeightTrouble.DoesNotRepeat))
        {
            Diagnostic complaint = WeightComplaint.Of(TheRule, finding);
            // the end is where it wants mending, so the end is where it is shown
            yield return finding.Giver is { } giver
                ? (complaint with { Span = giver.Written.Span, Related = default })
                    .OnCount(giver.Label)
                    .WithRelated(finding.Step.Written.Span, "the next wall begins here with " + Words.Of(finding.Foot))
                : complaint;
        }
    }
}
