namespace Scuff.Audio.Songs.Synthesis;

/// <summary>A kind of string.</summary>
/// <param name="Brightness">From 0 to 1.</param>
/// <param name="Decay">Seconds to a thousandth, at 110 hertz.</param>
/// <param name="PluckedAt">Place along the string, from 0 to 0.5.</param>
/// <param name="Damping">Time constant in seconds of its end.</param>
internal sealed record StringSound(double Brightness, double Decay, double PluckedAt, double Damping);
