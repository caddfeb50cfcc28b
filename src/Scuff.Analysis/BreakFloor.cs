using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timelines;

namespace Scuff.Analysis;

/// <summary>Where the floor faces when the pattern breaks.</summary>
internal static class BreakFloor
{
    /// <summary>Whether a break begins with this stretch.</summary>
    public static bool Begins(ValueList<TimedStretch> stretches, int at, Interruption cause) => Equals(stretches[at].Plan.Cause, cause)
        && (at == 0 || !Equals(stretches[at - 1].Plan.Cause, cause) || stretches[at - 1].Plan.Wall != stretches[at].Plan.Wall);

    /// <summary>Where the floor may be said to face: where the wall is left; after a tag that turns, also where it ends.</summary>
    public static IEnumerable<Facing?> Possible(ValueList<TimedStretch> stretches, int first, Interruption cause)
    {
        bool leavesWall = stretches[first].Plan.Kind == StretchKind.Wall;
        yield return leavesWall ? stretches[first].FacingAfter : stretches[first].Facing;
        for (int i = first + 1; i < stretches.Count && Equals(stretches[i].Plan.Cause, cause) && stretches[i].Plan.Wall == stretches[first].Plan.Wall; i++)
        {
            yield return stretches[i].FacingAfter;
        }
    }
}
