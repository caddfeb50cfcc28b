namespace Scuff.Music;

/// <summary>How loud a track is along its time, for drawing.</summary>
/// <param name="PerSecond">Values a second.</param>
/// <param name="Decibels">The root mean square of each stretch against full scale, in decibels, not below -96.</param>
public sealed record LoudnessCurve(double PerSecond, ValueList<float> Decibels)
{
    /// <summary>Nothing measured.</summary>
    public static LoudnessCurve None { get; } = new(1, []);
}
