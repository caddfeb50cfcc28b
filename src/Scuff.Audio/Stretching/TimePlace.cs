namespace Scuff.Audio.Stretching;

/// <summary>A moment of a sound, and when it is played.</summary>
/// <param name="Source">Seconds in the sound as it is.</param>
/// <param name="Played">Seconds in the sound as it is played.</param>
public readonly record struct TimePlace(double Source, double Played);
