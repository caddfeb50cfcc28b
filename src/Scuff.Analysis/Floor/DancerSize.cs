namespace Scuff.Analysis.Floor;

/// <summary>How tall the dancer is; everything on the floor scales from it by <see cref="Proportions"/>.</summary>
/// <param name="Height">Body height in metres, above zero.</param>
public readonly record struct DancerSize(double Height)
{
    /// <summary>1.68 m, between the women's and the men's averages. Design value.</summary>
    public static DancerSize Default { get; } = new(1.68);

    /// <summary>Length of a foot in metres.</summary>
    public double FootLength => Proportions.FootLength * Height;

    /// <summary>Breadth of a foot in metres.</summary>
    public double FootBreadth => Proportions.FootBreadth * Height;

    /// <summary>From the heel to the ball of the foot, on which it turns, in metres.</summary>
    public double HeelToBall => Proportions.HeelToBall * FootLength;

    /// <summary>Length of a leg from hip to floor in metres.</summary>
    public double LegLength => Proportions.LegLength * Height;

    /// <summary>How far from the point below the hips a foot can be, in metres.</summary>
    public double Reach => Proportions.Reach * Height;
}
