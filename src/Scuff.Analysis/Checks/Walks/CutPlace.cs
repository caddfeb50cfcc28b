using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>Where an interruption leaves a part: the section, and the place within it.</summary>
/// <param name="Part">The part.</param>
/// <param name="Section">The section in which the last danced count lies.</param>
/// <param name="Place">The first place that is not danced, in the section's counting (its length, at its end).</param>
internal sealed record CutPlace(Part Part, Section Section, Counts Place)
{
    /// <summary>Finds it; null when the interruption is at the end of a wall, or beyond it, or its part is not known.</summary>
    public static CutPlace? Of(CheckContext context, Interruption interruption)
    {
        if (interruption.AfterCounts is not { } after || after <= Counts.Zero || context.PartOf(interruption) is not { } part || after >= part.Length)
        {
            return null;
        }

        Counts start = Counts.Zero;
        foreach (Section section in part.Sections)
        {
            if (after <= start + section.Length)
            {
                return new CutPlace(part, section, after - start);
            }

            start += section.Length;
        }

        return null;
    }

    /// <summary>Whether a figure is cut between its labels (1&amp;2), or in the middle of a count.</summary>
    public bool CutsWithinABeat(CheckContext context) => !Place.IsWhole || context.StepsOf(Section).Any(step =>
        step.Written.Count.Place >= Place
        && step.Move.Steps.Any(other => other.Count.Place < Place && !other.Count.Place.IsWhole && other.Count.Place > Place - Counts.One)
        && step.Written.Count.Place < Place + Counts.One);

    /// <summary>The move that goes on over the cut, or null.</summary>
    public WrittenMove? CutMove => Section.Lines.SelectMany(line => line.Moves).FirstOrDefault(move =>
        move.Steps.Any(step => step.Count.Place < Place) && move.Steps.Any(step => step.Count.Place >= Place));
}
