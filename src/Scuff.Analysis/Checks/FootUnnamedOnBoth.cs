using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Analysis.Checks;

/// <summary>A foot that is not named while both feet have weight.</summary>
public sealed class FootUnnamedOnBoth : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "weight/foot-unnamed-on-both",
        Severity.Question,
        "Count {count}: which foot? The weight is on both feet, so either could {what}.",
        "After a jump or a swivel no foot is free by itself: the next one has to be named.",
        """
        Both

        section 1
        1-2  jump feet apart, jump feet together
        3-4  step forward, touch L together
        5-6  step L back, touch R together
        7-8  step R to side, step L together
        """,
        """
        Both

        section 1
        1-2  jump feet apart, jump feet together
        3-4  step R forward, touch L together
        5-6  step L back, touch R together
        7-8  step R to side, step L together
        """,
        "ours");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (WeightFinding finding in context.Weights.Where(f => f.Trouble == WeightTrouble.FootUnnamed))
        {
            StepAction action = finding.Step.Action;
            yield return TheRule
                .At(finding.Step.Written.Span, ("count", finding.Step.Label), ("what", Words.Of(action with { Foot = ActingFoot.None })))
                .OnCount(finding.Step.Label)
                .WithFixes(
                    Name(finding.Step, action with { Foot = ActingFoot.Right }),
                    Name(finding.Step, action with { Foot = ActingFoot.Left }));
        }
    }

    private static Fix Name(WalkedStep step, StepAction action)
        => new("name the foot: " + Words.Of(action), new DanceEdit.ReplaceStep(step.Written, action), IsSafe: false);
}
