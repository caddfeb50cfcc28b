namespace Scuff.Music;

/// <summary>A beat of a track.</summary>
/// <param name="Seconds">When it falls, from the start of the decoded sound.</param>
/// <param name="BarPosition">1 for the first beat of its bar; 0 where that is not known.</param>
/// <param name="Count">The dancer's count: 1 to 8, in a waltz 1 to 6; 0 where that is not known.</param>
public readonly record struct TrackBeat(double Seconds, int BarPosition, int Count);
