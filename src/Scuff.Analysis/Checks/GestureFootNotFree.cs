using Scuff.Analysis.Checks.Walks;
using Scuff.Diagnostics;
using Scuff.Stance;

namespace Scuff.Analysis.Checks;

/// <summary>Touches, kicks and points by the foot that has the weight.</summary>
public sealed class GestureFootNotFree : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/gesture-not-free",
        Severity.Error,
        "Count {count}: {foot} cannot {what}, because the weight is on {foot} {since}; {other} is free.",
        "A foot that carries the dancer cannot kick, touch or point. Usually left and right were exchanged.",
        """
        Kick

        section 1
        1-2  step R to side, touch L together
        3-4  kick R forward, hold
        5-6  step L to side, touch R together
        7-8  step R to side, step L together
        """,
        """
        Kick

        section 1
        1-2  step R to side, touch L together
        3-4  kick L forward, hold
        5-6  step L to side, touch R together
        7-8  step R to side, step L together
        """,
        "trade rule R05");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (WeightFinding finding in context.Weights.Where(f => f.Trouble == WeightTrouble.GestureNotFree))
        {
            Diagnostic complaint = WeightComplaint.Of(TheRule, finding).WithFixes(WeightComplaint.Replace(
                finding.Step, finding.Step.Action with { Foot = finding.Foot.Other().ToActingFoot() }));
            foreach (WalkedStep follower in finding.Followers)
            {
                // one change of foot would not mend several gestures
                complaint = complaint.WithRelated(follower.Written.Span, "and here").WithFixes();
            }

            yield return complaint;
        }
    }
}
