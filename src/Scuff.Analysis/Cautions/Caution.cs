using Scuff.Analysis.Loads;
using Scuff.Timing;

namespace Scuff.Analysis.Cautions;

/// <summary>One thing to take care of, as data; the sheet puts it into words.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Number">How much; its unit follows from the kind.</param>
/// <param name="Place">Where it happens first, or is greatest.</param>
public sealed record Caution(CautionKind Kind, Ratio Number, DancePlace Place)
{
    /// <summary>Which way it travels; null for every kind but <see cref="CautionKind.SharedFloor"/>.</summary>
    public FloorWay? Way { get; init; }
}
