namespace Scuff.Music;

/// <summary>A place where the music stops or thins out.</summary>
/// <param name="Start">When the last hit before it falls, in seconds.</param>
/// <param name="End">When the music is back, in seconds.</param>
/// <param name="IsStop">Everybody stops; otherwise only the drums are gone.</param>
/// <param name="Confidence">From 0 to 1.</param>
public sealed record TrackBreak(double Start, double End, bool IsStop, double Confidence);
