namespace Scuff.Music.Labels;

/// <summary>A line of a label file.</summary>
/// <param name="Start">Seconds from the start of the sound.</param>
/// <param name="End">Seconds from the start of the sound; equal to the start for a point.</param>
/// <param name="Label">The words; may be empty.</param>
public sealed record LabelLine(double Start, double End, string Label);
