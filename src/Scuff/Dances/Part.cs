using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>A part of a phrased dance; an ordinary dance has one part without a name.</summary>
/// <param name="Name">A, B, C, or an empty text.</param>
/// <param name="Sections">Its sections in order.</param>
/// <param name="Span">Its heading in the text.</param>
/// <param name="ClaimedLength">The length stated in its heading, or null.</param>
public sealed record Part(string Name, ValueList<Section> Sections, TextSpan Span, Counts? ClaimedLength = null)
{
    /// <summary>Counts of all its sections.</summary>
    public Counts Length
    {
        get
        {
            Counts sum = Counts.Zero;
            foreach (Section section in Sections)
            {
                sum += section.Length;
            }

            return sum;
        }
    }

    /// <summary>Where a section (by zero-based index) starts within the part.</summary>
    public Counts StartOf(int sectionIndex)
    {
        Counts sum = Counts.Zero;
        for (int i = 0; i < sectionIndex; i++)
        {
            sum += Sections[i].Length;
        }

        return sum;
    }
}
