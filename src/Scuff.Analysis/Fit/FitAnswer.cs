using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>How a dance fits a track.</summary>
public sealed record FitAnswer
{
    /// <summary>The dance.</summary>
    public required Dance Dance { get; init; }

    /// <summary>The track in counts of the dance.</summary>
    public required CountedMusic Music { get; init; }

    /// <summary>The best plan with no, one, two and so on interruptions; each pays less than the one before. Empty when nothing could be fitted.</summary>
    public ValueList<FitPlan> Plans { get; init; } = [];

    /// <summary>The plan that pays least; null when nothing could be fitted.</summary>
    public FitPlan? Kindest => Plans.Count == 0 ? null : Plans[^1];

    /// <summary>The dance as she wrote it for this track, or null when she did not.</summary>
    public FitPlan? AsWritten { get; init; }

    /// <summary>Beats of the music that a count takes.</summary>
    public required Ratio BeatsPerCount { get; init; }

    /// <summary>What a person should know of it.</summary>
    public ValueList<FitRemark> Remarks { get; init; } = [];
}
