namespace Scuff.Analysis.Effort;

/// <summary>What a dance asks of a body, after the Compendium of Physical Activities. Equal by value.</summary>
/// <param name="Tenths">Tenths of a MET: of the energy that the body spends at rest.</param>
public sealed record DanceEffort(int Tenths);
