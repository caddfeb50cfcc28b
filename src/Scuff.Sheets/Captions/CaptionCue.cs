namespace Scuff.Sheets.Captions;

/// <summary>Words that stand on the screen for a while.</summary>
/// <param name="Start">When they appear, in seconds; not below zero.</param>
/// <param name="End">When they go; after the start.</param>
/// <param name="Text">The words.</param>
public sealed record CaptionCue(double Start, double End, string Text);
