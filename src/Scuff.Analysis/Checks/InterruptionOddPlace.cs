using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A tag or restart at a place where music seldom breaks.</summary>
public sealed class InterruptionOddPlace : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/odd-place",
        Severity.Hint,
        "After {after} is an unusual place: music mostly breaks after {usual}. If you have counted it twice, leave it.",
        "Phrases of music end after a bar or two, so a break elsewhere is usually a miscount.",
        """
        Odd

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, step R together
        5-6  step L to side, touch R together
        7-8  step R to side, step L together

        wall 2: after 6 restart
        """,
        """
        Odd

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 2: after 4 restart
        """,
        "trade rule R23");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Interruption interruption in context.Interruptions)
        {
            if (interruption.AfterCounts is { } after
                && !InterruptionCutsFigure.IsUsual(context.Dance, interruption)
                && CutPlace.Of(context, interruption) is { } cut
                && !cut.CutsWithinABeat(context)
                && cut.CutMove is null)
            {
                string usual = context.Dance.BeatsPerBar == 3 ? "3, 6, 9 … counts" : "4, 8, 12 … counts";
                yield return TheRule.At(interruption.Span, ("after", Words.Of(after)), ("usual", usual));
            }
        }
    }
}
