using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>Sections of an unusual length that nothing on the sheet says.</summary>
public sealed class SectionLengths : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "count/section-length",
        Severity.Warning,
        "{section} has {length}, {expected}: state the length in its heading if it is meant.",
        "Music in four comes in eights and music in three in bars of three, and so does what dancers feel. A section that does not fit is usually a slip.",
        """
        Eight in three

        rhythm: waltz

        section 1
        1-2-3  step R forward, step L together, step R together
        4-5-6  step L back, step R together, step L together
        7-8    step R to side, step L together
        """,
        """
        Six in three

        rhythm: waltz

        section 1
        1-2-3  step R forward, step L together, step R together
        4-5-6  step L back, step R together, step L together
        """,
        "trade rule R02");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        foreach (Part part in dance.Parts)
        {
            for (int i = 0; i < part.Sections.Count; i++)
            {
                Section section = part.Sections[i];
                int length = section.Length.Value.Floor;
                string? expected = section.ClaimedLength is { } claimed
                    ? claimed < section.Length ? "but its heading says " + Words.Of(claimed) : null
                    : Expected(dance, part, section, length, i == part.Sections.Count - 1);
                if (expected is not null && section.Lines.Count > 0)
                {
                    string where = "Section " + Words.Of(section.Number);
                    yield return TheRule.At(section.Span, ("section", where), ("length", Words.Of(section.Length)), ("expected", expected));
                }
            }
        }
    }

    private static string? Expected(Dance dance, Part part, Section section, int length, bool isLast)
    {
        if (dance.BeatsPerBar == 3)
        {
            return length % 3 == 0 ? null : "which does not fill bars of three";
        }

        if (length > 8)
        {
            return length % 4 == 0 ? null : "which is more than an eight and does not fill bars of four";
        }

        if (length == 8)
        {
            return null;
        }

        bool isSaid = (SectionShape.Total(dance, part) is { } total && total == part.Length.Value.Floor) || (dance.IsPhrased && isLast && length % 4 == 0);
        return isSaid || SectionShape.MissingTail(dance, part, section).Any() ? null : "where an eight is usual";
    }
}
