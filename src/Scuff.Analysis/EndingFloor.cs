using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.Analysis;

/// <summary>Where the floor faces when the dance has ended.</summary>
internal static class EndingFloor
{
    /// <summary>The facing at the end; null where nobody can tell, and for a turn to the front, whose amount does not matter.</summary>
    /// <param name="analysis">The dance.</param>
    /// <param name="ending">Its ending, or that of the track.</param>
    /// <param name="track">The track, or null.</param>
    public static Facing? FacingOf(DanceAnalysis analysis, Ending ending, Track? track) => FacingOf(analysis.Dance, analysis.Walls, ending, track);

    /// <summary>The same for a dance of so many walls.</summary>
    public static Facing? FacingOf(Dance dance, int? walls, Ending ending, Track? track)
    {
        if (!IsPlaced(walls, ending, track))
        {
            return null;
        }

        Timeline timeline = Unroller.Unroll(dance, PlanBuilder.ForTrack(dance, track, withEnding: true));
        if (timeline.FacingAfter is not { } facing || timeline.Stretches.Count == 0)
        {
            return null;
        }

        // she may say herself where the ending's wall begins; then the plan's own wall does not matter
        return ending.WallFacing is { } stated && LastWallStart(timeline) is { } planned ? facing + (stated - planned) : facing;
    }

    // a turn to the front ends there, whatever its amount;
    // without a wall, its facing or a track of known length nobody can tell which wall is the last; in a one-wall dance it does not matter
    private static bool IsPlaced(int? walls, Ending ending, Track? track)
        => ending is { Body: not null, SaysFront: false }
        && ending.Body.Steps.All(step => step.Action.Kind != ActionKind.Unknown)
        && (ending.Wall is not null || ending.WallFacing is not null || walls == 1 || IsMeasured(track));

    private static bool IsMeasured(Track? track)
        => track is { Tempo: not null, LengthSeconds: not null } && (track.Intro is not null || track.IntroSeconds is not null);

    private static Facing? LastWallStart(Timeline timeline)
        => timeline.Stretches.LastOrDefault(stretch => stretch.Plan.StartsWall)?.Facing;
}
