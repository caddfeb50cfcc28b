namespace Scuff.App.Json;

/// <summary>An eight that is too short or too long: its count 1 in time and as an index into the beats, its beats, and how many it should have.</summary>
internal sealed record HeardOddRow(double Start, int FirstBeat, int Beats, int Expected);
