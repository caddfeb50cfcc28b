namespace Scuff.Music;

/// <summary>Another answer to what was estimated.</summary>
/// <typeparam name="T">What was estimated.</typeparam>
/// <param name="Value">The answer.</param>
/// <param name="Confidence">From 0 to 1, on the scale of the estimate it belongs to.</param>
public sealed record Alternative<T>(T Value, double Confidence);
