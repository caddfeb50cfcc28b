using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;

namespace Scuff.Analysis.Compare;

/// <summary>The facings that brackets of a break may tell, in one version.</summary>
internal static class BreakFacings
{
    /// <summary>
    /// The facings that brackets may tell there: where the wall is left, then where each tag ends; empty where the break is not danced.
    /// </summary>
    /// <param name="analysis">The version.</param>
    /// <param name="track">The track whose break it is, or null for one of every track.</param>
    /// <param name="pause">The break.</param>
    public static List<Facing?> Of(DanceAnalysis analysis, Track? track, WallBreak pause)
    {
        foreach (TrackTimeline timeline in analysis.TrackTimelines)
        {
            if (track is not null && !ReferenceEquals(timeline.Track, track))
            {
                continue;
            }

            ValueList<TimedStretch> stretches = timeline.Timeline.Stretches;
            List<int> firsts = [.. Enumerable.Range(0, stretches.Count).Where(i => BreakFloor.Begins(stretches, i, pause.Written))];

            // the wall of a phrased dance counts how often the part has come
            int time = pause.Written.PartName.Length > 0
                ? pause.Written.Walls.Distinct().Order().ToList().IndexOf(pause.Bare.Walls[0])
                : firsts.FindIndex(i => stretches[i].Plan.Wall == pause.Bare.Walls[0]);
            if (time >= 0 && time < firsts.Count)
            {
                return [.. BreakFloor.Possible(stretches, firsts[time], pause.Written)];
            }
        }

        return [];
    }
}
