using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;
using Scuff.Stance;

namespace Scuff.Analysis.Checks;

/// <summary>Hops and scoots by the free foot.</summary>
public sealed class FootNotStanding : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/foot-not-standing",
        Severity.Error,
        "Count {count}: {foot} cannot {what}, because {foot} is free: the weight is on {other}.",
        "A hop or a scoot is made by the foot that carries the dancer. To come down on the other foot is a leap or a step.",
        """
        Hop

        section 1
        1-2  step R to side, hitch L
        3-4  hop L, step L together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        """
        Hop

        section 1
        1-2  step R to side, hitch L
        3-4  hop R, step L together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """,
        "trade rule R04");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context) => context.Weights
        .Where(finding => finding.Trouble == WeightTrouble.FootNotStanding)
        .Select(finding => WeightComplaint.Of(TheRule, finding).WithFixes(
            WeightComplaint.Replace(finding.Step, finding.Step.Action with { Foot = finding.Foot.Other().ToActingFoot() })));
}
