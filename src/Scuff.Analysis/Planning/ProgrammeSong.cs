namespace Scuff.Analysis.Planning;

/// <summary>A song that a dance can be danced to. Equal by value.</summary>
/// <param name="Key">Equal for two dances that go to one song, whatever the case and accents of its title.</param>
/// <param name="Title">Title, with the artist where known.</param>
/// <param name="Seconds">How long it plays.</param>
/// <param name="TrackId">The track of the club that plays it; empty when the club has none.</param>
public sealed record ProgrammeSong(string Key, string Title, int Seconds, string TrackId);
