namespace Scuff.Music.Labels;

/// <summary>The map of a track as it was read from a text.</summary>
/// <param name="Map">The map; null when there is a trouble.</param>
/// <param name="Troubles">What was not understood.</param>
public sealed record MapReading(TrackMap? Map, ValueList<TextTrouble> Troubles);
