namespace Scuff.Repertoire;

/// <summary>What a person said about a track, as the caller wrote it.</summary>
/// <param name="Text">The corrections; empty when there are none.</param>
/// <param name="Revision">How often they changed; pass it on when saving. 0 when there are none.</param>
public sealed record TrackCorrection(string Text, int Revision);
