using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>What is danced at an act.</summary>
public abstract record FitContent
{
    private FitContent()
    {
    }

    /// <summary>The dance begins again.</summary>
    /// <param name="Change">The last step before it is danced differently, or null.</param>
    public sealed record Again(ChangedCounts? Change) : FitContent;

    /// <summary>A tag of the dance, or one made for it.</summary>
    /// <param name="Tag">The tag.</param>
    /// <param name="IsMade">Whether it is not in the dance yet.</param>
    public sealed record Tagged(Tag Tag, bool IsMade) : FitContent;

    /// <summary>Counts of the dance once more.</summary>
    /// <param name="PartName">The part; empty for an ordinary dance.</param>
    /// <param name="Section">The section, from 1.</param>
    /// <param name="Counts">Counts within the section.</param>
    public sealed record Quoted(string PartName, int Section, CountSpan Counts) : FitContent;

    /// <summary>Everybody stands still.</summary>
    /// <param name="Length">For so many counts.</param>
    public sealed record Stands(int Length) : FitContent;
}
