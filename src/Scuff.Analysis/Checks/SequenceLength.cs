using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A part's stated length against its sections.</summary>
public sealed class SequenceLength : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "sequence/length-differs",
        Severity.Error,
        "Part {part} is said to have {claimed}, but its sections have {length}.",
        "The order of a phrased dance is counted out on the music. A part of another length than stated puts every later part beside it.",
        """
        Lengths

        sequence: A B A

        part A 8 counts
        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        part B 8 counts
        section 1
        1-2  step R forward, touch L together
        3-4  step L back, touch R together
        5-6  step R forward, touch L together
        7-8  step L back, touch R together
        section 2
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        """,
        """
        Lengths

        sequence: A B A

        part A 8 counts
        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        part B 12 counts
        section 1
        1-2  step R forward, touch L together
        3-4  step L back, touch R together
        5-6  step R forward, touch L together
        7-8  step L back, touch R together
        section 2
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        """,
        "trade rule R30");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Part part in context.Dance.Parts)
        {
            if (part.ClaimedLength is { } claimed
                && claimed != part.Length
                && SectionShape.MissingTails(context.Dance, part) == 0)
            {
                string each = string.Join(" + ", part.Sections.Select(section => section.Length.ToString()));
                yield return TheRule.At(
                    part.Span,
                    ("part", part.Name),
                    ("claimed", Words.Of(claimed)),
                    ("length", part.Sections.Count > 1 ? each + " = " + part.Length.ToString() : Words.Of(part.Length)));
            }
        }
    }
}
