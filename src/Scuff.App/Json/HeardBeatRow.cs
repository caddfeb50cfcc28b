namespace Scuff.App.Json;

/// <summary>A beat: its time, its place in the bar and its count from 1, 0 where that is not known.</summary>
internal sealed record HeardBeatRow(double Seconds, int Bar, int Count);
