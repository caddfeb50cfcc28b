namespace Scuff.Repertoire;

/// <summary>A tag in use.</summary>
/// <param name="Tag">The tag, as most recently spelled.</param>
/// <param name="Count">How many dances, or tracks, outside the bin bear it.</param>
public sealed record TagCount(string Tag, int Count);
