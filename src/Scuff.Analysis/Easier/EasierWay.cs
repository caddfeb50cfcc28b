using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>An easier way to dance some counts of a section: same counts, same foot free afterwards, same wall.</summary>
public sealed record EasierWay
{
    /// <summary>The section, or the body of a tag.</summary>
    public required Section Section { get; init; }

    /// <summary>The counts it replaces, within the section.</summary>
    public required CountSpan Counts { get; init; }

    /// <summary>What is replaced.</summary>
    public required ValueList<WrittenMove> Replaces { get; init; }

    /// <summary>What is danced instead, by the counting of the section.</summary>
    public required ValueList<WrittenMove> Moves { get; init; }

    /// <summary>The places of its counts, in order.</summary>
    public required ValueList<Counts> Places { get; init; }

    /// <summary>What the replaced moves ask.</summary>
    public required MoveDemand Before { get; init; }

    /// <summary>What it asks instead.</summary>
    public required MoveDemand After { get; init; }

    /// <summary>
    /// How far from the others who dance the original it ends, in metres; at most <see cref="EasierFinder.MostAway"/>.
    /// </summary>
    public required double Away { get; init; }

    /// <summary>
    /// Whether it replaces more than the counts of the move that was asked about, so that the dancer is back with the others only
    /// at the end of those.
    /// </summary>
    public required bool IsWider { get; init; }

    /// <summary>The points of the search, fewer are better: few words, plain steps, beside the others all the way.</summary>
    public required int Points { get; init; }

    /// <summary>What makes it easier and what stays the same, the weightiest first.</summary>
    public ValueList<EasierReason> Reasons => EasierReason.Of(this);
}
