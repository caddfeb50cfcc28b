namespace Scuff.Music.Corrections;

/// <summary>Corrections as they were read from a text, or why they could not be.</summary>
/// <param name="Corrections">What was read; null when there is a trouble.</param>
/// <param name="Troubles">What is wrong, a sentence each; none when all is well.</param>
public sealed record CorrectionsReading(TrackCorrections? Corrections, ValueList<string> Troubles);
