namespace Scuff.Steps;

/// <summary>Where a stated turn goes: a label and its share.</summary>
/// <param name="Label">Row label.</param>
/// <param name="Share">Relative share, at least 1.</param>
public sealed record TurnShare(string Label, int Share);
