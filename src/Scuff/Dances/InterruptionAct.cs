using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>What happens where the pattern breaks: one act of several in a row.</summary>
public abstract record InterruptionAct
{
    private InterruptionAct()
    {
    }

    /// <summary>Dance the named tag or bridge.</summary>
    /// <param name="Name">Name as written; empty when the dance has only one and she did not name it.</param>
    /// <param name="Times">How often, at least 1.</param>
    public sealed record PlayTag(string Name, int Times = 1) : InterruptionAct;

    /// <summary>Dance counts of the dance again.</summary>
    /// <param name="PartName">The part, or empty.</param>
    /// <param name="SectionNumber">The section, from 1.</param>
    /// <param name="Counts">Counts within the section.</param>
    public sealed record Quote(string PartName, int SectionNumber, CountSpan Counts) : InterruptionAct;

    /// <summary>Stand through so many counts.</summary>
    /// <param name="Length">How many.</param>
    public sealed record Wait(Counts Length) : InterruptionAct;

    /// <summary>Dance these moves.</summary>
    /// <param name="Body">The moves with their counts, as one section.</param>
    public sealed record Dance(Section Body) : InterruptionAct;

    /// <summary>Begin the dance again, as a new wall.</summary>
    public sealed record Restart : InterruptionAct;

    /// <summary>Go on from where the dance was left.</summary>
    public sealed record GoOn : InterruptionAct;
}
