using Scuff.Dances;
using Scuff.Timelines;

namespace Scuff.Analysis.Fit;

/// <summary>A way to dance a dance to a track, from its first count to the end of the music.</summary>
public sealed record FitPlan
{
    /// <summary>All it pays, in points.</summary>
    public required int Price { get; init; }

    /// <summary>What it pays for, one by one; they add up to <see cref="Price"/>.</summary>
    public required ValueList<FitItem> Items { get; init; }

    /// <summary>How many interruptions it has: restarts, tags and holds, each time counted.</summary>
    public required int Interruptions { get; init; }

    /// <summary>Whether no plan with as few interruptions is cheaper; false for a plan as she wrote it, or when the search was given up.</summary>
    public required bool IsProven { get; init; }

    /// <summary>The count of the music on which the dance begins.</summary>
    public required int Begins { get; init; }

    /// <summary>When that is, in seconds.</summary>
    public required double BeginsSeconds { get; init; }

    /// <summary>Counts from the first count 1 of the music to there.</summary>
    public required int Intro { get; init; }

    /// <summary>The walls in order.</summary>
    public required ValueList<FitWall> Walls { get; init; }

    /// <summary>The interruptions in order.</summary>
    public required ValueList<FitBreak> Breaks { get; init; }

    /// <summary>How it finishes at the front with the music; null when it does so by itself, or no way was found.</summary>
    public FitEnding? Ending { get; init; }

    /// <summary>Whether the floor faces the front on the last count of the music without more.</summary>
    public bool EndsAtFront => Timeline.FacingAfter == Stance.Facing.Front;

    /// <summary>The dance, with the tags that were made for this plan.</summary>
    public required Dance Dance { get; init; }

    /// <summary>The track with this plan's interruptions, as it is written.</summary>
    public required Track Track { get; init; }

    /// <summary>Tags that the plan needs and the dance does not have.</summary>
    public ValueList<Tag> MadeTags { get; init; } = [];

    /// <summary>The plan stretch by stretch.</summary>
    public required Plan Plan { get; init; }

    /// <summary>The dance danced by it.</summary>
    public required Timeline Timeline { get; init; }

    /// <summary>The dance danced by it, with its ending where it has one.</summary>
    public Timeline WithEnding => Ending is { Written.Body: { } body } ending ? EndingFinder.Danced(this, ending.Wall, ending.After, body) : Timeline;
}
