using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A section that begins with the foot on which the one before ends.</summary>
public sealed class SectionHandOver : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/section-hand-over",
        Severity.Error,
        "{section} begins with {foot} on count {count}, but the section before it ends with the weight on {foot} ({since}).",
        "Sections are taught one by one, so this is where a wrong foot hides longest: each is right alone and they do not join.",
        """
        Joint

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together

        section 2
        1-2  step L forward, touch R together
        3-4  step R back, touch L together
        5-6  step L forward, touch R together
        7-8  step R back, step L together
        """,
        """
        Joint

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, step R together

        section 2
        1-2  step L forward, touch R together
        3-4  step R back, touch L together
        5-6  step L forward, touch R together
        7-8  step R back, step L together
        """,
        "trade rule R06");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context) => context.Weights
        .Where(finding => finding.Trouble == WeightTrouble.HandOver)
        .Select(finding => WeightComplaint.Of(TheRule, finding));
}
