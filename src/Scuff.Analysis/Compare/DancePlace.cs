namespace Scuff.Analysis.Compare;

/// <summary>Where in a dance something stands: a section of a part, or a tag. Equal by value.</summary>
/// <param name="PartName">The part of a phrased dance; empty for an ordinary dance and for a tag.</param>
/// <param name="Section">Number of the section in its part, from 1; 0 for a tag.</param>
/// <param name="TagName">Name of the tag; null for a section.</param>
public sealed record DancePlace(string PartName, int Section, string? TagName = null)
{
    /// <summary>Whether it is a tag or bridge.</summary>
    public bool IsTag => TagName is not null;
}
