using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A tag or restart after more counts than a wall has.</summary>
public sealed class InterruptionBeyondWall : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/beyond-wall",
        Severity.Error,
        "This is to happen after {after}, but {wall} has only {length}.",
        "The place does not exist, so nobody can dance it.",
        """
        Too far

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, step L together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 2: after 12 restart
        """,
        """
        Too far

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, step L together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 2: after 4 restart
        """,
        "trade rule R20");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Interruption interruption in context.Interruptions)
        {
            if (interruption.AfterCounts is { } after && context.PartOf(interruption) is { } part && after > part.Length)
            {
                yield return TheRule.At(
                    interruption.Span,
                    ("after", Words.Of(after)),
                    ("wall", part.Name.Length == 0 ? "a wall" : "part " + part.Name),
                    ("length", Words.Of(part.Length)));
            }
        }
    }
}
