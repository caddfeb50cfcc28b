namespace Scuff.Audio.Mixing;

/// <summary>Words with the time they have. All times are seconds of the call track.</summary>
/// <param name="Seconds">When the words begin, 0 or more.</param>
/// <param name="Words">What is said.</param>
/// <param name="Until">When they must have ended: what they name begins.</param>
public sealed record CallTime(double Seconds, string Words, double Until);
