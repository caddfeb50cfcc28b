namespace Scuff.Steps;

/// <summary>Another entry to use when the figure is written with a turn.</summary>
/// <param name="Eighths">The turn towards the named side (positive) in eighths; null for any turn.</param>
/// <param name="Id">The other entry.</param>
public sealed record TurnedForm(int? Eighths, string Id);
