using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>Lines whose counts go back.</summary>
public sealed class OutOfOrderCounts : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "count/out-of-order",
        Severity.Error,
        "The line {line} stands after the line {before}: counts only go forward.",
        "A sheet is danced from top to bottom. Lines in another order are danced in another order.",
        """
        Swapped

        section 1
        1-2  step R to side, step L together
        5-6  step R to side, touch L together
        3-4  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        """
        Swapped

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """,
        "trade rule R01");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Section section in context.Dance.Sections.Concat(context.Dance.Tags.Select(tag => tag.Body)))
        {
            WrittenLine? before = null;
            foreach (WrittenLine line in section.Lines)
            {
                if (line.Places.Count == 0)
                {
                    continue;
                }

                Counts first = line.Places[0].Place;
                if (before is not null && first < before.Places[^1].Place && !DoubledCounts.IsDoubled(section, line))
                {
                    yield return TheRule
                        .At(line.LabelSpan.Length > 0 ? line.LabelSpan : line.Span, ("line", line.Label), ("before", before.Label))
                        .WithRelated(before.Span, "the line before")
                        .OnCount(CountGrid.LabelOf(first));
                }

                before = line;
            }
        }
    }
}
