using Scuff.Timelines;

namespace Scuff.Analysis.Loads;

/// <summary>How far a dance gets one way.</summary>
/// <param name="Way">The way, seen by a dancer who faces 12:00.</param>
/// <param name="Metres">How far the body gets.</param>
/// <param name="At">The action that takes it there.</param>
public sealed record FloorReach(FloorWay Way, double Metres, TimedStep At)
{
    /// <summary>Whether that is more than the dancers at the edge of a class have.</summary>
    public bool IsTooFar => Metres > FloorRoom.Of(Way);
}
