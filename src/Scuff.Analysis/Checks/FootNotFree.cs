using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>Steps by the foot that has the weight.</summary>
public sealed class FootNotFree : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/foot-not-free",
        Severity.Error,
        "Count {count}: {foot} cannot {what}, because the weight is on {foot} {since}.",
        "Only the free foot can step. Dancers who meet such a step add one of their own, and the room is on two feet.",
        """
        Weight

        section 1
        1-2  step R to side, step L together
        3-4  step L to side, touch R together
        5-6  step R to side, step L together
        7-8  step R to side, step L together
        """,
        """
        Weight

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, step L together
        7-8  step R to side, step L together
        """,
        "trade rule R04");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context) => context.Weights
        .Where(finding => finding.Trouble == WeightTrouble.FootNotFree)
        .Select(finding => WeightComplaint.Of(TheRule, finding));
}
