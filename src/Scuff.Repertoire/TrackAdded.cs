namespace Scuff.Repertoire;

/// <summary>What became of a sound file that was brought to the club.</summary>
/// <param name="Track">The track.</param>
/// <param name="WasNew">
/// False when the club had this very file already: then <paramref name="Track"/> is that one, out of the bin if it lay there.
/// </param>
/// <param name="SameSong">Other tracks of the same title and artist that are as long within a second.</param>
public sealed record TrackAdded(TrackRow Track, bool WasNew, ValueList<string> SameSong);
