namespace Scuff.Repertoire;

/// <summary>A text that a dance once had.</summary>
/// <param name="Number">Its number within the dance, from 1, never given again.</param>
/// <param name="Name">The name she gave it; empty for one that was kept without asking.</param>
/// <param name="SavedAt">When this text was saved.</param>
/// <param name="Hand">The hand it came from (<see cref="Hands"/>).</param>
/// <param name="Revision">The revision that it was, as sessions name it; null for one that was kept before these were counted here.</param>
public sealed record DanceVersion(int Number, string Name, DateTimeOffset SavedAt, string Hand, int? Revision);
