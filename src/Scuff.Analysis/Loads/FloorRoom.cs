using Scuff.Analysis.Floor;

namespace Scuff.Analysis.Loads;

/// <summary>
/// The floor a dancer has. Everybody in a line travels alike, so it is those at the edge of the group, and those in the first row of
/// a small stage, who run out of it.
/// </summary>
public static class FloorRoom
{
    /// <summary>From one dancer to the next in a class, in metres. Trade: body and floor, 2 (1.2 to 1.5; design value).</summary>
    public const double Beside = 1.5;

    /// <summary>From one row to the next in a class, in metres. Trade: body and floor, 2 (1.5 to 1.8; design value).</summary>
    public const double Behind = 1.8;

    /// <summary>Steps one way beyond the own place for which no more floor is needed than usual. Trade: body and floor, 2 (design value).</summary>
    public const int Steps = 4;

    /// <summary>How far the body may get from its start spot: half the dancer's own place and four dance walks.</summary>
    public static double Of(FloorWay way)
        => ((way is FloorWay.Left or FloorWay.Right ? Beside : Behind) / 2) + (Steps * Proportions.Walk * DancerSize.Default.Height);
}
