using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>Counts of a section that no line has.</summary>
public sealed class MissingCounts : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "count/missing",
        Severity.Error,
        "{section} has nothing on {counts}: write what is danced there, or hold.",
        "A count with nothing printed leaves the room to guess, and everybody guesses differently. A hold is a move: print it.",
        """
        Gap

        section 1
        1-2  step R to side, step L together
        3&4  shuffle R forward
        5-6  rock L forward, recover
        8    step L together
        """,
        """
        Gap

        section 1
        1-2  step R to side, step L together
        3&4  shuffle R forward
        5-6  rock L forward, recover
        7-8  step L together, hold
        """,
        "trade rule R01");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Part part in context.Dance.Parts)
        {
            foreach (Section section in part.Sections)
            {
                List<int> missing = [.. Gaps(section), .. SectionShape.MissingTail(context.Dance, part, section)];
                if (missing.Count > 0)
                {
                    yield return Tell(section, "Section " + Words.Of(section.Number), missing);
                }
            }
        }

        foreach (Tag tag in context.Dance.Tags)
        {
            List<int> missing = [.. Gaps(tag.Body)];
            if (missing.Count > 0)
            {
                yield return Tell(tag.Body, (tag.IsBridge ? "The bridge " : "The tag ") + tag.Name, missing);
            }
        }
    }

    /// <summary>Whole counts before the section's end that no line covers, from 1.</summary>
    internal static IEnumerable<int> Gaps(Section section)
    {
        if (section.Lines.Count == 0)
        {
            yield break;
        }

        for (int count = 1; count <= section.Length.Value.Floor; count++)
        {
            Counts place = Counts.FromWhole(count - 1);
            if (!section.Lines.Any(line => line.Counts.Contains(place)))
            {
                yield return count;
            }
        }
    }

    private static Diagnostic Tell(Section section, string name, List<int> missing)
    {
        // shown at the line after the gap, or at the last line when the end is missing
        WrittenLine at = section.Lines.Where(line => line.Counts.Start >= Counts.FromWhole(missing[0])).FirstOrDefault(section.Lines[^1]);
        TextSpan span = at.LabelSpan.Length > 0 ? at.LabelSpan : at.Span;
        string counts = (missing.Count == 1 ? "count " : "counts ") + Words.Join([.. missing.Select(Words.Of)]);
        return TheRule
            .At(span, ("section", name), ("counts", counts))
            .OnCount(Words.Of(missing[0]));
    }
}
