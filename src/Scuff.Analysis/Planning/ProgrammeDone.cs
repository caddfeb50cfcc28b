namespace Scuff.Analysis.Planning;

/// <summary>What was danced already. Equal by value.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="OtherId">The dance on the other side of a split floor; empty for none.</param>
/// <param name="SongKey">The key of the song; empty when nobody knows.</param>
public sealed record ProgrammeDone(string DanceId, string OtherId, string SongKey);
