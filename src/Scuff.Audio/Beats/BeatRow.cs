namespace Scuff.Audio.Beats;

/// <summary>Beats in order of time.</summary>
/// <param name="Seconds">Their times, rising.</param>
/// <param name="Score">How well they agree with what was heard: the sum of its logits, less what the changes of length cost.</param>
internal sealed record BeatRow(double[] Seconds, double Score)
{
    /// <summary>No beats.</summary>
    public static BeatRow None { get; } = new([], double.NegativeInfinity);
}
