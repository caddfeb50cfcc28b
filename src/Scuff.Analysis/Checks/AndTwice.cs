using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>The same &amp; at the end of one section and the start of the next.</summary>
public sealed class AndTwice : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "count/and-twice",
        Severity.Error,
        "The {label} before count 1 is the same moment as the {other} that ends the section before it: only one of them can be danced.",
        "An & belongs to the end of the beat before it, also across sections. Written twice, it asks for two moves at once.",
        """
        One moment

        section 1
        1-2    step R to side, step L together
        3-4    step R to side, touch L together
        5-6    step L to side, step R together
        7&8&   touch L to side, step L together, touch R to side, step R together

        section 2
        &1-2   step L back, step R back, hold
        3-4    step L to side, touch R together
        5-6    step R to side, touch L together
        7-8    step L to side, touch R together
        """,
        """
        One moment

        section 1
        1-2    step R to side, step L together
        3-4    step R to side, touch L together
        5-6    step L to side, step R together
        7&8    touch L to side, step L together, touch R to side

        section 2
        &1-2   step R together, step L back, hold
        3-4    step R to side, touch L together
        5-6    step L to side, touch R together
        7-8    step R to side, step L together
        """,
        "trade rule R10");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Part part in context.Dance.Parts)
        {
            for (int i = 0; i < part.Sections.Count; i++)
            {
                bool wraps = i == 0;
                if (wraps && context.Dance.IsPhrased)
                {
                    continue;
                }

                Section before = part.Sections[wraps ? part.Sections.Count - 1 : i - 1];
                foreach (WrittenStep step in part.Sections[i].Steps.Where(step => step.Count.Place < Counts.Zero))
                {
                    Counts same = before.Length + step.Count.Place;
                    if (before.Steps.FirstOrDefault(other => other.Count.Place == same) is { } other)
                    {
                        yield return TheRule
                            .At(step.Span, ("label", step.Count.Label), ("other", CountGrid.LabelOf(same)))
                            .WithRelated(other.Span, "the same moment, at the end of " + Words.Of(before))
                            .OnCount(CountGrid.LabelOf(step.Count.Place));
                        break;
                    }
                }
            }
        }
    }
}
