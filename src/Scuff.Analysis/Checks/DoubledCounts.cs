using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>A count that two lines of a section have.</summary>
public sealed class DoubledCounts : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "count/doubled",
        Severity.Error,
        "Count {count} is already taken by the line {line}: one count has one line.",
        "Two lines on one count cannot both be danced, and every count after them is in doubt.",
        """
        Twice

        section 1
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        4-6  step L to side, step R together, step L to side
        7-8  step R back, step L together
        """,
        """
        Twice

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
            Dictionary<Counts, WrittenLine> taken = [];
            foreach (WrittenLine line in section.Lines)
            {
                Counts? doubled = null;
                foreach (WrittenCount count in line.Places)
                {
                    if (taken.TryAdd(count.Place, line) || ReferenceEquals(taken[count.Place], line) || doubled is not null)
                    {
                        continue;
                    }

                    doubled = count.Place;
                }

                if (doubled is { } place)
                {
                    WrittenLine first = taken[place];
                    string label = CountGrid.LabelOf(place);
                    yield return TheRule
                        .At(line.LabelSpan.Length > 0 ? line.LabelSpan : line.Span, ("count", label), ("line", first.Label))
                        .WithRelated(first.Span, "count " + label + " is here too")
                        .OnCount(label);
                }
            }
        }
    }

    /// <summary>Whether a line has a count that an earlier one has.</summary>
    internal static bool IsDoubled(Section section, WrittenLine line) => section.Lines
        .TakeWhile(other => !ReferenceEquals(other, line))
        .Any(other => other.Places.Any(a => line.Places.Any(b => b.Place == a.Place)));
}
