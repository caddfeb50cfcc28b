namespace Scuff.Audio.Songs;

/// <summary>A place where a planted song breaks the pattern.</summary>
/// <param name="Wall">The wall of the dance, from 1.</param>
/// <param name="After">After so many counts of it: all of them where the music has too many counts, fewer where it is cut.</param>
/// <param name="Extra">How many counts the music has too many there; 0 where it is cut.</param>
/// <param name="Count">The count of the music, from count 1 of the dance, from 0.</param>
public sealed record PlantedBreak(int Wall, int After, int Extra, int Count);
