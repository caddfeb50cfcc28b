namespace Scuff.App.Json;

/// <summary>An interruption: where in the dance and in the music, where the floor faces, how many counts it takes, what is done, and its line.</summary>
internal sealed record FittedBreakRow(int Wall, string Part, int After, int Begins, double Seconds, string? Facing, int Length, string Done, string Line);
