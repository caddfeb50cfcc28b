namespace Scuff.App.Json;

/// <summary>An ending: the wall, after how many counts, where in the music, where the floor faces there, and its line.</summary>
internal sealed record FittedEndingRow(int Wall, int After, int Begins, double Seconds, string? Facing, string Line);
