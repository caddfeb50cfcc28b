using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A tag or restart that does not say where it is.</summary>
public sealed class InterruptionIncomplete : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/incomplete",
        Severity.Error,
        "This does not say {what}.",
        "A tag or restart needs the wall and the count. Without them every teacher puts it somewhere else.",
        """
        Where

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together

        wall 2: restart
        """,
        """
        Where

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together

        wall 2: after 4 restart, with count 4: step L together
        """,
        "trade rule R20");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Interruption interruption in context.Interruptions.Where(i => !context.IsDoubtful(i.Span)))
        {
            List<string> missing = [];
            if (interruption.Walls.Count == 0)
            {
                missing.Add("in which wall it happens");
            }

            bool onlyRestarts = interruption.Restarts && interruption.Acts.All(act => act is InterruptionAct.Restart or InterruptionAct.GoOn);
            if (onlyRestarts && interruption.AfterCounts is null)
            {
                missing.Add("after which count");
            }

            if (interruption.Acts.Count == 0)
            {
                missing.Add("what is danced there");
            }

            if (missing.Count > 0)
            {
                yield return TheRule.At(interruption.Span, ("what", Walks.Words.Join(missing)));
            }
        }
    }
}
