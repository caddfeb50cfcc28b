namespace Scuff.App.Json;

/// <summary>What a plan pays for: the reason, the points, the wall (0 for the whole), the count of the dance and that of the music.</summary>
internal sealed record FittedItemRow(string Reason, int Points, int Wall, int Count, int At);
