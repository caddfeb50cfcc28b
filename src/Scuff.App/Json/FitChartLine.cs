namespace Scuff.App.Json;

/// <summary>A row of the music: its first count, its counts, when it begins, its section in the map (-1 before the first), whether that begins here.</summary>
internal sealed record FitChartLine(int From, int Counts, double Seconds, int Section, bool BeginsSection);
