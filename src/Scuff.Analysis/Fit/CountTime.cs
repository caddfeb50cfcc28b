namespace Scuff.Analysis.Fit;

/// <summary>When a count of a dance is danced to a track.</summary>
/// <param name="Count">The count, from the start of the dance; below zero in the intro.</param>
/// <param name="Seconds">Seconds from the start of the sound.</param>
public readonly record struct CountTime(double Count, double Seconds);
