namespace Scuff.Audio.Songs;

/// <summary>A song that breaks the pattern of a dance where we know it.</summary>
/// <param name="Recipe">The song.</param>
/// <param name="Breaks">Where, in order.</param>
/// <param name="IntroCounts">Counts of music before the dance.</param>
public sealed record PlantedSong(SongRecipe Recipe, ValueList<PlantedBreak> Breaks, int IntroCounts);
