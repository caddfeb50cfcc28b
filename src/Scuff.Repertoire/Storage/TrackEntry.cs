namespace Scuff.Repertoire.Storage;

/// <summary>A track as a row of the database.</summary>
internal sealed class TrackEntry
{
    public long Key { get; set; }

    public string Title { get; set; } = "";

    public string FoldedTitle { get; set; } = "";

    public string Artist { get; set; } = "";

    public string FoldedArtist { get; set; } = "";

    public double? Seconds { get; set; }

    public double? Tempo { get; set; }

    public string FileName { get; set; } = "";

    /// <summary>The digest of the audio; null without audio.</summary>
    public string? Digest { get; set; }

    /// <summary>The ending of the file in <c>music/</c>, with its dot; empty without audio.</summary>
    public string Ending { get; set; } = "";

    public long Bytes { get; set; }

    public string HeardBy { get; set; } = "";

    public int CorrectionsRevision { get; set; }

    /// <summary>A tag a line, and each folded with a line feed before and after.</summary>
    public string Tags { get; set; } = "";

    public string FoldedTags { get; set; } = "";

    public DateTimeOffset AddedAt { get; set; }

    public DateTimeOffset? RemovedAt { get; set; }

    public TrackContent Body { get; set; } = null!;
}
