namespace Scuff.App.Json;

/// <summary>A wall: its number and part, the count of the music and the second it begins on, where the floor faces, counts danced, what begins with it.</summary>
internal sealed record FittedWallRow(int Wall, string Part, int Begins, double Seconds, string? Facing, int Counts, string Music);
