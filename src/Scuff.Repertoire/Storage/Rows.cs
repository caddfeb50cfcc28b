namespace Scuff.Repertoire.Storage;

/// <summary>From rows of the database to what is handed out.</summary>
internal static class Rows
{
    /// <summary>A dance.</summary>
    public static DanceRow Of(DanceEntry e) => new(
        Ids.Dance(e.Key),
        e.Revision,
        new DanceFacts
        {
            Title = e.Title,
            Choreographer = e.Choreographer,
            Level = e.Level,
            Counts = e.Counts,
            Walls = e.Walls,
            Rhythm = e.Rhythm,
            SlowestTempo = e.SlowestTempo,
            FastestTempo = e.FastestTempo,
            Songs = TagLine.Read(e.Songs),
            Errors = e.Errors,
            Questions = e.Questions,
            Warnings = e.Warnings,
            Fingerprint = e.Fingerprint,
        },
        TagLine.Read(e.Tags),
        e.AddedAt,
        e.SavedAt,
        e.RemovedAt,
        e.FileName);

    /// <summary>A version.</summary>
    public static DanceVersion Of(VersionEntry e) => new(e.Number, e.Name, e.SavedAt, e.Hand);

    /// <summary>A track.</summary>
    public static TrackRow Of(TrackEntry e) => new(
        Ids.Track(e.Key),
        new TrackFacts { Title = e.Title, Artist = e.Artist, Seconds = e.Seconds, Tempo = e.Tempo },
        e.FileName,
        e.Digest is null ? "" : MusicFolder.MediaTypeOf(e.Ending),
        e.Bytes,
        e.Digest,
        e.HeardBy,
        e.CorrectionsRevision,
        TagLine.Read(e.Tags),
        e.AddedAt,
        e.RemovedAt);
}
