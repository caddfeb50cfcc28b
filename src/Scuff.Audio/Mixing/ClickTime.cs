namespace Scuff.Audio.Mixing;

/// <summary>A click on a count.</summary>
/// <param name="Seconds">When it is struck, in seconds of the call track, 0 or more.</param>
/// <param name="IsOne">Whether it is a one, which is lower.</param>
public readonly record struct ClickTime(double Seconds, bool IsOne);
