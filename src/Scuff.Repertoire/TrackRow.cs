namespace Scuff.Repertoire;

/// <summary>A track as a list shows it.</summary>
/// <param name="Id">Its name within the club: short, safe in an address, never given to another track.</param>
/// <param name="Facts">What is known about it.</param>
/// <param name="FileName">The name its file came with; for a track without audio, the name it was given.</param>
/// <param name="MediaType">
/// The media type of its audio by the ending of the file name, <c>application/octet-stream</c> if that is unknown; empty without audio.
/// </param>
/// <param name="Bytes">The size of its audio; 0 without audio.</param>
/// <param name="Digest">The SHA-256 digest of its audio in hexadecimal digits; null without audio.</param>
/// <param name="HeardBy">The program version that made its map, as the caller named it; empty when there is no map.</param>
/// <param name="CorrectionsRevision">How often its corrections changed; 0 when there are none.</param>
/// <param name="Tags">Her own words for it.</param>
/// <param name="AddedAt">When it came into the club.</param>
/// <param name="RemovedAt">When it went into the bin; null when it is not there.</param>
public sealed record TrackRow(
    string Id,
    TrackFacts Facts,
    string FileName,
    string MediaType,
    long Bytes,
    string? Digest,
    string HeardBy,
    int CorrectionsRevision,
    ValueList<string> Tags,
    DateTimeOffset AddedAt,
    DateTimeOffset? RemovedAt)
{
    /// <summary>Whether the club keeps audio for it.</summary>
    public bool HasAudio => Digest is not null;

    /// <summary>Whether it was heard, or has a map written by hand.</summary>
    public bool HasMap => HeardBy.Length > 0;
}
