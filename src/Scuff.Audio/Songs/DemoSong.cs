namespace Scuff.Audio.Songs;

/// <summary>A track of the demo club.</summary>
/// <param name="Dance">Name of the dance's file, without folder and ending.</param>
/// <param name="Artist">The band, as the dance names it.</param>
/// <param name="Recipe">The song; its title is the track's.</param>
public sealed record DemoSong(string Dance, string Artist, SongRecipe Recipe);
